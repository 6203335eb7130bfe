import { describe, expect, test } from "vitest";
import {
  circle,
  flatten,
  mirror,
  moveContour,
  moveInTurn,
  nearestOnContour,
  point,
  polygon,
  rectangle,
  sameContour,
  shift,
  signedArea,
  turn,
} from "../../../src/geometry/index.js";
import { millimetres, nanometres } from "../../../src/units/index.js";

const mm = millimetres;
const origin = point(0, 0);
const chamfered = rectangle(origin, mm(200), mm(200), { kind: "chamfer", x: mm(20), y: mm(10) });
const rounded = rectangle(origin, mm(200), mm(100), { kind: "round", radius: mm(20) });

describe("moves", () => {
  test("quarter turns are exact", () => {
    expect(turn(90).apply(point(3, 1))).toEqual({ x: -1, y: 3 });
    expect(turn(180).apply(point(3, 1))).toEqual({ x: -3, y: -1 });
    expect(turn(-90, point(1, 1)).apply(point(3, 1))).toEqual({ x: 1, y: -1 });
  });

  test("a mirrored path stays counter-clockwise and keeps its arcs", () => {
    const odd = polygon([point(0, 0), point(50, 0), point(20, 40)], { kind: "round", radius: mm(4) });
    const mirrored = moveContour(odd, mirror("y"));
    expect(mirrored.kind === "path" && signedArea(mirrored) > 0).toBe(true);
    expect(sameContour(moveContour(mirrored, mirror("y")), odd)).toBe(true);
    expect(sameContour(mirrored, odd)).toBe(false);
  });

  test("symmetry of outlines: unequal chamfers forbid a quarter turn, equal ones allow it", () => {
    expect(sameContour(moveContour(chamfered, turn(90)), chamfered)).toBe(false);
    expect(sameContour(moveContour(chamfered, turn(180)), chamfered)).toBe(true);
    expect(sameContour(moveContour(chamfered, mirror("x")), chamfered)).toBe(true);
    const equal = rectangle(origin, mm(200), mm(200), { kind: "chamfer", x: mm(20), y: mm(20) });
    expect(sameContour(moveContour(equal, turn(90)), equal)).toBe(true);
    expect(sameContour(circle(origin, mm(5)), moveContour(circle(origin, mm(5)), turn(33)))).toBe(true);
    expect(sameContour(circle(origin, mm(5)), circle(origin, nanometres(mm(5) + 1)))).toBe(false);
    expect(sameContour(circle(origin, mm(5)), chamfered)).toBe(false);
  });

  test("moves in turn, of contours", () => {
    const move = moveInTurn(mirror("x"), shift({ dx: 10, dy: 5 }));
    expect(move.mirrors).toBe(true);
    expect(move.apply(point(1, 2))).toEqual({ x: 11, y: 3 });
    expect(moveContour(circle(point(10, 5), mm(8)), move)).toEqual(circle(point(20, 0), mm(8)));
  });
});

describe("flattening", () => {
  test("chords stay within the tolerance, vertices lie on the contour", () => {
    for (const tolerance of [1, 0.1, 0.001]) {
      const points = flatten(rounded, tolerance);
      const off = points.map((at, i) => {
        const next = points[(i + 1) % points.length] ?? at;
        return nearestOnContour({ x: (at.x + next.x) / 2, y: (at.y + next.y) / 2 }, rounded).distance;
      });
      expect(Math.max(...off)).toBeLessThanOrEqual(tolerance + 1e-6);
      expect(Math.max(...points.map((at) => nearestOnContour(at, rounded).distance))).toBeLessThan(1e-6);
    }
  });

  test("fewer chords where more is tolerated, never a repeated vertex", () => {
    const [rough, fine] = [flatten(circle(origin, mm(100)), 1), flatten(circle(origin, mm(100)), 0.001)];
    expect(rough.length).toBeLessThan(fine.length);
    expect(new Set(fine.map(({ x, y }) => `${x} ${y}`)).size).toBe(fine.length);
    expect(flatten(circle(origin, mm(1)), 50)).toHaveLength(4 - 2);
  });
});
