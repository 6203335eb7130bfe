/** What a change of the job does to the templates that are cut already. */
import { describe, expect, it } from "vitest";
import type { Change, Comparison, VerdictKind } from "../../../src/compare/index.js";
import { compareSides, countRecuts } from "../../../src/compare/index.js";
import type { Base, Corner, Job, TemplateSpec } from "../../../src/job/model/job.js";
import { given } from "../../../src/job/model/job.js";
import { inches, millimetres, nanometres } from "../../../src/units/length.js";
import { sideOf } from "../../compared-sides.js";
import { baseFixture, groupFixture, jobFixture, shopFixture } from "../../fixture.js";

const at = (x: number, y: number) => ({ x: inches(x), y: inches(y) });
const CORNERS = [at(-6, 5), at(6, 5), at(6, -5), at(-6, -5)];

function baseAt(
  points: readonly ReturnType<typeof at>[],
  template: Partial<TemplateSpec> = {},
  changes: Partial<Base> = {},
): Base {
  const plain = baseFixture();
  return baseFixture({
    groups: [groupFixture({ pattern: { kind: "points", at: points } })],
    template: { ...plain.template, ...template },
    ...changes,
  });
}

const compareJobs = (old: Job, fresh: Job): Comparison => compareSides(sideOf(old), sideOf(fresh));
const compareBases = (old: Base, fresh: Base): Comparison =>
  compareJobs(jobFixture({ bases: [old] }), jobFixture({ bases: [fresh] }));

function only({ templates }: Comparison): { verdict: VerdictKind; changes: readonly Change[] } {
  expect(templates).toHaveLength(1);
  const [first] = templates;
  if (first === undefined) throw new Error("no template");
  return first;
}

const summed = (comparison: Comparison): readonly unknown[] => {
  const { verdict, changes } = only(comparison);
  return [verdict, ...changes.map(({ what }) => what)];
};

describe("holes", () => {
  it("one that moves by a sixteenth is told as that, and no other", () => {
    const moved = CORNERS.with(2, at(6.0625, -5));
    const { verdict, changes } = only(compareBases(baseAt(CORNERS), baseAt(moved)));
    expect(verdict).toBe("recut");
    expect(changes).toEqual([
      {
        what: "hole-moved",
        ...{ role: "rod", tag: "A3", oldTag: "A3", distance: inches(1 / 16) },
        from: { x: inches(6), y: inches(-5) },
        to: { x: inches(6.0625), y: inches(-5) },
      },
    ]);
  });

  it("50 nm, twice what the rounding of files leaves, is the same hole; the next step of the file is another", () => {
    const nudged = (nm: number) => baseAt(CORNERS.with(0, { x: nanometres(inches(-6) + nm), y: inches(5) }));
    const verdictAt = (nm: number) => {
      const [old, fresh] = [baseAt(CORNERS), nudged(nm)].map((base) => jobFixture({ unit: "mm", bases: [base] }));
      return old === undefined || fresh === undefined ? null : only(compareJobs(old, fresh)).verdict;
    };
    expect([0, 50, 60, -50, -60].map(verdictAt)).toEqual(["unchanged", "file only", "recut", "file only", "recut"]);
  });

  it("a shifted group is shifted, whatever its tags; 3-4-5 (Euclid I.47)", () => {
    const shifted = CORNERS.map(({ x, y }) => ({ x: nanometres(x + inches(0.375)), y: nanometres(y + inches(0.5)) }));
    const { changes } = only(compareBases(baseAt(CORNERS), baseAt(shifted)));
    expect(changes.map((change) => change.what === "hole-moved" && change.distance)).toEqual(
      Array(4).fill(inches(0.625)),
    );
  });

  it("a new north-west rod renumbers all, and moves none", () => {
    const more = [at(-8, 5), ...CORNERS];
    const { verdict, changes } = only(compareBases(baseAt(CORNERS), baseAt(more)));
    expect(verdict).toBe("recut");
    expect(changes.filter(({ what }) => what === "hole-moved")).toEqual([]);
    expect(changes.flatMap((change) => (change.what === "tag" ? [`${change.oldTag} ${change.tag}`] : []))).toEqual([
      "A1 A2",
      "A2 A3",
      "A3 A4",
      "A4 A5",
    ]);
    expect(changes.filter(({ what }) => what === "hole-added")).toEqual([
      {
        what: "hole-added",
        ...{ role: "rod", tag: "A1", at: { x: inches(-8), y: inches(5) } },
        size: { kind: "circle", diameter: inches(1.3125) },
      },
    ]);
    const back = only(compareBases(baseAt(more), baseAt(CORNERS)));
    expect(back.changes.filter(({ what }) => what === "hole-gone")).toHaveLength(1);
  });

  it("a diameter, and an opening that becomes another", () => {
    const wide = baseFixture({ groups: [groupFixture({ hole: given(inches(1.375), "job") })] });
    const { verdict, changes } = only(compareBases(baseFixture(), wide));
    expect([verdict, changes.map(({ what }) => what)]).toEqual(["recut", Array(4).fill("hole-size")]);
    const opening = { kind: "rectangle", x: inches(6), y: inches(5), radius: inches(1), at: at(0, 0) } as const;
    expect(summed(compareBases(baseAt(CORNERS), baseAt(CORNERS, { opening })))).toEqual(["recut", "hole-size"]);
    expect(summed(compareBases(baseAt(CORNERS), baseAt(CORNERS, { opening: { kind: "none" } })))).toEqual([
      "recut",
      "hole-gone",
    ]);
  });

  it("another rod in the same hole is told, and is no recut", () => {
    const base = baseFixture({ groups: [groupFixture({}, { size: "1-1/8", diameter: inches(1.125) })] });
    const { verdict, changes } = only(compareBases(baseFixture(), base));
    expect([verdict, changes.filter(({ what }) => what === "rod-size").length]).toEqual(["marks only", 4]);
  });
});

