/** The hull of a contour of very many segments has its box however it is turned: held against all the points themselves. */
import { describe, expect, it } from "vitest";
import { hullOf, MOST_SEGMENTS } from "../../../src/proof/hull.js";

/** A closed path of straight segments. */
const path = (points: readonly (readonly [number, number])[]) =>
  points.map(([x, y], index) => {
    const [tx, ty] = points[(index + 1) % points.length] ?? [x, y];
    return { from: { x, y }, to: { x: tx, y: ty }, bulge: 0 };
  });

/** A plate of 600 x 400 whose sides have so many points each, and teeth of 5 mm along them. */
const toothed = path(
  Array.from({ length: 4 * MOST_SEGMENTS }, (_, index) => {
    const [side, along, tooth] = [
      Math.floor(index / MOST_SEGMENTS),
      (index % MOST_SEGMENTS) / MOST_SEGMENTS,
      index % 2,
    ];
    const [x, y] = [600 * along, 400 * along];
    const at = [
      [x, 5 * tooth],
      [600 - 5 * tooth, y],
      [600 - x, 400 - 5 * tooth],
      [5 * tooth, 400 - y],
    ] as const;
    return at[side] ?? [0, 0];
  }),
);

/** Least and greatest of the starts in a direction. */
function reach(segments: readonly { readonly from: { readonly x: number; readonly y: number } }[], degrees: number) {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const values = segments.map(({ from }) => from.x * cos + from.y * sin);
  return [Math.min(...values), Math.max(...values)];
}

describe("the hull of a contour", () => {
  it.each([0, 0.25, 17.3, 90, 133.7, 359.9])("turned by %s degrees reaches as far as the contour", (degrees) => {
    const [wanted, found] = [reach(toothed, degrees), reach(hullOf(toothed), degrees)];
    expect(found[0]).toBeCloseTo(wanted[0] ?? Number.NaN, 2);
    expect(found[1]).toBeCloseTo(wanted[1] ?? Number.NaN, 2);
  });

  it("of a circle of two arcs of 1000 mm is within 0.05 mm of it, and of a few hundred segments", () => {
    const [left, right] = [
      { x: -500, y: 0 },
      { x: 500, y: 0 },
    ];
    const hull = hullOf([
      { from: left, to: right, bulge: 1 },
      { from: right, to: left, bulge: 1 },
    ]);
    expect(hull.length).toBeLessThan(MOST_SEGMENTS);
    for (const degrees of [0, 0.5, 45.25, 89.5]) {
      const [least = 0, most = 0] = reach(hull, degrees);
      expect(most).toBeGreaterThan(499.95);
      expect(least).toBeLessThan(-499.95);
      expect(most).toBeLessThan(500.001);
    }
  });
});
