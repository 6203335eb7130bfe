import { describe, expect, test } from "vitest";
import {
  distanceBetweenPoints,
  point,
  pointInNanometres,
  snap,
  toLattice,
  turnOf,
  twiceDistanceBetweenPoints,
} from "../../../src/geometry/index.js";

describe("points on the lattice", () => {
  test.each([
    [0.1 + 0.2, 300_000],
    [0.000_000_5, 1],
    [-0.000_000_5, -1],
    [0.000_000_499, 0],
    [25.4 / 64, 396_875],
  ])("%d mm is %d nm, halves away from zero", (mm, nm) => {
    expect(toLattice(mm)).toBe(nm);
  });

  test("no minus zero", () => {
    expect(Object.is(snap(-0), 0)).toBe(true);
    expect(Object.is(point(-1e-9, -0).x, 0)).toBe(true);
    expect(pointInNanometres(-0.4, 0.4)).toEqual({ x: 0, y: 0 });
  });

  test("halves mirror", () => {
    expect(pointInNanometres(396_875 / 2, -396_875 / 2)).toEqual({ x: 0.198_438, y: -0.198_438 });
  });

  test("a 3-4-5 triangle in inches", () => {
    const [a, b] = [point(0, 0), point(3 * 25.4, 4 * 25.4)];
    expect(distanceBetweenPoints(a, b)).toBe(5 * 25_400_000);
    expect(twiceDistanceBetweenPoints(a, b)).toBe(10 * 25_400_000);
  });

  test("NaN is a bug, not a point", () => {
    expect(() => point(Number.NaN, 0)).toThrow(RangeError);
  });
});

describe("turns", () => {
  test.each([
    [0, 1, 0],
    [30, Math.sqrt(3) / 2, 0.5],
    [45, Math.SQRT1_2, Math.SQRT1_2],
    [60, 0.5, Math.sqrt(3) / 2],
    [90, 0, 1],
    [180, -1, 0],
    [210, -Math.sqrt(3) / 2, -0.5],
    [270, 0, -1],
    [360, 1, 0],
    [-90, 0, -1],
  ])("%d degrees exactly", (degrees, cos, sin) => {
    expect(turnOf(degrees)).toEqual({ cos, sin });
  });

  test("every octant agrees with the library functions and with its mirror image", () => {
    for (let i = 0; i <= 7 * 13; i++) {
      const { cos, sin } = turnOf(360 * i, 7 * 13);
      const angle = (2 * Math.PI * i) / (7 * 13);
      expect(cos).toBeCloseTo(Math.cos(angle), 14);
      expect(sin).toBeCloseTo(Math.sin(angle), 14);
      expect(turnOf(-360 * i, 7 * 13)).toEqual({ cos, sin: -sin + 0 });
    }
  });
});
