import { describe, expect, it } from "vitest";
import { densities, findGrade, plateStock, plateWeights, sheetSizes } from "../../../src/standards/index.js";
import { inches, millimetres, parseLength } from "../../../src/units/index.js";

const FOOT = inches(12);
const CUBIC_FOOT_M3 = 0.3048 ** 3;
const POUND_KG = 0.45359237;

describe("units (international yard and pound, 1959; NIST Handbook 44 Appendix C)", () => {
  it.each([
    ["1 in", "25.4 mm"],
    ["1 ft", "304.8 mm"],
    ["1 ft", "12 in"],
    ["1/64 in", "0.396875 mm"],
    ["39.3700787402 in", "1000.00000000108 mm"],
    ["1 m", "100 cm"],
    ["3'-3 3/8\"", "1000.125 mm"],
  ])("%s = %s", (a, b) => {
    expect(parseLength(a, "in")).toEqual(parseLength(b, "mm"));
  });
});

describe("weights of plate", () => {
  it.each(plateWeights)("$weight $unit from the density", (row) => {
    const exact =
      row.unit === "lb/ft2"
        ? (densities.us.value * row.thickness) / FOOT
        : (densities.metric.value * row.thickness) / millimetres(1000);
    // Tables print 10.21 for 10.208, 20.41 for 20.417: one unit of the last figure.
    expect(Math.abs(row.weight - exact)).toBeLessThanOrEqual(0.0101);
  });

  it("490 lb/ft3 is 7849 kg/m3 and 0.2836 lb/in3 (AISC practice)", () => {
    expect((densities.us.value * POUND_KG) / CUBIC_FOOT_M3).toBeCloseTo(7849.05, 2);
    expect(densities.us.value / 1728).toBeCloseTo(0.28356, 5);
    expect(densities.metric.value).toBe(7850);
  });

  it("1/4 in plate weighs 10.21 lb/ft2 (AISC Manual, weights of plate)", () => {
    expect(plateWeights.find((row) => row.thickness === inches(0.25))?.weight).toBe(10.21);
  });

  it("10 gauge is 0.1345 in: 5.625 lb/ft2 at 41.82 lb/ft2 per inch (Manufacturers' Standard Gauge)", () => {
    const gauge = plateStock.thicknesses.in.find((row) => row.printed === "10 ga");
    expect((gauge?.thickness ?? 0) / inches(1)).toBeCloseTo(5.625 / 41.82, 4);
  });
});

describe("sheets of paper", () => {
  const size = (name: string) => sheetSizes.find((row) => row.size === name);

  it("ISO 216: each size is the one before, halved across and rounded down", () => {
    for (const [large, small] of [
      ["A0", "A1"],
      ["A1", "A2"],
      ["A2", "A3"],
      ["A3", "A4"],
    ] as const) {
      expect(size(small)?.height).toBe(size(large)?.width);
      const half = (size(large)?.height ?? 0) / 2;
      expect(size(small)?.width).toBe(Math.floor(half / 1e6) * 1e6);
    }
  });

  it("ISO 216: A0 is one square metre with sides as 1 to the square root of 2", () => {
    const a0 = size("A0");
    expect(((a0?.width ?? 0) / 1e9) * ((a0?.height ?? 0) / 1e9)).toBeCloseTo(1, 3);
    expect((a0?.height ?? 0) / (a0?.width ?? 1)).toBeCloseTo(Math.SQRT2, 3);
  });

  it("ASME Y14.1: B to E are made of two sheets of the size before", () => {
    for (const [small, large] of [
      ["A", "B"],
      ["B", "C"],
      ["C", "D"],
      ["D", "E"],
    ] as const) {
      expect(size(large)?.width).toBe(size(small)?.height);
      expect(size(large)?.height).toBe(2 * (size(small)?.width ?? 0));
    }
  });
});

describe("grades", () => {
  it("F1554 grades are named by their yield strength in ksi", () => {
    for (const grade of ["36", "55", "105"]) {
      const reading = findGrade(grade);
      expect(reading.found && reading.row.yieldLeast).toBe(Number(grade));
      expect(reading.found && (reading.row.tensileGreatest ?? 0) > reading.row.tensileLeast).toBe(true);
    }
  });

  it("ISO 898-1: first figure x 100 = tensile strength, product x 10 = yield (definition of the designation)", () => {
    for (const grade of ["4.6", "5.6", "8.8", "10.9"]) {
      const [first, second] = grade.split(".").map(Number);
      const reading = findGrade(grade);
      expect(reading.found && reading.row.tensileLeast).toBe((first ?? 0) * 100);
      expect(reading.found && reading.row.yieldLeast).toBe((first ?? 0) * (second ?? 0) * 10);
    }
  });
});
