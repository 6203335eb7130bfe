import { describe, expect, it } from "vitest";
import { fitPlate } from "../../../src/fit/index.js";

const square = [
  { x: -100, y: -100, clearance: 3 },
  { x: 100, y: -100, clearance: 3 },
  { x: 100, y: 100, clearance: 3 },
  { x: -100, y: 100, clearance: 3 },
];

describe("fitPlate", () => {
  it("finds a turn and a shift exactly", () => {
    const angle = 0.03;
    const rods = square.map(({ x, y }) => ({
      x: Math.cos(angle) * x - Math.sin(angle) * y + 5,
      y: Math.sin(angle) * x + Math.cos(angle) * y - 7,
    }));
    const { value, theta, tx, ty, active } = fitPlate(square, rods);
    expect([value, theta, tx, ty]).toEqual([-3, angle, 5, -7].map((figure) => expect.closeTo(figure, 9)));
    expect(active).toEqual([0, 1, 2, 3]);
  });

  it("turns no further than it may", () => {
    const angle = 0.03;
    const rods = square.map(({ x, y }) => ({
      x: Math.cos(angle) * x - Math.sin(angle) * y,
      y: Math.sin(angle) * x + Math.cos(angle) * y,
    }));
    expect(fitPlate(square, rods, { maxTurn: 0.01 }).theta).toBeCloseTo(0.01, 12);
    const held = fitPlate(square, rods, { maxTurn: 0 });
    expect(held.theta).toBe(0);
    expect(held.value).toBeCloseTo(2 * Math.SQRT2 * 100 * Math.sin(angle / 2) - 3, 9);
  });

  it("keeps its precision in survey coordinates of 1e9", () => {
    const rods = square.map(({ x, y }) => ({ x: x + 1e9, y: y - 2e9 }));
    expect(fitPlate(square, rods).value).toBeCloseTo(-3, 6);
  });

  it("refuses what cannot be fitted", () => {
    expect(() => fitPlate([], [])).toThrow(RangeError);
    expect(() => fitPlate(square, square.slice(1))).toThrow("4 holes, 3 rods");
    expect(() => fitPlate(square, square, { maxTurn: -1 })).toThrow("maxTurn");
    expect(() => fitPlate([{ x: Number.NaN, y: 0, clearance: 1 }], [{ x: 0, y: 0 }])).toThrow("not a number");
  });

  it("ends on rods that are spread far wider than the holes' own pattern", () => {
    const holes = [
      { x: 0, y: 1e-161, clearance: 2e-51 },
      { x: 0, y: 1.9e-47, clearance: 4e-87 },
      { x: 0, y: -2e-86, clearance: 2e-300 },
    ];
    const rods = [
      { x: 0, y: 0 },
      { x: 0, y: 1.9e-47 },
      { x: 4.5e-12, y: 0 },
    ];
    expect(fitPlate(holes, rods).value).toBeCloseTo(2.25e-12, 15);
  });
});