describe("outline, thickness, material", () => {
  const chamfer = (x: number, y: number): Corner => ({ kind: "chamfer", x: inches(x), y: inches(y) });
  const CORNER_KINDS = { "chamfer x": chamfer(2, 1), "chamfer y": chamfer(1, 2), none: { kind: "square" } } as const;
  const outline = (corner: keyof typeof CORNER_KINDS, x = 26) =>
    ({ kind: "rectangle", x: inches(x), y: inches(18), at: at(0, 0), corner: CORNER_KINDS[corner] }) as const;

  it("a side", () => {
    const fresh = baseAt(CORNERS, { outline: outline("none", 27) });
    expect(summed(compareBases(baseAt(CORNERS, { outline: outline("none") }), fresh))).toEqual(["recut", "outline"]);
  });

  it("corners of the same extent, area and perimeter: only the cut file tells", () => {
    const [old, fresh] = [
      baseAt(CORNERS, { outline: outline("chamfer x") }),
      baseAt(CORNERS, { outline: outline("chamfer y") }),
    ];
    const { verdict, changes } = only(compareBases(old, fresh));
    const change = changes.find(({ what }) => what === "outline");
    if (change?.what !== "outline") throw new Error("no outline change");
    expect(change.to.extent).toEqual(change.from.extent);
    expect(change.to.perimeter).toBe(change.from.perimeter);
    expect(verdict).toBe("recut");
  });

  it("a polygon that starts at another corner is the same plate", () => {
    const corners = [at(-13, -9), at(13, -9), at(13, 9), at(0, 11), at(-13, 9)];
    const polygon = (points: typeof corners) => ({ kind: "polygon", at: points, corner: { kind: "square" } }) as const;
    const turned = [...corners.slice(2), ...corners.slice(0, 2)];
    const { verdict } = only(
      compareBases(baseAt(CORNERS, { outline: polygon(corners) }), baseAt(CORNERS, { outline: polygon(turned) })),
    );
    expect(["unchanged", "file only"]).toContain(verdict);
  });

  it("thickness: the cut file's bytes are the same, the plate is not", () => {
    const fresh = baseAt(CORNERS, { thickness: inches(0.375) });
    expect(summed(compareBases(baseAt(CORNERS), fresh))).toEqual(["recut", "thickness"]);
  });

  it("material", () => {
    const fresh = baseAt(CORNERS, { material: "plywood" });
    const [verdict, ...what] = summed(compareBases(baseAt(CORNERS), fresh));
    expect([verdict, what.includes("material")]).toEqual(["recut", true]);
  });

  const grade = (value: string) => baseAt(CORNERS, { grade: given(value, "job") });

  it("grade, where both name one: the cut file's bytes are the same, the plate is not", () => {
    expect(summed(compareBases(grade("A36"), grade("A572 Gr 50")))).toEqual(["recut", "grade"]);
    expect(summed(compareBases(grade("A572 Gr 50"), grade("a572 GR50")))).toEqual(["unchanged"]);
  });

  it("a grade that is named now, or no longer, is told, and nothing is cut again for it", () => {
    expect(summed(compareBases(baseAt(CORNERS), grade("A36")))).toEqual(["unchanged", "grade-said"]);
    expect(summed(compareBases(grade("A36"), baseAt(CORNERS)))).toEqual(["unchanged", "grade-said"]);
  });

  it("everything moved together against the working point: the same plate", () => {
    const move = ({ x, y }: ReturnType<typeof at>) => ({ x: nanometres(x + inches(2)), y });
    const [from, to] = [outline("none"), { ...outline("none"), at: at(2, 0) }];
    const hole = { kind: "circle", diameter: inches(6) } as const;
    const { verdict, changes } = only(
      compareBases(
        baseAt(CORNERS, { outline: from, opening: { ...hole, at: at(0, 0) } }),
        baseAt(CORNERS.map(move), { outline: to, opening: { ...hole, at: at(2, 0) } }),
      ),
    );
    expect(changes[0]).toEqual({ what: "working-point", dx: inches(2), dy: 0 });
    expect(["marks only", "unchanged"]).toContain(verdict);
  });
});

