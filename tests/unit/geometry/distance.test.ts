import { describe, expect, test } from "vitest";
import {
  arc,
  circle,
  containsPoint,
  crossings,
  gapFromExtentToSegment,
  line,
  nearestBetweenContours,
  nearestBetweenSegments,
  nearestOnContour,
  nearestOnSegment,
  point,
  polygon,
  QUARTER_BULGE,
  rectangle,
  sectionAt,
  twiceDepthInside,
  twiceEdgeWeb,
  twiceWeb,
} from "../../../src/geometry/index.js";
import { inches, millimetres, nanometres } from "../../../src/units/index.js";
import { distanceBetweenStrokes, strokeDistance } from "../../strokes.js";

const origin = point(0, 0);
const mm = millimetres;
const plate = rectangle(origin, mm(200), mm(100));
const rounded = rectangle(origin, mm(200), mm(100), { kind: "round", radius: mm(20) });

describe("distance from a point", () => {
  test("to lines, their ends, and arcs", () => {
    expect(nearestOnSegment(point(5, 3), line(point(0, 0), point(10, 0))).distance).toBe(3);
    expect(nearestOnSegment(point(13, 4), line(point(0, 0), point(10, 0))).distance).toBe(5);
    const quarter = arc(point(10, 0), point(0, 10), QUARTER_BULGE);
    expect(nearestOnSegment(point(3, 4), quarter).distance).toBe(5);
    expect(nearestOnSegment(point(-3, 6), quarter).distance).toBe(5);
    expect(nearestOnSegment(point(0, 0), quarter).distance).toBe(10);
  });

  test("to a rounded corner: the arc counts, not the square", () => {
    expect(nearestOnContour(point(95, 45), plate).distance).toBe(5);
    expect(nearestOnContour(point(80 + 9, 30 + 12), rounded).distance).toBeCloseTo(5, 12);
    expect(twiceDepthInside(point(80 + 18, 30 + 24), rounded)).toBe(-2 * mm(10));
    const nearest = nearestOnContour(point(89, 42), rounded);
    expect(nearest.at.x).toBeCloseTo(92, 9);
    expect(nearest.at.y).toBeCloseTo(46, 9);
  });

  test("exact in nanometres on an inch grid", () => {
    const board = rectangle(origin, inches(14), inches(14));
    for (let sixteenths = 1; sixteenths < 112; sixteenths++) {
      const at = point(((112 - sixteenths) * 25.4) / 16, 0);
      expect(twiceDepthInside(at, board)).toBe((2 * sixteenths * 25_400_000) / 16);
    }
  });

  test("a circle of odd diameter: twice the depth is a whole number", () => {
    expect(twiceDepthInside(point(0, 0), circle(origin, nanometres(396_875)))).toBe(396_875);
  });
});

describe("inside and outside", () => {
  test.each([
    [0, 0, true],
    [99.999, 49.999, false],
    [92, 46, true],
    [92.001, 46.001, false],
    [100, 0, true],
    [100.000_001, 0, false],
    [0, 50, true],
    [80, 30, true],
    [-100, 30, true],
    [-100.1, 30, false],
  ])("(%d, %d) in the rounded plate: %s", (x, y, inside) => {
    expect(containsPoint(rounded, point(x, y))).toBe(inside);
  });

  test("rows through corners and along edges count right", () => {
    const diamond = polygon([point(0, -10), point(10, 0), point(0, 10), point(-10, 0)]);
    expect([-11, -5, 5, 11].map((x) => containsPoint(diamond, point(x, 0)))).toEqual([false, true, true, false]);
    const stairs = polygon([point(0, 0), point(30, 0), point(30, 10), point(20, 10), point(20, 20), point(0, 20)]);
    expect([5, 25, 35].map((x) => containsPoint(stairs, point(x, 10)))).toEqual([true, true, false]);
  });

  test("sections give widths", () => {
    expect(sectionAt(plate, "x", 0)).toEqual([{ from: -50, to: 50 }]);
    expect(sectionAt(plate, "x", 101)).toEqual([]);
    const [row] = sectionAt(rounded, "y", 46);
    expect(row?.from).toBeCloseTo(-92, 9);
    expect(row?.to).toBeCloseTo(92, 9);
    const [chord] = sectionAt(circle(origin, mm(20)), "x", 6);
    expect(chord?.from).toBeCloseTo(-8, 12);
    expect(chord?.to).toBeCloseTo(8, 12);
    const u = polygon([
      point(0, 0),
      point(30, 0),
      point(30, 20),
      point(20, 20),
      point(20, 10),
      point(10, 10),
      point(10, 20),
      point(0, 20),
    ]);
    expect(sectionAt(u, "y", 15)).toEqual([
      { from: 0, to: 10 },
      { from: 20, to: 30 },
    ]);
  });
});

