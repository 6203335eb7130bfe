/**
 * Geometry against general-purpose geometry code and published formulas:
 * - @jscad/modeling: areas of polygons and boolean differences;
 * - circular segment, A = r2 (theta - sin theta) / 2 and s = r theta (any handbook of mathematics, e.g. Bronshtein);
 * - Steiner's formula for a parallel body: A + P r + pi r2, perimeter P + 2 pi r (J. Steiner, 1840);
 * - Pick's theorem for lattice polygons (G. Pick, 1899);
 * - equally spaced holes on a bolt circle: chord = D sin(180 / n) (formula of Machinery's Handbook, "Coordinates for Hole
 *   Circles"; from memory), the table of constants for chords of a circle of diameter 1;
 * - four rods on a bolt circle: side of the square 0.7071 x bolt circle (Machinery's Handbook, inscribed square).
 */
import modeling from "@jscad/modeling";
import { describe, expect, test } from "vitest";
import type { Contour, Path, Point } from "../../src/geometry/index.js";
import {
  arc,
  circle,
  containsPoint,
  flatten,
  measureArea,
  measurePerimeter,
  millimetresBetween,
  path,
  point,
  polygon,
  rectangle,
  region,
  regionArea,
  roundedRectangle,
  segmentLength,
  signedArea,
} from "../../src/geometry/index.js";
import type { Pattern } from "../../src/job/model/job.js";
import { rodPositions } from "../../src/patterns/index.js";
import { inches, millimetres } from "../../src/units/index.js";

const { booleans, geometries, measurements, primitives } = modeling;
const mm = millimetres;
const origin = point(0, 0);

function flatGeometry(contour: Contour, tolerance: number) {
  return geometries.geom2.fromPoints(flatten(contour, tolerance).map(({ x, y }): [number, number] => [x, y]));
}

describe("areas by @jscad/modeling", () => {
  const shapes: readonly [string, Contour][] = [
    ["square", rectangle(origin, mm(200), mm(100))],
    ["chamfer", rectangle(point(5, -7), mm(200), mm(100), { kind: "chamfer", x: mm(20), y: mm(12) })],
    ["round", rectangle(origin, mm(200), mm(100), { kind: "round", radius: mm(18) })],
    ["notch", rectangle(origin, mm(200), mm(100), { kind: "notch", x: mm(20), y: mm(12) })],
    ["circle", circle(point(3, 4), inches(1 + 5 / 16))],
    [
      "hollow polygon, rounded",
      polygon([point(0, 0), point(100, 0), point(100, 40), point(40, 40), point(40, 100), point(0, 100)], {
        kind: "round",
        radius: mm(7),
      }),
    ],
  ];

  test.each(shapes)("%s", (_, contour) => {
    const area = measurements.measureArea(flatGeometry(contour, 1e-4));
    expect(Math.abs(area - measureArea(contour)) / measureArea(contour)).toBeLessThan(1e-5);
  });

  test("net area of a plate with holes and opening: boolean difference", () => {
    const outer = rectangle(origin, mm(300), mm(250), { kind: "chamfer", x: mm(20), y: mm(20) });
    const inner = [
      roundedRectangle(origin, mm(120), mm(90), mm(15)),
      ...[-1, 1].flatMap((x) => [-1, 1].map((y) => circle(point(x * 110, y * 85), mm(33)))),
    ];
    const cut = booleans.subtract(
      flatGeometry(outer, 1e-3),
      inner.map((hole) => flatGeometry(hole, 1e-3)),
    );
    const net = regionArea(region(outer, inner));
    expect(Math.abs(measurements.measureArea(cut) - net) / net).toBeLessThan(1e-4);
  });

  test("their own circle and rounded rectangle at many segments come to ours", () => {
    const round = primitives.circle({ radius: 30, segments: 4096 });
    expect(measurements.measureArea(round)).toBeCloseTo(measureArea(circle(origin, mm(60))), 1);
    const rounded = primitives.roundedRectangle({ size: [200, 100], roundRadius: 18, segments: 4096 });
    const ours = measureArea(roundedRectangle(origin, mm(200), mm(100), mm(18)));
    expect(Math.abs(measurements.measureArea(rounded) - ours) / ours).toBeLessThan(1e-5);
  });
});

