/** A template inside a form: containment by the booleans of @jscad/modeling, distances by points set close along both contours. */
import modeling from "@jscad/modeling";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { twiceCornerBearing, twiceSideBearing } from "../../src/checks/geometry/form-bearing.js";
import { leastGapInside } from "../../src/checks/geometry/gap-inside.js";
import { twiceExtent } from "../../src/checks/geometry/measure.js";
import type { Contour, Point } from "../../src/geometry/index.js";
import { circle, flatten, point, rectangle } from "../../src/geometry/index.js";
import type { Corner } from "../../src/job/model/job.js";
import { millimetres } from "../../src/units/index.js";

const { booleans, measurements, primitives } = modeling;

const corner: fc.Arbitrary<Corner> = fc.oneof(
  fc.constant({ kind: "square" } as const),
  fc.record({
    kind: fc.constantFrom("chamfer" as const, "notch" as const),
    x: fc.integer({ min: 5, max: 140 }).map(millimetres),
    y: fc.integer({ min: 5, max: 140 }).map(millimetres),
  }),
  fc.record({ kind: fc.constant("round" as const), radius: fc.integer({ min: 5, max: 140 }).map(millimetres) }),
);
const side = fc.integer({ min: 300, max: 700 });
const off = fc.integer({ min: -60, max: 60 });
const straight = fc
  .tuple(off, off, side, side, corner)
  .map(([x, y, width, height, treatment]) =>
    rectangle(point(x, y), millimetres(width), millimetres(height), treatment),
  );
const shape: fc.Arbitrary<Contour> = fc.oneof(
  { weight: 4, arbitrary: straight },
  { weight: 1, arbitrary: fc.tuple(off, off, side).map(([x, y, d]) => circle(point(x, y), millimetres(d))) },
);

const TOLERANCE = 0.01;
const polygonOf = (contour: Contour) =>
  primitives.polygon({ points: flatten(contour, TOLERANCE).map(({ x, y }): [number, number] => [x, y]) });

/** Area of the inner shape past the outer one, mm2. */
function areaPast(inner: Contour, outer: Contour): number {
  return measurements.measureArea(booleans.subtract(polygonOf(inner), polygonOf(outer)));
}

const STEP = 2;

function closeAlong(contour: Contour): readonly Point[] {
  const corners = flatten(contour, 0.01);
  return corners.flatMap((from, i) => {
    const to = corners[(i + 1) % corners.length] ?? from;
    const pieces = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / STEP));
    return Array.from({ length: pieces }, (_, k) => ({
      x: from.x + ((to.x - from.x) * k) / pieces,
      y: from.y + ((to.y - from.y) * k) / pieces,
    }));
  });
}

function leastBetween(a: Contour, b: Contour): number {
  const others = closeAlong(b);
  return Math.min(...closeAlong(a).map((p) => Math.min(...others.map((q) => Math.hypot(p.x - q.x, p.y - q.y)))));
}

describe("the gap of a template inside a form", () => {
  test("is negative where some of the template lies past the form, and only there", () => {
    fc.assert(
      fc.property(shape, shape, (inner, outer) => {
        const { twice } = leastGapInside(inner, outer);
        const past = areaPast(inner, outer);
        if (twice >= 0) expect(past).toBeLessThan(0.5);
        // What is 2 mm deep is larger than the flattening leaves out.
        if (twice < -4e6) expect(past).toBeGreaterThan(0.5);
      }),
      { numRuns: 120 },
    );
  });

  test("is the least distance between the two contours", () => {
    fc.assert(
      fc.property(shape, shape, (inner, outer) => {
        const { twice, at } = leastGapInside(inner, outer);
        if (twice <= 0) return;
        const gap = twice / 2e6;
        const brute = leastBetween(inner, outer);
        expect(gap).toBeLessThanOrEqual(brute + 0.02);
        expect(Math.hypot(gap, STEP)).toBeGreaterThanOrEqual(brute - 0.02);
        const near = Math.min(...closeAlong(inner).map((p) => Math.hypot(p.x - at.x, p.y - at.y)));
        expect(near).toBeLessThanOrEqual(Math.hypot(gap, STEP) + 0.02);
      }),
      { numRuns: 60 },
    );
  });
});

describe("what a template bears on a straight form", () => {
  const middle = point(0, 0);

  test("along x is how far it reaches past both faces, below and above the middle, row by row", () => {
    fc.assert(
      fc.property(shape, straight, (plate, form) => {
        const faces = twiceExtent(form);
        const found = twiceSideBearing(plate, faces, middle, "x");
        const points = closeAlong(plate);
        const [bottom, top] = [faces.y0 / 2e6, faces.y1 / 2e6];
        const halves = [points.filter(({ y }) => y >= bottom && y <= 0), points.filter(({ y }) => y >= 0 && y <= top)];
        const reaches = halves.map((half) =>
          Math.min(
            faces.x0 / 2e6 - Math.min(...half.map(({ x }) => x)),
            Math.max(...half.map(({ x }) => x)) - faces.x1 / 2e6,
          ),
        );
        const brute = Math.min(...reaches);
        expect((found ?? Number.NaN) / 2e6).toBeGreaterThanOrEqual(brute - 0.02);
        expect((found ?? Number.NaN) / 2e6).toBeLessThanOrEqual(brute + 2 * STEP);
      }),
      { numRuns: 200 },
    );
  });

  test("at its corners is a seat that lies on it and past the form", () => {
    fc.assert(
      fc.property(straight, straight, (plate, form) => {
        const twice = twiceCornerBearing(plate, form, middle);
        if (twice === null || twice <= 2e5) return;
        const size = twice / 2e6 - 0.01;
        const onForm = booleans.subtract(polygonOf(plate), polygonOf(form));
        for (const [sx, sy] of [
          [1, 1],
          [-1, 1],
          [-1, -1],
          [1, -1],
        ] as const) {
          const seats = plate.segments
            .filter(({ from }) => sx * from.x > 0 && sy * from.y > 0)
            .map(({ from }) =>
              primitives.rectangle({
                center: [from.x - (sx * size) / 2, from.y - (sy * size) / 2],
                size: [size, size],
              }),
            );
          const shares = seats.map((seat) => measurements.measureArea(booleans.intersect(seat, onForm)));
          expect(Math.max(...shares)).toBeGreaterThan(size * size * 0.999 - 1);
        }
      }),
      { numRuns: 50 },
    );
  });
});
