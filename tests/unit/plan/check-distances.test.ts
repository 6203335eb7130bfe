/** Check distances against right triangles and the grid itself. */
import { describe, expect, it } from "vitest";
import { given } from "../../../src/job/model/job.js";
import type { GridLine } from "../../../src/job/model/plan.js";
import { checkDistances } from "../../../src/plan/index.js";
import { inches } from "../../../src/units/length.js";
import { baseFixture, groupFixture } from "../../fixture.js";
import { placementAt, planJob, zero } from "../../setting-out-plan.js";

const rectangle = (x: number, y: number, changes = {}) =>
  baseFixture({
    groups: [
      groupFixture({
        pattern: { kind: "rectangle", x: inches(x), y: inches(y), nx: 2, ny: 2, perimeter: false, ...changes },
      }),
    ],
  });

describe("diagonals", () => {
  // A 9 x 12 right triangle has 15 as its long side (Euclid I.47), whatever the turn.
  it.each([0, 30, 45, 90, 123.4])("are those of the rectangle, turned by %d degrees", (turn) => {
    const { plan } = planJob({ placements: [placementAt(["A", "1"], { turn })] }, [rectangle(9, 12)]);
    const found = checkDistances(plan).map(({ what, from, to, distance }) => [
      what,
      from,
      to,
      Math.round(distance / 10),
    ]);
    expect(found).toEqual([
      ["diagonal", "A-1_A1", "A-1_A3", inches(15) / 10],
      ["diagonal", "A-1_A2", "A-1_A4", inches(15) / 10],
    ]);
  });

  it("of a pattern of eight are those of its corners", () => {
    const { plan } = planJob({ placements: [placementAt(["A", "1"])] }, [rectangle(9, 12, { nx: 2, ny: 4 })]);
    expect(checkDistances(plan).map(({ distance }) => distance)).toEqual([inches(15), inches(15)]);
  });

  it("of two rods: the one distance there is; of three: two", () => {
    const at = (points: readonly (readonly [number, number])[]) =>
      baseFixture({
        groups: [
          groupFixture({ pattern: { kind: "points", at: points.map(([x, y]) => ({ x: inches(x), y: inches(y) })) } }),
        ],
      });
    const found = (base: ReturnType<typeof at>) =>
      checkDistances(planJob({ placements: [placementAt(["A", "1"])] }, [base]).plan).map(({ distance }) => distance);
    expect(
      found(
        at([
          [0, 0],
          [8, 0],
        ]),
      ),
    ).toEqual([inches(8)]);
    expect(
      found(
        at([
          [0, 0],
          [8, 0],
          [8, 6],
        ]),
      ),
    ).toEqual([inches(10), inches(8)]);
  });
});

describe("along the lines", () => {
  const alongOnly = (changes: Parameters<typeof planJob>[0]) =>
    checkDistances(planJob(changes).plan)
      .filter(({ what }) => what !== "diagonal")
      .map(({ what, of, from, to, distance }) => [what, of, from, to, distance / inches(1)]);

  it("neighbours in the order of the line, then the whole line, whatever the order of the placements", () => {
    const placements = [
      placementAt(["C", "1"]),
      placementAt(["A", "1"]),
      placementAt(["2", "A"]),
      placementAt(["B", "1"]),
    ];
    expect(alongOnly({ placements })).toEqual([
      ["along line", "line A", "A-1_C", "2-A_C", 300],
      ["along line", "line 1", "A-1_C", "B-1_C", 360],
      ["along line", "line 1", "B-1_C", "C-1_C", 360],
      ["whole line", "line 1", "A-1_C", "C-1_C", 720],
    ]);
  });

  it("skewed lines by their direction, arcs round from their widest gap", () => {
    const skewed: GridLine = { kind: "skewed", name: "S", through: { x: zero, y: zero }, degrees: 36.86989764584402 };
    const rows = [25, 50, 75].map((feet): GridLine => ({ kind: "y", name: `R${feet}`, at: inches(feet * 12) }));
    const onSkew = alongOnly({
      lines: [...rows, skewed],
      placements: [placementAt(["S", "R75"]), placementAt(["S", "R25"]), placementAt(["S", "R50"])],
    });
    // A 3-4-5 slope: 25 ft of rise is 41 ft 8 in along it.
    expect(onSkew.map(([what, , from, to, far]) => [what, from, to, Math.round(Number(far) * 1e4) / 1e4])).toEqual([
      ["along line", "S-R25_C", "S-R50_C", 500],
      ["along line", "S-R50_C", "S-R75_C", 500],
      ["whole line", "S-R25_C", "S-R75_C", 1000],
    ]);
  });

  it("an arc is gone round without a jump across its gap", () => {
    const center = { x: zero, y: zero };
    const arc: GridLine = { kind: "arc", name: "R", center, radius: inches(600) };
    const spokes = [150, 180, 210].map(
      (degrees): GridLine => ({ kind: "radial", name: `${degrees}`, center, degrees }),
    );
    const near = spokes.map(({ name }) => (name === "150" ? [-520, 300] : name === "180" ? [-600, 0] : [-520, -300]));
    const placements = spokes.map(({ name }, index) => {
      const [x = 0, y = 0] = near[index] ?? [];
      return placementAt([name, "R"], { near: given({ x: inches(x), y: inches(y) }, "job") });
    });
    const onArc = alongOnly({ lines: [...spokes, arc], placements: [...placements].reverse() });
    expect(onArc.map(([what, , from, to]) => [what, from, to])).toEqual([
      ["along line", "150-R_C", "180-R_C"],
      ["along line", "180-R_C", "210-R_C"],
      ["whole line", "150-R_C", "210-R_C"],
    ]);
    // The chord of 60 degrees is the radius (Euclid IV.15).
    expect(Math.round((Number(onArc[2]?.[4]) - 600) * 1e4)).toBe(0);
  });
});
