/** Properties of the fit: what no position of plate, rods or unit can change. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FitHole, FitRod } from "../../src/fit/index.js";
import { certifyFit, fitPlate } from "../../src/fit/index.js";

const coordinate = fc.double({ min: -300, max: 300, noNaN: true });
const off = fc.double({ min: -6, max: 6, noNaN: true });
const hole = fc.record({ x: coordinate, y: coordinate, clearance: fc.double({ min: 0, max: 10, noNaN: true }) });
const set = fc.array(fc.record({ hole, dx: off, dy: off }), { minLength: 1, maxLength: 9 }).map((items) => ({
  holes: items.map((item) => item.hole),
  rods: items.map((item) => ({ x: item.hole.x + item.dx, y: item.hole.y + item.dy })),
}));
const move = fc.record({
  angle: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
  dx: fc.double({ min: -1e5, max: 1e5, noNaN: true }),
  dy: fc.double({ min: -1e5, max: 1e5, noNaN: true }),
});
const SAME = 1e-7;

function moved<T extends FitRod>(
  points: readonly T[],
  { angle, dx, dy }: { angle: number; dx: number; dy: number },
): T[] {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return points.map((at) => ({ ...at, x: cos * at.x - sin * at.y + dx, y: sin * at.x + cos * at.y + dy }));
}

const wider = (holes: readonly FitHole[], by: readonly number[]): FitHole[] =>
  holes.map((each, i) => ({ ...each, clearance: each.clearance + (by[i] ?? 0) }));

describe("the fit", () => {
  it("does not change when plate and rods are moved together", () => {
    fc.assert(
      fc.property(set, move, ({ holes, rods }, by) => {
        const here = fitPlate(holes, rods);
        const there = fitPlate(moved(holes, by), moved(rods, by));
        expect(Math.abs(here.value - there.value)).toBeLessThan(SAME);
      }),
    );
  });

  it("does not change when the rods alone are shifted", () => {
    fc.assert(
      fc.property(set, move, ({ holes, rods }, { dx, dy }) => {
        const shifted = fitPlate(holes, moved(rods, { angle: 0, dx, dy }));
        expect(Math.abs(fitPlate(holes, rods).value - shifted.value)).toBeLessThan(SAME);
      }),
    );
  });

  it("never gets worse with bigger holes", () => {
    fc.assert(
      fc.property(set, fc.array(fc.double({ min: 0, max: 5, noNaN: true })), ({ holes, rods }, by) => {
        expect(fitPlate(wider(holes, by), rods).value).toBeLessThanOrEqual(fitPlate(holes, rods).value + SAME);
      }),
    );
  });

  it("has the least clearance to spare over rods at its own holes", () => {
    fc.assert(
      fc.property(set, move, ({ holes }, { dx, dy }) => {
        const least = Math.min(...holes.map(({ clearance }) => clearance));
        expect(Math.abs(fitPlate(holes, moved(holes, { angle: 0, dx, dy })).value + least)).toBeLessThan(SAME);
      }),
    );
  });

  it("is as good as its own motion, and no motion tried at random is better than its lower bound", () => {
    const tried = fc.record({ angle: fc.double({ min: -0.05, max: 0.05, noNaN: true }), dx: off, dy: off });
    fc.assert(
      fc.property(set, fc.array(tried, { maxLength: 20 }), ({ holes, rods }, motions) => {
        const fit = certifyFit(holes, rods);
        const own = largest(holes, rods, { angle: fit.theta, dx: fit.tx, dy: fit.ty });
        expect(Math.abs(own - fit.value)).toBeLessThan(SAME);
        for (const motion of motions)
          expect(largest(holes, rods, motion)).toBeGreaterThanOrEqual(fit.lowerBound - SAME);
      }),
    );
  });

  it("has weights that balance: positive, with sum 1", () => {
    fc.assert(
      fc.property(set, ({ holes, rods }) => {
        const { multipliers } = certifyFit(holes, rods);
        expect(multipliers.every(({ weight }) => weight > 0)).toBe(true);
        expect(multipliers.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9);
      }),
    );
  });
});

function largest(
  holes: readonly FitHole[],
  rods: readonly FitRod[],
  motion: { angle: number; dx: number; dy: number },
): number {
  const residuals = moved(holes, motion).map(
    (each, i) => Math.hypot(each.x - (rods[i]?.x ?? 0), each.y - (rods[i]?.y ?? 0)) - each.clearance,
  );
  return Math.max(...residuals);
}
