import { describe, expect, test } from "vitest";
import type { CornerTreatment, Path } from "../../../src/geometry/index.js";
import {
  circle,
  cornerFaults,
  distanceBetweenPoints,
  extentOf,
  measureArea,
  measurePerimeter,
  pathFaults,
  point,
  polygon,
  rectangle,
  rectanglePoints,
  regionArea,
  roundedRectangle,
  signedArea,
  smallestInsideCorner,
} from "../../../src/geometry/index.js";
import { millimetres, nanometres } from "../../../src/units/index.js";

const origin = point(0, 0);
const mm = millimetres;
const [w, h] = [mm(200), mm(100)];

/** Area and perimeter of a 200 x 100 rectangle whose four corners are treated: closed forms. */
const treated: readonly [string, CornerTreatment, number, number, number][] = [
  ["square", { kind: "square" }, 20_000, 600, 4],
  ["chamfer", { kind: "chamfer", x: mm(20), y: mm(10) }, 20_000 - 4 * 100, 600 - 4 * 30 + 4 * Math.hypot(20, 10), 8],
  ["round", { kind: "round", radius: mm(15) }, 20_000 - (4 - Math.PI) * 225, 600 - (8 - 2 * Math.PI) * 15, 8],
  ["notch", { kind: "notch", x: mm(20), y: mm(10) }, 20_000 - 4 * 200, 600, 12],
];

function joints({ segments }: Path): boolean {
  return segments.every(({ to }, i) => {
    const next = segments[(i + 1) % segments.length]?.from;
    return next?.x === to.x && next.y === to.y;
  });
}

describe.each(treated)("a rectangle with %s corners", (_, corner, area, perimeter, pieces) => {
  const plate = rectangle(origin, w, h, corner);

  test("area and perimeter", () => {
    expect(measureArea(plate)).toBeCloseTo(area, 8);
    expect(measurePerimeter(plate)).toBeCloseTo(perimeter, 9);
  });

  test("is closed, simple, counter-clockwise, of its size", () => {
    expect(plate.segments).toHaveLength(pieces);
    expect(joints(plate)).toBe(true);
    expect(pathFaults(plate)).toEqual([]);
    expect(signedArea(plate)).toBeGreaterThan(0);
    expect(extentOf(plate)).toEqual({ x0: -100, y0: -50, x1: 100, y1: 50 });
  });
});

describe("corners", () => {
  test("the legs of a chamfer lie along x and y at every corner", () => {
    const plate = rectangle(origin, w, h, { kind: "chamfer", x: mm(20), y: mm(10) });
    const xs = plate.segments.flatMap(({ from }) => (Math.abs(from.y) === 50 ? [from.x] : []));
    const ys = plate.segments.flatMap(({ from }) => (Math.abs(from.x) === 100 ? [from.y] : []));
    expect(xs.sort((a, b) => a - b)).toEqual([-80, -80, 80, 80]);
    expect(ys.sort((a, b) => a - b)).toEqual([-40, -40, 40, 40]);
  });

  test("corners that meet leave no piece of zero length", () => {
    const stadium = rectangle(origin, w, h, { kind: "round", radius: mm(50) });
    expect(stadium.segments).toHaveLength(6);
    expect(measureArea(stadium)).toBeCloseTo(100 * 100 + Math.PI * 2500, 8);
    expect(pathFaults(stadium)).toEqual([]);
    expect(measureArea(roundedRectangle(origin, h, h, mm(50)))).toBeCloseTo(Math.PI * 2500, 8);
  });

  test("corners without room: the edges are named, the limit itself passes", () => {
    const points = rectanglePoints(origin, w, h);
    expect(cornerFaults(points, { kind: "round", radius: mm(50) })).toEqual([]);
    const faults = cornerFaults(points, { kind: "round", radius: nanometres(mm(50) + 1) });
    expect(faults.map(({ has, needs }) => [has, needs])).toEqual([
      [mm(100), mm(100) + 2],
      [mm(100), mm(100) + 2],
    ]);
  });

  test("a triangle's fillets keep their radius, and sharp hollow corners are told apart", () => {
    const points = [point(0, 0), point(120, 0), point(30, 90)];
    const rounded = polygon(points, { kind: "round", radius: mm(8) });
    expect(smallestInsideCorner(rounded, "inner")).toBe(mm(8));
    expect(smallestInsideCorner(rounded, "outer")).toBeNull();
    expect(smallestInsideCorner(polygon(points), "inner")).toBe(0);
    expect(smallestInsideCorner(rectangle(origin, w, h, { kind: "notch", x: mm(5), y: mm(5) }), "outer")).toBe(0);
    expect(smallestInsideCorner(circle(origin, mm(30)), "inner")).toBe(mm(15));
    expect(smallestInsideCorner(circle(origin, mm(30)), "outer")).toBeNull();
  });

  test("an L-shape: rounding fills the hollow corner, a chamfer leaves it sharp", () => {
    const points = [point(0, 0), point(100, 0), point(100, 40), point(40, 40), point(40, 100), point(0, 100)];
    const area = 100 * 40 + 40 * 60;
    const corner = (1 - Math.PI / 4) * 25;
    expect(measureArea(polygon(points, { kind: "round", radius: mm(5) }))).toBeCloseTo(area - 5 * corner + corner, 8);
    expect(smallestInsideCorner(polygon(points, { kind: "round", radius: mm(5) }), "outer")).toBe(mm(5));
    expect(measureArea(polygon(points, { kind: "chamfer", x: mm(5), y: mm(5) }))).toBeCloseTo(area - 5 * 12.5, 8);
  });
});

