/** Every rod is located: by dimension chains, by the callout of its bolt circle, or by the hole table. Invented data. */
import { describe, expect, it } from "vitest";
import { given, missing } from "../../../src/job/model/job.js";
import { drawSheet, type Scene } from "../../../src/sheets/index.js";
import { chainModes } from "../../../src/sheets/located.js";
import { inches } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture } from "../../fixture.js";
import { collisionsOf } from "./collisions.js";
import { groupsOf, textsOf } from "./scene-walk.js";
import { sheetCase } from "./sheet-case.js";

const [zero, origin] = [inches(0), { x: inches(0), y: inches(0) }];

/** Four rods on two lines an axis, and four of another size on a bolt circle of this diameter, straddling the axes, on a plate of which no half is as long as their chain. */
function requestWith(diameter: number) {
  const { template } = baseFixture();
  const corner = { kind: "square" } as const;
  return sheetCase(
    jobFixture(),
    baseFixture({
      groups: [
        groupFixture({ pattern: { kind: "rectangle", x: inches(12), y: inches(4), nx: 2, ny: 2, perimeter: false } }),
        groupFixture({
          letter: "B",
          pattern: { kind: "circle", diameter: inches(diameter), count: 4, start: { kind: "straddle" } },
          hole: given(inches(1.0625), "job"),
        }),
      ],
      template: {
        ...template,
        outline: { kind: "rectangle", x: inches(26), y: inches(26), at: origin, corner },
        opening: { kind: "none" },
      },
    }),
  );
}

function tabled(scene: Scene): readonly string[] {
  const tables = groupsOf(scene.items, "hole-table");
  return tables.flatMap(({ items }) => textsOf(items).map(({ text }) => text));
}

/** Figures of dimensions, in nanometres. */
function dimensioned(scene: Scene): ReadonlySet<number> {
  return new Set(groupsOf(scene.items, "dimension").map(({ data }) => Number(data.valueNm)));
}

describe("rods of which an extension line is blocked", () => {
  it("stand in the chains where nothing blocks them", () => {
    const scene = drawSheet(requestWith(20));
    expect(tabled(scene)).toEqual([]);
    expect([...dimensioned(scene)]).toEqual(expect.arrayContaining([inches(12), inches(4)]));
  });

  // 18 in: the rods on the circle stand 3/8 in beside the lines of the others, above and below them.
  it("stand in the hole table where holes beside the line block it on both sides", () => {
    const request = requestWith(18);
    const scene = drawSheet(request);
    const hasChain = dimensioned(scene).has(inches(12));
    const words = tabled(scene);
    for (const { tag } of request.plate.holes) expect(words).toContain(tag);
    expect([hasChain, words.length > 0]).toEqual([false, true]);
    expect(collisionsOf(scene)).toEqual([]);
  });

  it("are not carried through the name of the axis", () => {
    const points = [
      { x: inches(-29), y: inches(21) },
      { x: inches(-27.625), y: inches(-5.375) },
      { x: inches(25.5), y: inches(-0.1875) },
    ];
    const { template } = baseFixture();
    const outline = {
      kind: "rectangle",
      x: inches(81.4375),
      y: inches(92.1875),
      at: { x: inches(-3.6875), y: inches(3) },
      corner: { kind: "square" },
    } as const;
    const base = baseFixture({
      groups: [groupFixture({ pattern: { kind: "points", at: points }, hole: given(inches(0.8125), "job") })],
      template: {
        ...template,
        outline,
        opening: { kind: "rectangle", x: inches(4.4375), y: inches(4.125), radius: zero, at: origin },
      },
    });
    const bare = { ...base, basePlate: { ...base.basePlate, shape: missing("basePlate", "none") } };
    expect(collisionsOf(drawSheet(sheetCase(jobFixture(), bare)))).toEqual([]);
  });

  it("have a way to be drawn without chains wherever those would come without a hole table", () => {
    expect(chainModes(requestWith(18)).at(-1)).toBe("overall");
    const many = sheetCase(
      jobFixture(),
      baseFixture({
        groups: [
          groupFixture({
            pattern: { kind: "points", at: [origin, { x: inches(3), y: zero }, { x: inches(7), y: inches(2) }] },
          }),
        ],
      }),
    );
    expect(chainModes(many)).toEqual(["full", "ends"]);
  });
});
