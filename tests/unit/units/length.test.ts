import { describe, expect, it } from "vitest";
import {
  add,
  inches,
  millimetres,
  nanometres,
  roundSymmetric,
  scale,
  subtract,
  toMillimetres,
  toUnit,
} from "../../../src/units/index.js";

describe("lengths", () => {
  it("are whole nanometres", () => {
    expect(inches(1)).toBe(25_400_000);
    expect(inches(1 / 64)).toBe(396_875);
    expect(inches(2.309)).toBe(58_648_600);
    expect(millimetres(0.001)).toBe(1_000);
    expect(toMillimetres(inches(1))).toBe(25.4);
  });

  it("round half away from zero, so that a mirrored plate stays a mirror", () => {
    expect([0.5, 1.5, -0.5, -1.5, -0.4].map(roundSymmetric)).toEqual([1, 2, -1, -2, 0]);
    expect(Object.is(roundSymmetric(-0.4), 0)).toBe(true);
  });

  it("refuse what is not a length", () => {
    for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, 1e17]) expect(() => nanometres(bad)).toThrow(RangeError);
  });

  it("add, subtract and scale exactly", () => {
    expect(add(inches(0.1), inches(0.2))).toBe(7_620_000);
    expect(subtract(inches(1), inches(1 / 64))).toBe(25_003_125);
    expect(scale(inches(1.5), 1.25)).toBe(47_625_000);
  });

  it("reach summary.json in 1e-6 in or 1e-5 mm", () => {
    expect(toUnit(inches(1.3125), "in")).toBe(1.3125);
    expect(toUnit(nanometres(8_466_667), "in")).toBe(0.333333);
    expect(toUnit(inches(-1 / 64), "mm")).toBe(-0.39688);
    expect(Object.is(toUnit(nanometres(-1), "in"), 0)).toBe(true);
  });
});
