/** A square washer beside and inside any contour: against points set close along it, and the booleans of @jscad/modeling. */
import modeling from "@jscad/modeling";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { columnContour } from "../../src/checks/geometry/measure.js";
import { squareRoom, twiceAlongAxes, twiceToSquare } from "../../src/checks/geometry/square-washer.js";
import type { Contour, Point } from "../../src/geometry/index.js";
import { circle, flatten, point, rectangle } from "../../src/geometry/index.js";
import { millimetres, nanometres } from "../../src/units/index.js";

const { booleans, measurements, primitives } = modeling;

const mm = fc.integer({ min: -300, max: 300 });
const spot: fc.Arbitrary<Point> = fc.tuple(mm, mm).map(([x, y]) => point(x, y));
const size = fc.integer({ min: 80, max: 400 });
const zero = nanometres(0);
const shape: fc.Arbitrary<Contour> = fc.oneof(
  size.map((d) => circle(point(0, 0), millimetres(d))),
  fc.tuple(size, size, fc.integer({ min: 5, max: 39 })).map(([x, y, radius]) => {
    return rectangle(point(10, -5), millimetres(x), millimetres(y), { kind: "round", radius: millimetres(radius) });
  }),
  fc.tuple(size, size, fc.integer({ min: 5, max: 39 })).map(([x, y, leg]) => {
    const cut = { kind: "chamfer", x: millimetres(leg), y: millimetres(2 * leg > 39 ? leg : 2 * leg) } as const;
    return rectangle(point(0, 0), millimetres(x), millimetres(y), cut);
  }),
  fc.tuple(size, size).map(([depth, width]) => {
    const own = { flange: millimetres(12), web: millimetres(8), depthAlong: "y", at: { x: zero, y: zero } } as const;
    return columnContour({ kind: "wide flange", depth: millimetres(depth), width: millimetres(width), ...own });
  }),
);

function closeAlong(contour: Contour): readonly Point[] {
  const corners = flatten(contour, 0.001);
  return corners.flatMap((from, i) => {
    const to = corners[(i + 1) % corners.length] ?? from;
    const pieces = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y)));
    return Array.from({ length: pieces }, (_, k) => {
      return { x: from.x + ((to.x - from.x) * k) / pieces, y: from.y + ((to.y - from.y) * k) / pieces };
    });
  });
}

const square = ({ x, y }: Point, side: number) => primitives.rectangle({ center: [x, y], size: [side, side] });
const common = (a: ReturnType<typeof square>, b: ReturnType<typeof square>) =>
  measurements.measureArea(booleans.intersect(a, b));

describe("a square washer", () => {
  it("has the room that no point of the contour lies within", () => {
    fc.assert(
      fc.property(spot, shape, (at, contour) => {
        const room = squareRoom(at, contour) / 1e6;
        const brute =
          2 * Math.min(...closeAlong(contour).map(({ x, y }) => Math.max(Math.abs(x - at.x), Math.abs(y - at.y))));
        expect(room).toBeLessThanOrEqual(brute + 0.01);
        expect(room).toBeGreaterThanOrEqual(brute - 2.01);
      }),
      { numRuns: 400 },
    );
  });

  it("does not overlap another exactly where the larger of dx and dy is half of both sides", () => {
    fc.assert(
      fc.property(spot, spot, size, size, (a, b, first, second) => {
        const clear = twiceAlongAxes(a, b) >= millimetres(first) + millimetres(second);
        expect(common(square(a, first), square(b, second)) < 1e-6).toBe(clear);
      }),
      { numRuns: 300 },
    );
  });

  it("does not overlap a round one exactly where that is no nearer than its radius", () => {
    fc.assert(
      fc.property(spot, spot, size, size, (a, b, side, diameter) => {
        const twice = twiceToSquare(a, b, millimetres(side));
        const disc = primitives.circle({ center: [a.x, a.y], radius: diameter / 2, segments: 256 });
        const area = common(disc, square(b, side));
        if (twice >= millimetres(diameter)) expect(area).toBeLessThan(1e-3);
        else if (twice < millimetres(diameter - 4)) expect(area).toBeGreaterThan(1e-3);
      }),
      { numRuns: 300 },
    );
  });
});
