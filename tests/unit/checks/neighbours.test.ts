import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Boxed, Meeting } from "../../../src/checks/geometry/neighbours.js";
import { findNeighbours } from "../../../src/checks/geometry/neighbours.js";

interface Disc {
  readonly name: number;
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** Twice the clear distance of two discs on a 1 mm lattice, in nanometres. */
const clear = (a: Disc, b: Disc) => Math.round(2e6 * (Math.hypot(a.x - b.x, a.y - b.y) - a.r - b.r));
const boxed = (item: Disc): Boxed<Disc> => ({
  item,
  box: { x0: item.x - item.r, y0: item.y - item.r, x1: item.x + item.r, y1: item.y + item.r },
});
const names = (meetings: readonly Meeting<Disc>[]) => meetings.map(({ a, b }) => `${a.name}-${b.name}`).sort();

const discs = fc
  .array(
    fc.tuple(
      fc.integer({ min: -3000, max: 3000 }),
      fc.integer({ min: -3000, max: 3000 }),
      fc.integer({ min: 1, max: 200 }),
    ),
    {
      minLength: 2,
      maxLength: 40,
    },
  )
  .map((list) => list.map(([x, y, r], name): Disc => ({ name, x, y, r })));

describe("neighbours", () => {
  it("are those that trying all pairs finds", () => {
    fc.assert(
      fc.property(discs, (list) => {
        const all = list.flatMap((a, i) => list.slice(i + 1).map((b) => ({ a, b, twice: clear(a, b) })));
        const { overlapping, nearest } = findNeighbours(list.map(boxed), clear);
        expect(names(overlapping)).toEqual(names(all.filter(({ twice }) => twice < 0)));
        expect(nearest?.twice).toBe(Math.min(...all.map(({ twice }) => twice)));
      }),
    );
  });

  it("does not measure all pairs of a large plan", () => {
    const list = Array.from(
      { length: 2000 },
      (_, i): Disc => ({ name: i, x: (i % 50) * 7000, y: Math.floor(i / 50) * 7000, r: 300 }),
    );
    let measured = 0;
    const { nearest } = findNeighbours(list.map(boxed), (a, b) => {
      measured += 1;
      return clear(a, b);
    });
    expect(nearest?.twice).toBe(2 * 6_400_000_000);
    expect(measured).toBeLessThan(20 * list.length);
  });

  it("none and one have none", () => {
    expect(findNeighbours<Disc>([], clear)).toEqual({ overlapping: [], nearest: null });
    const one = boxed({ name: 0, x: 0, y: 0, r: 1 });
    expect(findNeighbours([one], clear).nearest).toBeNull();
  });
});