describe("between segments", () => {
  const quarter = arc(point(10, 0), point(0, 10), QUARTER_BULGE);

  test("lines", () => {
    const a = line(point(0, 0), point(10, 0));
    expect(nearestBetweenSegments(a, line(point(0, 5), point(10, 7))).distance).toBe(5);
    expect(nearestBetweenSegments(a, line(point(5, -5), point(5, 5))).distance).toBe(0);
    expect(nearestBetweenSegments(a, line(point(13, 4), point(20, 9))).distance).toBe(5);
    expect(crossings(a, line(point(4, 0), point(20, 0)))).toEqual([
      { x: 4, y: 0 },
      { x: 10, y: 0 },
    ]);
  });

  test("line and arc", () => {
    const outside = line(point(20, 0), point(0, 20));
    const pair = nearestBetweenSegments(outside, quarter);
    expect(pair.distance).toBeCloseTo(10 * Math.SQRT2 - 10, 12);
    expect(pair.a.x).toBeCloseTo(10, 12);
    expect(pair.b.x).toBeCloseTo(10 * Math.SQRT1_2, 12);
    expect(nearestBetweenSegments(line(point(0, 0), point(20, 20)), quarter).distance).toBe(0);
    expect(nearestBetweenSegments(line(point(0, 0), point(3, 4)), quarter).distance).toBeCloseTo(5, 12);
    expect(nearestBetweenSegments(line(point(-3, 14), point(-9, 14)), quarter).distance).toBeCloseTo(5, 12);
  });

  test("arc and arc", () => {
    const far = arc(point(30, 40), point(40, 30), QUARTER_BULGE);
    expect(nearestBetweenSegments(quarter, far).distance).toBeCloseTo(
      nearestBetweenSegments(far, quarter).distance,
      12,
    );
    const inner = arc(point(6, 0), point(0, 6), QUARTER_BULGE);
    expect(nearestBetweenSegments(quarter, inner).distance).toBeCloseTo(4, 12);
    const crossing = arc(point(0, 0), point(10, 10), -QUARTER_BULGE);
    expect(nearestBetweenSegments(quarter, crossing).distance).toBe(0);
  });
});

describe("webs", () => {
  test("between round holes, to the nanometre and negative where they overlap", () => {
    const hole = circle(origin, inches(1.3125));
    expect(twiceWeb(hole, circle(point(76.2, 0), inches(1.3125)))).toBe(2 * inches(3 - 1.3125));
    expect(twiceWeb(hole, circle(point(25.4, 0), inches(1.3125)))).toBe(2 * inches(1 - 1.3125));
    expect(twiceWeb(hole, circle(point(0.396_875, 0), nanometres(1)))).toBe(2 * 396_875 - inches(1.3125) - 1);
  });

  test("hole to rectangular opening, either way round", () => {
    const opening = rectangle(origin, mm(60), mm(40), { kind: "round", radius: mm(10) });
    const corner = circle(point(20 + 12, 10 + 16), mm(4));
    expect(twiceWeb(corner, opening)).toBe(2 * mm(20 - 10 - 2));
    expect(twiceWeb(opening, corner)).toBe(2 * mm(8));
    expect(twiceWeb(opening, circle(origin, mm(4)))).toBe(-2 * mm(20) - mm(4));
    expect(twiceWeb(opening, rectangle(point(100, 0), mm(60), mm(40)))).toBe(2 * mm(40));
    expect(twiceWeb(opening, rectangle(origin, mm(20), mm(20)))).toBe(-2 * mm(10));
  });

  test("hole to edge, signed", () => {
    expect(twiceEdgeWeb(circle(point(90, 0), mm(10)), plate)).toBe(2 * mm(5));
    expect(twiceEdgeWeb(circle(point(97, 0), mm(10)), plate)).toBe(-2 * mm(2));
    expect(twiceEdgeWeb(circle(point(110, 0), mm(10)), plate)).toBe(-2 * mm(15));
    expect(twiceEdgeWeb(rectangle(origin, mm(60), mm(40)), plate)).toBe(2 * mm(30));
    expect(twiceEdgeWeb(rectangle(point(100, 0), mm(60), mm(40)), plate)).toBe(0);
    expect(twiceEdgeWeb(rectangle(point(200, 0), mm(60), mm(40)), plate)).toBe(-2 * mm(70));
    expect(twiceEdgeWeb(circle(point(30, 0), mm(10)), circle(origin, mm(100)))).toBe(2 * mm(15));
  });

  test("between contours' lines", () => {
    expect(nearestBetweenContours(circle(origin, mm(100)), circle(point(10, 0), mm(40))).distance).toBeCloseTo(20, 9);
    expect(nearestBetweenContours(circle(origin, mm(100)), circle(point(50, 0), mm(40))).distance).toBeCloseTo(0, 9);
    expect(nearestBetweenContours(plate, circle(point(0, 70), mm(20))).distance).toBeCloseTo(10, 9);
    expect(nearestBetweenContours(plate, circle(point(0, 50), mm(20))).distance).toBeCloseTo(0, 9);
  });
});

describe("strokes", () => {
  const hole = circle(origin, mm(20));

  test("a box keeps off a segment: straight, oblique, round, or through it", () => {
    const box = { x0: 0, y0: 0, x1: 10, y1: 10 };
    expect(gapFromExtentToSegment(box, line(point(-5, -3), point(15, -3)))).toBe(3);
    expect(gapFromExtentToSegment(box, line(point(20, 0), point(0, 20)))).toBe(0);
    expect(gapFromExtentToSegment(box, line(point(24, 0), point(0, 24)))).toBeCloseTo(4 / Math.SQRT2, 12);
    expect(gapFromExtentToSegment(box, line(point(4, 4), point(6, 5)))).toBe(0);
    expect(gapFromExtentToSegment(box, line(point(-1, 5), point(11, 6)))).toBe(0);
    expect(gapFromExtentToSegment(box, arc(point(20, 5), point(5, 20), QUARTER_BULGE))).toBeCloseTo(
      15 - Math.hypot(5, 5),
      9,
    );
  });

  test("meet or keep off contours and each other", () => {
    expect(strokeDistance([point(-20, 0), point(20, 0)], hole)).toBe(0);
    expect(strokeDistance([point(-20, 12), point(20, 12)], hole)).toBeCloseTo(2, 9);
    expect(strokeDistance([point(-2, 0), point(2, 0)], hole)).toBeCloseTo(8, 9);
    expect(distanceBetweenStrokes([point(0, 0), point(1, 0)], [point(4, 4), point(5, 9)])).toBe(5);
  });
});
