import { describe, expect, it } from "vitest";
import { given } from "../../../src/job/index.js";
import { makeTransform, planToSite, siteToPlan } from "../../../src/plan/index.js";
import { coordinate, millimetres } from "../../../src/units/index.js";
import { controlPoint, planFixture } from "../../setting-out-plan.js";

const m = (metres: number) => coordinate(metres * 1e9);
const motion = (bearing: number, scaleFactor = 1) => ({
  bearing,
  scaleFactor,
  origin: { northing: m(5000), easting: m(2000) },
});
const onPlan = (x: number, y: number) => ({
  plan: given({ x: millimetres(x * 1000), y: millimetres(y * 1000) }, "job"),
});

describe("plan to site", () => {
  /** 30 m east and 40 m north on the plan. */
  it.each([
    [0, 5040, 2030],
    [90, 4970, 2040],
    [180, 4960, 1970],
    [270, 5030, 1960],
  ])("plan north at bearing %d, exactly", (bearing, north, east) => {
    expect(planToSite(motion(bearing), { x: 30_000, y: 40_000 })).toEqual({ northing: m(north), easting: m(east) });
  });

  it("multiplies by the scale factor", () => {
    expect(planToSite(motion(0, 0.9996), { x: 0, y: 100_000 })).toEqual({ northing: m(5099.96), easting: m(2000) });
  });

  it("goes back", () => {
    expect(siteToPlan(motion(90, 0.5), { northing: m(4970), easting: m(2040) })).toEqual({ x: 60_000, y: 80_000 });
  });

  it("holds coordinates beyond 2^53 nm", () => {
    const far = { ...motion(0), origin: { northing: m(9_999_000), easting: m(500_000) } };
    expect(planToSite(far, { x: 1, y: 1 })).toEqual({ northing: m(9_999_000.001), easting: m(500_000.001) });
  });
});

describe("the transform", () => {
  it("by origin and bearing is what the job says, with residuals of the points that are on the plan", () => {
    const transform = makeTransform(
      planFixture({
        transform: { kind: "origin", northing: m(5000), easting: m(2000), bearing: 90 },
        control: [controlPoint("CP1", m(4970.001), m(2040.002), onPlan(30, 40)), controlPoint("BM", m(1), m(1))],
      }),
    );
    expect(transform).toEqual({
      kind: "origin",
      ...motion(90),
      residuals: [{ name: "CP1", dn: 1_000_000, de: 2_000_000 }],
    });
  });

  it("by two points that agree leaves nothing", () => {
    const transform = makeTransform(
      planFixture({
        transform: { kind: "points", points: ["CP1", "CP2"] },
        control: [
          controlPoint("CP1", m(5000), m(2000), onPlan(0, 0)),
          controlPoint("CP2", m(5000 - 50), m(2000), onPlan(50, 0)),
        ],
      }),
    );
    expect(transform).toEqual({
      kind: "points",
      ...motion(90),
      residuals: [
        { name: "CP1", dn: 0, de: 0 },
        { name: "CP2", dn: 0, de: 0 },
      ],
    });
  });

  it("by two points that are 10 mm too far apart leaves half of it at each, the scale held", () => {
    const transform = makeTransform(
      planFixture({
        transform: { kind: "points", points: ["CP1", "CP2"] },
        control: [
          controlPoint("CP1", m(5000), m(2000), onPlan(0, 0)),
          controlPoint("CP2", m(5000), m(2050.01), onPlan(50, 0)),
        ],
      }),
    );
    expect(transform?.scaleFactor).toBe(1);
    expect(transform?.residuals).toEqual([
      { name: "CP1", dn: 0, de: -5_000_000 },
      { name: "CP2", dn: 0, de: 5_000_000 },
    ]);
  });

  it("uses the named points only", () => {
    const transform = makeTransform(
      planFixture({
        transform: { kind: "points", points: ["CP1", "CP2"] },
        control: [
          controlPoint("CP1", m(5000), m(2000), onPlan(0, 0)),
          controlPoint("BAD", m(5), m(2), onPlan(10, 10)),
          controlPoint("CP2", m(5050), m(2000), onPlan(0, 50)),
        ],
      }),
    );
    expect(transform?.residuals.map(({ name }) => name)).toEqual(["CP1", "CP2"]);
    expect(transform?.bearing).toBe(0);
  });

  it("is none where the job asks for none", () => {
    expect(makeTransform(planFixture())).toBeNull();
  });
});
