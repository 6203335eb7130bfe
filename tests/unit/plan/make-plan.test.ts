import { describe, expect, it } from "vitest";
import { ProgramFault } from "../../../src/diagnostics/program-fault.js";
import { given } from "../../../src/job/index.js";
import { concreteOnPlan, makePlan, placedAlike } from "../../../src/plan/index.js";
import { placeRods } from "../../../src/rods/index.js";
import { inches, millimetres, toMillimetres } from "../../../src/units/index.js";
import { baseFixture, jobFixture } from "../../fixture.js";
import { placementAt, planFixture, planJob, zero } from "../../setting-out-plan.js";

const rodsOf = (turn: number) => {
  const { plan } = planJob({ placements: [placementAt(["B", "2"], { turn })] });
  return plan.bases[0]?.rods.map(({ rod, plan: at }) => [rod.tag, at.x, at.y]);
};

/** Rods at +-6 x +-5 in on the crossing B-2 at x 360, y 300 in. */
const rod = (tag: string, x: number, y: number) => [
  tag,
  toMillimetres(inches(360 + x)),
  toMillimetres(inches(300 + y)),
];

describe("the plan", () => {
  it("turns rods counter-clockwise, quarter turns exactly", () => {
    expect(rodsOf(0)).toEqual([rod("A1", -6, 5), rod("A2", 6, 5), rod("A3", 6, -5), rod("A4", -6, -5)]);
    expect(rodsOf(90)).toEqual([rod("A1", -5, -6), rod("A2", -5, 6), rod("A3", 5, 6), rod("A4", 5, -6)]);
    expect(rodsOf(-270)).toEqual(rodsOf(90));
    expect(rodsOf(180)).toEqual([rod("A1", 6, -5), rod("A2", -6, -5), rod("A3", -6, 5), rod("A4", 6, 5)]);
  });

  it("turns by other angles to the nanometre", () => {
    const [, a2] = rodsOf(30) ?? [];
    // (6, 5) in turned by 30 degrees: x = 6 cos 30 - 5 sin 30, y = 6 sin 30 + 5 cos 30.
    expect(a2?.[1]).toBeCloseTo((360 + 6 * Math.sqrt(0.75) - 2.5) * 25.4, 6);
    expect(a2?.[2]).toBeCloseTo((300 + 3 + 5 * Math.sqrt(0.75)) * 25.4, 6);
  });

  it("sets a base off its crossing along the plan's axes, whatever its turn", () => {
    const offset = { x: inches(2), y: inches(-3) };
    const { plan } = planJob({ placements: [placementAt(["A", "1"], { offset, turn: 90 })] });
    expect(plan.bases[0]).toMatchObject({ crossing: { x: 0, y: 0 }, workingPoint: { x: 50.8, y: -76.2 } });
  });

  it("names every base, and tells two of one crossing apart", () => {
    const offset = { x: inches(60), y: zero };
    const placements = [placementAt(["A", "1"]), placementAt(["A", "1"], { offset }), placementAt(["1", "B"])];
    expect(planJob({ placements }).plan.bases.map(({ name }) => name)).toEqual(["B1 A-1", "B1 A-1 (2)", "B1 1-B"]);
  });

  it("has the box around crossings, rods and concrete, turned", () => {
    const { plan } = planJob({ placements: [placementAt(["A", "1"], { turn: 45 }), placementAt(["B", "2"])] });
    // Piers of 24 in: turned by 45 degrees the corner reaches 12 sqrt 2 in.
    expect(plan.extent.x0).toBeCloseTo(-12 * Math.SQRT2 * 25.4, 5);
    expect([plan.extent.x1, plan.extent.y1]).toEqual([9448.8, 7924.8]);
  });

  it("places concrete that stands off the working point", () => {
    const { concrete } = baseFixture();
    const base = baseFixture({
      concrete: {
        ...concrete,
        shape: given({ kind: "circle", diameter: millimetres(600) }, "job"),
        at: { x: millimetres(100), y: zero },
      },
    });
    const { plan } = planJob({ placements: [placementAt(["A", "1"], { turn: 90 })] }, [base]);
    const [placed] = plan.bases;
    expect(placed === undefined ? null : concreteOnPlan(placed)).toEqual({
      kind: "circle",
      center: { x: 0, y: 100 },
      diameter: millimetres(600),
    });
  });

  it("is null for a job without a layout", () => {
    expect(makePlan(jobFixture(), [])).toBeNull();
  });

  it.each([
    ["an unknown base", placementAt(["A", "1"], { mark: "B9" })],
    ["an unknown line", placementAt(["A", "9"])],
    ["lines that do not cross", placementAt(["A", "B"])],
  ])("made by hand, %s is a fault of the program", (_name, placement) => {
    const rods = placeRods(baseFixture());
    const job = jobFixture({ plan: planFixture({ placements: [placement] }) });
    const bases = rods.ok ? [{ base: baseFixture(), rods: rods.value }] : [];
    expect(() => makePlan(job, bases)).toThrow(ProgramFault);
  });
});

describe("turned alike", () => {
  const alike = (...turns: readonly number[]) =>
    placedAlike({ placements: turns.map((turn) => placementAt(["A", "1"], { turn })) }, ["B1"]);

  it.each([
    [[0, 0], true],
    [[90, -270, 450 - 90 - 270], true],
    [[0, 180], false],
    [[0, 0.001], false],
    [[], false],
  ])("%j: %s", (turns, expected) => {
    expect(alike(...turns)).toBe(expected);
  });

  it("looks at one mark", () => {
    const placements = [placementAt(["A", "1"], { turn: 90 }), placementAt(["A", "1"], { mark: "B2" })];
    expect(placedAlike({ placements }, ["B1"])).toBe(true);
  });
});