describe("what is no recut", () => {
  it("a revision letter alone", () => {
    const comparison = compareJobs(jobFixture({ revision: "B" }), jobFixture({ revision: "C" }));
    expect(summed(comparison)).toEqual(["marks only", "marks"]);
    expect(countRecuts(comparison)).toBe(0);
  });

  it("layer names, origin", () => {
    const shop = shopFixture();
    const other = shopFixture({
      cutFile: { ...shop.cutFile, layers: { ...shop.cutFile.layers, holes: "INNER" }, origin: "working point" },
    });
    expect(summed(compareJobs(jobFixture(), jobFixture({ shop: other })))).toEqual(["file only", "file"]);
  });

  it("inches written as millimetres", () => {
    const metric = baseAt(CORNERS.map(({ x, y }) => ({ x: millimetres((x / inches(1)) * 25.4), y })));
    const [old, fresh] = [jobFixture({ bases: [baseAt(CORNERS)] }), jobFixture({ unit: "mm", bases: [metric] })];
    const { verdict, changes } = only(compareJobs(old, fresh));
    expect(changes.filter(({ what }) => what !== "marks" && what !== "file")).toEqual([]);
    expect(["marks only", "file only"]).toContain(verdict);
    expect(only(compareJobs(fresh, old)).verdict).toBe(verdict);
  });

  it("a plywood template whose drill list is the same but for the revision", () => {
    const bases = [baseAt(CORNERS, { material: "plywood" })];
    const { verdict, changes } = only(compareJobs(jobFixture({ bases }), jobFixture({ bases, revision: "C" })));
    expect([verdict, changes]).toEqual(["file only", [{ what: "file", drawn: false }]]);
  });

  it("quantities and marks", () => {
    const fresh = baseAt(CORNERS, { quantity: 5 }, { quantity: 7 });
    expect(summed(compareBases(baseAt(CORNERS), fresh))).toEqual(["unchanged", "quantity", "bases"]);
    const renamed = baseAt(CORNERS, { mark: "T9" }, { mark: "B9" });
    expect(summed(compareBases(baseAt(CORNERS), renamed))).toEqual([
      "marks only",
      "marks",
      "template-mark",
      "base-mark",
    ]);
  });
});

describe("new, gone, held", () => {
  const [one, two] = [
    baseFixture(),
    baseAt(
      CORNERS.map(({ x, y }) => ({ x, y: nanometres(2 * y) })),
      { mark: "T2" },
      { mark: "B2" },
    ),
  ];

  it("templates of one side only", () => {
    const both = jobFixture({ bases: [one, two] });
    const verdicts = (comparison: Comparison) =>
      comparison.templates.map(({ verdict, new: fresh, old }) => [verdict, (fresh ?? old)?.mark]);
    expect(verdicts(compareJobs(jobFixture(), both))).toEqual([
      ["new", "T2"],
      ["unchanged", "T1"],
    ]);
    expect(verdicts(compareJobs(both, jobFixture()))).toEqual([
      ["gone", "T2"],
      ["unchanged", "T1"],
    ]);
  });

  it("a template that OLD held was not cut, so it is never a recut", () => {
    const tooWide = baseAt(
      CORNERS,
      { support: given("form", "job") },
      {
        concrete: {
          ...baseFixture().concrete,
          shape: given({ kind: "rectangle", x: inches(60), y: inches(60), corner: { kind: "square" } } as const, "job"),
        },
      },
    );
    const [held, good] = [
      jobFixture({ bases: [tooWide] }),
      jobFixture({ bases: [baseAt(CORNERS.with(2, at(7, -5)))] }),
    ];
    const [old, fresh] = [sideOf(held, { held: true }), sideOf(good)];
    expect(old.templates[0]?.held).toBe(true);
    expect(only(compareSides(old, fresh)).verdict).toBe("to cut");
    expect(only(compareSides(old, old)).verdict).toBe("held");
    expect(countRecuts(compareSides(fresh, old))).toBe(1);
    expect(only(compareSides(sideOf(held), old))).toMatchObject({
      verdict: "held",
      changes: [{ what: "held", from: false, to: true }],
    });
  });
});
