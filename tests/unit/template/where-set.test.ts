import { describe, expect, it } from "vitest";
import type { Job } from "../../../src/job/model/job.js";
import type { GridLine, Placement, PlanSpec } from "../../../src/job/model/plan.js";
import { placeRods } from "../../../src/rods/index.js";
import type { Mark, Plate } from "../../../src/template/index.js";
import { makePlate } from "../../../src/template/index.js";
import { inches } from "../../../src/units/length.js";
import { baseFixture, jobFixture } from "../../fixture.js";
import { gridLines, placementAt, planFixture, zero } from "../../setting-out-plan.js";

function plateWith(site: PlanSpec | null): Plate {
  const job: Job = jobFixture({ plan: site });
  const base = baseFixture();
  const rods = placeRods(base);
  const plate = rods.ok ? makePlate(job, base, rods.value) : rods;
  if (!plate.ok) throw new Error("no plate");
  return plate.value;
}

function marksOf(placements: readonly Placement[], lines: readonly GridLine[] = gridLines): readonly Mark[] {
  return plateWith(planFixture({ placements, lines })).marks.filter(({ kind }) => kind === "north" || kind === "grid");
}

const textsOf = (placements: readonly Placement[], lines?: readonly GridLine[]) =>
  marksOf(placements, lines).map(({ text }) => text);

/** From the tail to the point of the arrow, the first stroke of a north mark. */
function arrowOf(marks: readonly Mark[]): { readonly x: number; readonly y: number } {
  const [tail, tip] = marks.find(({ kind }) => kind === "north")?.strokes[0] ?? [];
  if (tail === undefined || tip === undefined) throw new Error("no arrow");
  const length = Math.hypot(tip.x - tail.x, tip.y - tail.y);
  return { x: (tip.x - tail.x) / length, y: (tip.y - tail.y) / length };
}

describe("north", () => {
  it("is on no plate of a job without a layout", () => {
    expect(plateWith(null).marks.some(({ kind }) => kind === "north" || kind === "grid")).toBe(false);
  });

  it("stands where every placement is turned alike, without grid names where there are several", () => {
    const turned = (turn: number) => [placementAt(["A", "1"], { turn }), placementAt(["B", "1"], { turn })];
    expect(textsOf(turned(0))).toEqual(["N"]);
    expect(textsOf(turned(30))).toEqual(["N"]);
  });

  it("is left out where placements are turned differently", () => {
    expect(textsOf([placementAt(["A", "1"]), placementAt(["B", "1"], { turn: 90 })])).toEqual([]);
  });

  it("is turned alike by 0 and by 360", () => {
    expect(textsOf([placementAt(["A", "1"]), placementAt(["B", "1"], { turn: 360 })])).toEqual(["N"]);
  });

  // A base turned by t on the plan sees plan north at 90 - t from its own +x.
  it.each([
    [0, 0, 1],
    [90, 1, 0],
    [180, 0, -1],
    [270, -1, 0],
    [30, 0.5, Math.sqrt(3) / 2],
  ])("turned %i points to plan north in the type's own axes", (turn, x, y) => {
    const arrow = arrowOf(marksOf([placementAt(["A", "1"], { turn })]));
    expect([arrow.x, arrow.y]).toEqual([expect.closeTo(x, 4), expect.closeTo(y, 4)]);
  });
});

describe("grid names", () => {
  it("are both on the plate that serves one placement", () => {
    expect(textsOf([placementAt(["A", "1"])])).toEqual(["N", "GRID A", "GRID 1"]);
  });

  it("stand at the far end of the axis on which the line lies, turned or not", () => {
    const middle = (turn: number, text: string) => {
      const extent = marksOf([placementAt(["A", "1"], { turn })]).find((mark) => mark.text === text)?.extent;
      if (extent === undefined) throw new Error(text);
      return { x: (extent.x0 + extent.x1) / 2, y: (extent.y0 + extent.y1) / 2 };
    };
    // Line A runs plan north: along the type's y, or along its x when the base is turned by 90.
    expect(Math.abs(middle(0, "GRID A").y)).toBeGreaterThan(Math.abs(middle(0, "GRID A").x));
    expect(middle(0, "GRID A").y).toBeLessThan(0);
    expect(Math.abs(middle(90, "GRID A").x)).toBeGreaterThan(Math.abs(middle(90, "GRID A").y));
    expect(middle(90, "GRID A").x).toBeLessThan(0);
  });

  it("are left out where the line does not lie on an axis of the type", () => {
    expect(textsOf([placementAt(["A", "1"], { turn: 20 })])).toEqual(["N"]);
    expect(textsOf([placementAt(["A", "1"], { offset: { x: inches(6), y: zero } })])).toEqual(["N", "GRID 1"]);
  });

  it("are those of skewed lines when the base is turned with them", () => {
    const skewed: GridLine = { kind: "skewed", name: "S", through: { x: zero, y: zero }, degrees: 20 };
    expect(textsOf([placementAt(["S", "A"], { turn: 20 })], [...gridLines, skewed])).toEqual(["N", "GRID S"]);
  });
});
