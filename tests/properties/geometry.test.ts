/** Invariants of geometry, on shapes that fast-check makes. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Contour, CornerTreatment, Path, Point } from "../../src/geometry/index.js";
import {
  circle,
  containsPoint,
  cornerFaults,
  crossings,
  extentOf,
  extentOfPoints,
  flatten,
  measureArea,
  measurePerimeter,
  millimetresBetween,
  mirror,
  moveContour,
  nearestBetweenContours,
  nearestOnContour,
  pathFaults,
  point,
  polygon,
  positionAlong,
  rectangle,
  rectanglePoints,
  sameContour,
  sectionAt,
  segmentsOf,
  shift,
  signedArea,
  signedPolygonArea,
  toLattice,
  turn,
  twiceEdgeWeb,
  twiceWeb,
} from "../../src/geometry/index.js";
import type { Length } from "../../src/units/index.js";
import { nanometres } from "../../src/units/index.js";

const length = (least: number, most: number) => fc.integer({ min: least, max: most }).map((nm) => nanometres(nm));
const spot = fc.tuple(length(-2e8, 2e8), length(-2e8, 2e8)).map(([x, y]) => point(x / 1e6, y / 1e6));
const corner: fc.Arbitrary<CornerTreatment> = fc.oneof(
  fc.constant({ kind: "square" } as const),
  fc.record({ kind: fc.constant("chamfer" as const), x: length(1e6, 2e7), y: length(1e6, 2e7) }),
  fc.record({ kind: fc.constant("round" as const), radius: length(1e6, 2e7) }),
  fc.record({ kind: fc.constant("notch" as const), x: length(1e6, 2e7), y: length(1e6, 2e7) }),
);
const side = length(5e7, 6e8);
const plates: fc.Arbitrary<Path> = fc
  .tuple(spot, side, side, corner)
  .map(([center, x, y, treatment]) => rectangle(center, x, y, treatment));

/** A star-shaped polygon: radii at rising angles. Its corners stand out or hollow as they come. */
const stars: fc.Arbitrary<readonly Point[]> = fc
  .array(fc.integer({ min: 60, max: 300 }), { minLength: 5, maxLength: 12 })
  .map((radii) =>
    radii.map((radius, i) => {
      const angle = (2 * Math.PI * i) / radii.length + 0.1;
      return point(radius * Math.cos(angle), radius * Math.sin(angle));
    }),
  );
const roundedStars: fc.Arbitrary<Path> = fc
  .tuple(stars, length(5e5, 4e6))
  .filter(([points, radius]) => cornerFaults(points, { kind: "round", radius }).length === 0)
  .map(([points, radius]) => polygon(points, { kind: "round", radius }));
const circles = fc.tuple(spot, length(1e6, 3e8)).map(([center, diameter]) => circle(center, diameter));
const contours: fc.Arbitrary<Contour> = fc.oneof(plates, roundedStars, circles);

function spotsOn(contour: Contour, count: number): readonly Point[] {
  return segmentsOf(contour).flatMap((segment) =>
    Array.from({ length: count }, (_, i) => positionAlong(segment, i / count)),
  );
}

const near = (value: number, expected: number, relative = 1e-9, absolute = 1e-5) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(Math.abs(expected) * relative + absolute);

describe("contours", () => {
  test("close: every joint is one identical point, and run counter-clockwise without faults", () => {
    fc.assert(
      fc.property(fc.oneof(plates, roundedStars), (path) => {
        path.segments.forEach(({ to }, i) => {
          expect(path.segments[(i + 1) % path.segments.length]?.from).toEqual(to);
        });
        expect(signedArea(path)).toBeGreaterThan(0);
        expect(pathFaults(path)).toEqual([]);
      }),
    );
  });

  test("area, perimeter and extent agree with a fine polygon", () => {
    fc.assert(
      fc.property(contours, (contour) => {
        const points = flatten(contour, 1e-4);
        near(measureArea(contour), Math.abs(signedPolygonArea(points)), 0, 1e-4 * measurePerimeter(contour) + 1e-3);
        const chords = points.reduce(
          (sum, at, i) => sum + millimetresBetween(at, points[(i + 1) % points.length] ?? at),
          0,
        );
        near(measurePerimeter(contour), chords, 2e-6, 1e-3);
        const [box, rough] = [extentOf(contour), extentOfPoints(points)];
        for (const key of ["x0", "y0", "x1", "y1"] as const) near(box[key], rough[key], 0, 2e-4);
      }),
    );
  });

  test("moves and mirrors change no measure", () => {
    fc.assert(
      fc.property(contours, spot, fc.integer({ min: -720, max: 720 }), (contour, by, degrees) => {
        for (const move of [shift({ dx: by.x, dy: by.y }), turn(degrees), mirror("x"), mirror("y")]) {
          const moved = moveContour(contour, move);
          near(measureArea(moved), measureArea(contour), 1e-7);
          near(measurePerimeter(moved), measurePerimeter(contour), 1e-7);
        }
      }),
    );
  });

  test("shifts, mirrors and quarter turns are undone exactly", () => {
    fc.assert(
      fc.property(contours, spot, (contour, by) => {
        const there = moveContour(contour, shift({ dx: by.x, dy: by.y }));
        if (contour.kind === "path") {
          expect(sameContour(moveContour(there, shift({ dx: -by.x, dy: -by.y })), contour)).toBe(true);
        }
        expect(sameContour(moveContour(moveContour(contour, turn(90)), turn(-90)), contour)).toBe(true);
        expect(sameContour(moveContour(moveContour(contour, mirror("x")), mirror("x")), contour)).toBe(true);
      }),
    );
  });

  test("area is additive: a section cuts a contour into two that together are the whole", () => {
    fc.assert(
      fc.property(contours, fc.constantFrom("x" as const, "y" as const), (contour, axis) => {
        const box = extentOf(contour);
        const [from, to] = axis === "x" ? [box.x0, box.x1] : [box.y0, box.y1];
        const steps = 4000;
        const width = (to - from) / steps;
        let area = 0;
        for (let i = 0; i < steps; i++) {
          for (const piece of sectionAt(contour, axis, from + (i + 0.5) * width))
            area += (piece.to - piece.from) * width;
        }
        near(area, measureArea(contour), 2e-3);
      }),
      { numRuns: 25 },
    );
  });

  test("a treated rectangle is the whole less its corners", () => {
    fc.assert(
      fc.property(spot, side, side, corner, (center, x, y, treatment) => {
        const whole = measureArea(rectangle(center, x, y));
        near(measureArea(rectangle(center, x, y, treatment)), whole - 4 * cornerArea(treatment), 1e-8);
      }),
    );
  });
});