describe("contours", () => {
  test("a polygon given clockwise comes out counter-clockwise", () => {
    const points = [...rectanglePoints(origin, w, h)].reverse();
    expect(signedArea(polygon(points))).toBeGreaterThan(0);
  });

  test("an odd side stays symmetric about its centre", () => {
    const box = extentOf(rectangle(point(10, 0), nanometres(5), mm(1)));
    expect(box.x0).toBeCloseTo(10 - 3e-6, 9);
    expect(box.x1).toBeCloseTo(10 + 3e-6, 9);
  });

  test("a circle of odd diameter keeps it exactly", () => {
    const odd = nanometres(396_875);
    const box = extentOf(circle(origin, odd));
    expect((box.x1 - box.x0) * 1e6).toBeCloseTo(396_875, 6);
    expect(measureArea(circle(origin, mm(2)))).toBeCloseTo(Math.PI, 14);
  });

  test("material is outer less inner", () => {
    const ring = { outer: circle(origin, mm(100)), inner: [circle(origin, mm(60))] };
    expect(regionArea(ring)).toBeCloseTo(Math.PI * (2500 - 900), 9);
  });

  test("faults of a path", () => {
    const bow = polygon([point(0, 0), point(10, 10), point(10, 0), point(0, 10), point(-5, 5)]);
    expect(pathFaults(bow).map(({ kind, at }) => [kind, at.x, at.y])).toEqual([["crossing", 5, 5]]);
    const twice = polygon([point(0, 0), point(10, 0), point(5, 5), point(10, 10), point(0, 10), point(5, 5)]);
    expect(pathFaults(twice).map(({ kind }) => kind)).toContain("repeated");
    const touching = polygon([point(0, 0), point(20, 0), point(20, 10), point(10, 0), point(0, 10)]);
    expect(pathFaults(touching).map(({ kind }) => kind)).toContain("crossing");
    expect(pathFaults({ kind: "path", segments: [] }).map(({ kind }) => kind)).toEqual(["empty"]);
    const open = { ...rectangle(origin, w, h), segments: rectangle(origin, w, h).segments.slice(1) };
    expect(pathFaults(open).map(({ kind }) => kind)).toEqual(["open"]);
    const folded = polygon([point(0, 0), point(10, 0), point(5, 0)]);
    expect(pathFaults(folded).length).toBeGreaterThan(0);
  });

  test("distance along a treated edge is exact", () => {
    const { segments } = rectangle(origin, w, h, { kind: "round", radius: mm(15) });
    const straight = segments.filter(({ bulge }) => bulge === 0).map(({ from, to }) => distanceBetweenPoints(from, to));
    expect(straight.sort((a, b) => a - b)).toEqual([mm(70), mm(70), mm(170), mm(170)]);
  });
});
