/** The assignment with the least largest distance, against all of them tried one by one. */
import fc from "fast-check";
import { expect, it } from "vitest";
import type { Point } from "../../../src/geometry/index.js";
import { millimetresBetween } from "../../../src/geometry/index.js";
import { assignBy, assignEdges, assignNearest, leastLargest, placesOf } from "../../../src/orientation/bottleneck.js";

/** On a coarse grid, so that two points often have one nearest place, and distances are often equal. */
const spot = fc.record({ x: fc.integer({ min: -3, max: 3 }), y: fc.integer({ min: -3, max: 3 }) });
const both = fc
  .integer({ min: 1, max: 6 })
  .chain((length) => fc.tuple(...[0, 1].map(() => fc.array(spot, { minLength: length, maxLength: length }))));

function byTrying(from: readonly Point[], to: readonly Point[]): number {
  const [first, ...others] = from;
  if (first === undefined) return 0;
  const tries = to.map((at, i) => Math.max(millimetresBetween(first, at), byTrying(others, to.toSpliced(i, 1))));
  return Math.min(...tries);
}

it("is the least of all assignments, and null where none stays below the limit", () => {
  fc.assert(
    fc.property(both, fc.constantFrom(1, 2, 3, 5, Infinity), ([from = [], to = []], limit) => {
      const best = byTrying(from, to);
      const expected = best < limit ? best : null;
      expect(leastLargest(from, placesOf(to), limit)).toBe(expected);
      expect(assignNearest(from, placesOf(to), limit)?.worst ?? null).toBe(expected);
    }),
    { numRuns: 2000 },
  );
});

it("is null for lists of two lengths", () => {
  expect(leastLargest([{ x: 0, y: 0 }], placesOf([]))).toBeNull();
});

it("of costs is that of all the places, though near ones are looked at first", () => {
  const far = (each: readonly Point[]) => each.map(({ x, y }) => ({ x: 70 * x, y: 70 * y }));
  fc.assert(
    fc.property(both, fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 6, maxLength: 6 }), (lists, play) => {
      const [from = [], to = []] = lists.map(far);
      const costOf = (_: number, place: number, distance: number) => distance - (play[place] ?? 0);
      const all = from.map((at, i) => ({
        to: Int32Array.from(to.keys()),
        cost: Float64Array.from(to, (place, j) => costOf(i, j, millimetresBetween(at, place))),
      }));
      expect(assignBy(from, placesOf(to), 40, costOf)).toEqual(assignEdges(all));
    }),
    { numRuns: 1000 },
  );
});