function cornerArea(treatment: CornerTreatment): number {
  const mm = (value: Length) => value / 1e6;
  switch (treatment.kind) {
    case "square":
      return 0;
    case "chamfer":
      return (mm(treatment.x) * mm(treatment.y)) / 2;
    case "round":
      return (1 - Math.PI / 4) * mm(treatment.radius) ** 2;
    case "notch":
      return mm(treatment.x) * mm(treatment.y);
  }
}

describe("distances", () => {
  test("the nearest point lies on the contour, and no sampled point is nearer", () => {
    fc.assert(
      fc.property(contours, spot, (contour, at) => {
        const { at: found, distance } = nearestOnContour(at, contour);
        expect(nearestOnContour(found, contour).distance).toBeLessThan(1e-6);
        expect(millimetresBetween(at, found)).toBeCloseTo(distance, 6);
        for (const sample of spotsOn(contour, 40))
          expect(millimetresBetween(at, sample)).toBeGreaterThan(distance - 1e-6);
      }),
    );
  });

  test("between contours: both ways alike, never more than any sampled pair, 0 where they cross", () => {
    fc.assert(
      fc.property(contours, contours, (a, b) => {
        const distance = toLattice(nearestBetweenContours(a, b).distance);
        expect(toLattice(nearestBetweenContours(b, a).distance)).toBe(distance);
        const crossed = segmentsOf(a).some((s) => segmentsOf(b).some((t) => crossings(s, t).length > 0));
        if (crossed) expect(distance).toBe(0);
        for (const sample of spotsOn(a, 12))
          expect(toLattice(nearestOnContour(sample, b).distance)).toBeGreaterThanOrEqual(distance - 1);
      }),
    );
  });

  test("between contours: as small as fine sampling finds", () => {
    fc.assert(
      fc.property(contours, contours, (a, b) => {
        const sampled = Math.min(...spotsOn(a, 200).map((sample) => nearestOnContour(sample, b).distance));
        const step = measurePerimeter(a) / 200;
        expect(sampled - nearestBetweenContours(a, b).distance).toBeLessThan(step);
      }),
      { numRuns: 50 },
    );
  });

  test("shifting and mirroring both changes no distance", () => {
    fc.assert(
      fc.property(plates, circles, spot, (edge, hole, by) => {
        for (const move of [shift({ dx: by.x, dy: by.y }), turn(90), mirror("x"), mirror("y")]) {
          const [moved, with_] = [moveContour(hole, move), moveContour(edge, move)];
          expect(Math.abs(twiceEdgeWeb(moved, with_) - twiceEdgeWeb(hole, edge))).toBeLessThanOrEqual(1);
          expect(Math.abs(twiceWeb(moved, with_) - twiceWeb(hole, edge))).toBeLessThanOrEqual(1);
          if (hole.kind === "circle" && moved.kind === "circle") {
            const apart =
              toLattice(nearestOnContour(moved.center, with_).distance) -
              toLattice(nearestOnContour(hole.center, edge).distance);
            expect(Math.abs(apart)).toBeLessThanOrEqual(1);
          }
        }
      }),
    );
  });

  test("a round hole's edge web is its centre's distance less its radius, inside and outside", () => {
    fc.assert(
      fc.property(plates, circles, (edge, hole) => {
        const distance = toLattice(nearestOnContour(hole.center, edge).distance);
        const sign = containsPoint(edge, hole.center) ? 1 : -1;
        expect(Math.abs(twiceEdgeWeb(hole, edge) - (2 * sign * distance - hole.diameter))).toBeLessThanOrEqual(1);
      }),
    );
  });
});

describe("inside", () => {
  test("agrees with the winding of a fine polygon", () => {
    fc.assert(
      fc.property(contours, spot, (contour, at) => {
        if (nearestOnContour(at, contour).distance < 1e-3) return;
        const points = flatten(contour, 1e-4);
        let turns = 0;
        points.forEach((a, i) => {
          const b = points[(i + 1) % points.length] ?? a;
          const angle = Math.atan2(b.y - at.y, b.x - at.x) - Math.atan2(a.y - at.y, a.x - at.x);
          turns += angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
        });
        expect(containsPoint(contour, at)).toBe(Math.abs(turns) > Math.PI);
      }),
    );
  });

  test("points on the contour count as inside, corners of its box only where it has them", () => {
    fc.assert(
      fc.property(plates, (path) => {
        for (const { from } of path.segments) expect(containsPoint(path, from)).toBe(true);
      }),
    );
    fc.assert(
      fc.property(spot, side, side, length(1e6, 2e7), (center, x, y, radius) => {
        for (const bare of rectanglePoints(center, x, y)) {
          expect(containsPoint(rectangle(center, x, y, { kind: "round", radius }), bare)).toBe(false);
        }
      }),
    );
  });
});
