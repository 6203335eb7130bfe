/** Paper well used: nothing of the hole table is cut short, a half empty column holds the section, concrete costs no scale. */
import { describe, expect, it } from "vitest";
import { given } from "../../../src/job/model/job.js";
import { drawSheet, type Scene } from "../../../src/sheets/index.js";
import { inches, type Length } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture } from "../../fixture.js";
import { collisionsOf } from "./collisions.js";
import { groupsOf, textsOf } from "./scene-walk.js";
import { sheetCase } from "./sheet-case.js";

const fixture = baseFixture();
const at = (x: number, y: number) => ({ x: inches(x), y: inches(y) });

/** A plate 38 by 16 in for eight rods of one size, and concrete of these sides around it. */
function sheetWith(concrete: readonly [number, number], opening: readonly [Length, Length]): Scene {
  const points = [-12, -4, 4, 12].flatMap((x) => [at(x, 6), at(x, -6)]);
  const [x, y] = concrete.map((side) => inches(side));
  const [width, height] = opening;
  return drawSheet(
    sheetCase(
      jobFixture(),
      baseFixture({
        groups: [groupFixture({ pattern: { kind: "points", at: points } })],
        basePlate: {
          ...fixture.basePlate,
          shape: given({ kind: "rectangle", x: inches(30), y: inches(16), corner: { kind: "square" } } as const, "job"),
        },
        concrete: {
          ...fixture.concrete,
          shape: given(
            { kind: "rectangle", x: x ?? inches(1), y: y ?? inches(1), corner: { kind: "square" } } as const,
            "job",
          ),
        },
        template: {
          ...fixture.template,
          outline: { kind: "rectangle", x: inches(38), y: inches(16), at: at(0, 0), corner: { kind: "square" } },
          opening: { kind: "rectangle", x: width, y: height, radius: inches(0.5), at: at(0, 0) },
        },
      }),
    ),
  );
}

describe("paper of a template's sheet", () => {
  it.each([
    ["long figures", [inches(19 + 15 / 16), inches(9 + 13 / 16)], "19-15/16×9-13/16"],
    ["short ones, radius and all", [inches(8), inches(6)], "8 × 6, R1/2"],
  ] as const)("has an opening's size whole in the hole table: %s", (_, opening, size) => {
    const tables = groupsOf(sheetWith([36, 24], opening).items, "hole-table");
    const words = tables.flatMap(({ items }) => textsOf(items).map(({ text }) => text));
    expect(words).toContain(size);
    expect(words.filter((word) => word.includes("…") || word.includes("..."))).toEqual([]);
  });

  it("cuts concrete off closer rather than take a smaller scale", () => {
    const small = [inches(8), inches(6)] as const;
    const [near, far] = [sheetWith([36, 17], small), sheetWith([36, 24], small)];
    const scale = (scene: Scene) => groupsOf(scene.items, "plan")[0]?.data.scale;
    expect([far.size, scale(far)]).toEqual([near.size, scale(near)]);
    expect(collisionsOf(far)).toEqual([]);
  });
});
