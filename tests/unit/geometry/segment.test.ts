import { describe, expect, test } from "vitest";
import type { Segment } from "../../../src/geometry/index.js";
import {
  arc,
  arcOf,
  headings,
  line,
  meetsAngle,
  positionAlong,
  QUARTER_BULGE,
  reversed,
  segmentExtent,
  segmentLength,
} from "../../../src/geometry/index.js";

const quarter = arc({ x: 10, y: 0 }, { x: 0, y: 10 }, QUARTER_BULGE);
const half = arc({ x: 10, y: 0 }, { x: -10, y: 0 }, 1);
const clockwise = arc({ x: 0, y: 10 }, { x: 10, y: 0 }, -QUARTER_BULGE);

describe("arcs by bulge", () => {
  test.each([
    ["quarter", quarter, Math.PI / 2, 0],
    ["half", half, Math.PI, 0],
    ["clockwise quarter", clockwise, -Math.PI / 2, Math.PI / 2],
  ])("%s: center, radius, sweep, start", (_, segment, sweep, start) => {
    const found = arcOf(segment);
    expect(found.center.x).toBeCloseTo(0, 12);
    expect(found.center.y).toBeCloseTo(0, 12);
    expect(found.radius).toBeCloseTo(10, 12);
    expect(found.sweep).toBeCloseTo(sweep, 12);
    expect(found.start).toBeCloseTo(start, 12);
    expect(found.end).toBeCloseTo(start + sweep, 12);
  });

  test("more than half a turn: bulge over 1", () => {
    const wide = arc({ x: 0, y: -10 }, { x: -10, y: 0 }, Math.tan((1.5 * Math.PI) / 4));
    const { center, radius, sweep } = arcOf(wide);
    expect([center.x, center.y, radius, sweep].map((value) => Math.round(value * 1e9) / 1e9 + 0)).toEqual([
      0, 0, 10, 4.71238898,
    ]);
    expect(segmentExtent(wide).x1).toBeCloseTo(10, 12);
    expect(segmentExtent(wide).y1).toBeCloseTo(10, 12);
    expect(segmentExtent(wide).x0).toBeCloseTo(-10, 12);
  });

  test("length, position, heading", () => {
    expect(segmentLength(quarter)).toBeCloseTo(5 * Math.PI, 12);
    expect(segmentLength(line({ x: 0, y: 0 }, { x: 3, y: 4 }))).toBe(5);
    const middle = positionAlong(quarter, 0.5);
    expect(middle.x).toBeCloseTo(10 * Math.SQRT1_2, 12);
    expect(middle.y).toBeCloseTo(10 * Math.SQRT1_2, 12);
    expect(headings(quarter).start).toBeCloseTo(Math.PI / 2, 12);
    expect(headings(quarter).end).toBeCloseTo(Math.PI, 12);
  });

  test("run the other way", () => {
    expect(reversed(quarter)).toEqual(clockwise);
    expect(Object.is(reversed(line({ x: 0, y: 0 }, { x: 1, y: 0 })).bulge, 0)).toBe(true);
  });

  test("the box holds the quadrant points that the arc passes, and no others", () => {
    expect(segmentExtent(quarter)).toEqual({ x0: 0, y0: 0, x1: 10, y1: 10 });
    const bow: Segment = arc({ x: 6, y: 8 }, { x: -6, y: 8 }, Math.tan(Math.atan2(6, 8) / 2));
    expect(segmentExtent(bow).y1).toBeCloseTo(10, 12);
    expect(segmentExtent(bow).y0).toBe(8);
  });

  test("angles met, both ways round", () => {
    expect([0, 0.7, Math.PI / 2, (-7 * Math.PI) / 4].map((angle) => meetsAngle(arcOf(quarter), angle))).toEqual([
      true,
      true,
      true,
      true,
    ]);
    expect([2, Math.PI, -0.1].map((angle) => meetsAngle(arcOf(clockwise), angle))).toEqual([false, false, false]);
  });
});