describe("circular segment (handbook formula)", () => {
  test.each([1, 10, 30, 45, 60, 90, 120, 150, 180, 210, 270, 330, 359])("%d degrees", (degrees) => {
    const [radius, theta] = [50, (degrees * Math.PI) / 180];
    const [from, to] = [
      { x: radius, y: 0 },
      { x: radius * Math.cos(theta), y: radius * Math.sin(theta) },
    ];
    const bow = arc(from, to, Math.tan(theta / 4));
    const area = signedArea(path([bow, { from: to, to: from, bulge: 0 }]));
    const expected = (radius * radius * (theta - Math.sin(theta))) / 2;
    expect(Math.abs(area - expected)).toBeLessThan(1e-8);
    expect(Math.abs(segmentLength(bow) - radius * theta)).toBeLessThan(1e-9);
  });
});

/** The parallel body of a convex polygon at distance r: edges pushed outwards, joined by arcs about the corners. */
function parallelBody(corners: readonly Point[], r: number): Path {
  const edges = corners.map((a, i) => {
    const b = corners[(i + 1) % corners.length] ?? a;
    const length = millimetresBetween(a, b);
    const [nx, ny] = [((b.y - a.y) / length) * r, ((a.x - b.x) / length) * r];
    return { from: point(a.x + nx, a.y + ny), to: point(b.x + nx, b.y + ny), normal: Math.atan2(ny, nx) };
  });
  return path(
    edges.flatMap((edge, i) => {
      const next = edges[(i + 1) % edges.length] ?? edge;
      const turn = (next.normal - edge.normal + 2 * Math.PI) % (2 * Math.PI);
      return [{ from: edge.from, to: edge.to, bulge: 0 }, arc(edge.to, next.from, Math.tan(turn / 4))];
    }),
  );
}

describe("Steiner's formula for parallel bodies", () => {
  test.each([
    ["triangle", [point(0, 0), point(120, 10), point(40, 90)]],
    ["rectangle", [point(0, 0), point(200, 0), point(200, 100), point(0, 100)]],
    ["pentagon", [point(0, 0), point(60, -20), point(110, 30), point(70, 100), point(-10, 60)]],
  ])("%s: area, perimeter, and what it holds", (_, corners) => {
    const [bare, r] = [polygon(corners), 12.7];
    const body = parallelBody(corners, r);
    const [area, perimeter] = [measureArea(bare), measurePerimeter(bare)];
    expect(measureArea(body)).toBeCloseTo(area + perimeter * r + Math.PI * r * r, 3);
    expect(measurePerimeter(body)).toBeCloseTo(perimeter + 2 * Math.PI * r, 3);
    for (const corner of corners) expect(containsPoint(body, corner)).toBe(true);
  });
});

test("Pick's theorem: A = inside + on the edge / 2 - 1, counted with containsPoint", () => {
  const hollow = polygon([point(0, 0), point(12, 2), point(9, 6), point(14, 13), point(5, 8), point(-3, 11)]);
  let held = 0;
  for (let x = -5; x <= 15; x++) for (let y = -5; y <= 15; y++) if (containsPoint(hollow, point(x, y))) held++;
  const gcd = (a: number, b: number): number => (b === 0 ? Math.abs(a) : gcd(b, a % b));
  const onEdge = hollow.segments.reduce((sum, { from, to }) => sum + gcd(to.x - from.x, to.y - from.y), 0);
  expect(measureArea(hollow)).toBe(held - onEdge + onEdge / 2 - 1);
});

describe("bolt circles", () => {
  const positions = (count: number, diameter = inches(10)): readonly Point[] => {
    const pattern: Pattern = { kind: "circle", diameter, count, start: { kind: "straddle" } };
    return rodPositions(pattern);
  };

  /** sin(180 / n), the tabulated chords of a circle of diameter 1 (Machinery's Handbook; from memory, re-computed). */
  test.each([
    [3, 0.866025],
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the figure as tabulated
    [4, 0.707107],
    [5, 0.587785],
    [6, 0.5],
    [8, 0.382683],
    [10, 0.309017],
    [12, 0.258819],
    [16, 0.19509],
    [20, 0.156434],
    [24, 0.130526],
  ])("%d holes: chord = %d x D", (count, chord) => {
    const around = positions(count);
    around.forEach((at, i) => {
      expect(millimetresBetween(at, around[(i + 1) % count] ?? at) / 254).toBeCloseTo(chord, 6);
    });
  });

  test("four rods: the side of their square is 0.7071 of the bolt circle, and the diagonal is the bolt circle", () => {
    const [a, b, c] = positions(4, inches(20));
    if (a === undefined || b === undefined || c === undefined) throw new Error("four rods");
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the figure as tabulated
    expect(millimetresBetween(a, b) / 508).toBeCloseTo(0.7071, 4);
    expect(millimetresBetween(a, c)).toBeCloseTo(508, 5);
    expect(Math.abs(a.y)).toBe(Math.abs(b.y));
  });
});
