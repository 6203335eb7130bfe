import { describe, expect, it } from "vitest";
import { asmeSheets, findGrade, isoSheets, steelDensities } from "../../../src/standards/index.js";
import { inches, millimetres, parseLength } from "../../../src/units/index.js";
import { stockSheets, stockThicknesses } from "../../reference/plate-stock/stock.js";
import { plateWeights } from "../../reference/plate-weights/weights.js";

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
        ? (steelDensities.in.value * row.thickness) / FOOT
        : (steelDensities.mm.value * row.thickness) / millimetres(1000);
    // Tables print 10.21 for 10.208, 20.41 for 20.417: one unit of the last figure.
    expect(Math.abs(row.weight - exact)).toBeLessThanOrEqual(0.0101);
  });

  it("490 lb/ft3 is 7849 kg/m3 and 0.2836 lb/in3 (AISC practice)", () => {
    expect((steelDensities.in.value * POUND_KG) / CUBIC_FOOT_M3).toBeCloseTo(7849.05, 2);
    expect(steelDensities.in.value / 1728).toBeCloseTo(0.28356, 5);
    expect(steelDensities.mm.value).toBe(7850);
  });

  it("1/4 in plate weighs 10.21 lb/ft2 (AISC Manual, weights of plate)", () => {
    expect(plateWeights.find((row) => row.thickness === inches(0.25))?.weight).toBe(10.21);
  });

  it("10 gauge is 0.1345 in: 5.625 lb/ft2 at 41.82 lb/ft2 per inch (Manufacturers' Standard Gauge)", () => {
    const gauge = stockThicknesses.in.find((row) => row.printed === "10 ga");
    expect((gauge?.thickness ?? 0) / inches(1)).toBeCloseTo(5.625 / 41.82, 4);
  });

  it("stock is listed thinnest first, and sheets are longer than wide", () => {
    for (const rows of Object.values(stockThicknesses)) {
      const sorted = rows.map((row) => row.thickness).toSorted((a, b) => a - b);
      expect(rows.map((row) => row.thickness)).toEqual(sorted);
    }
    for (const { width, length } of Object.values(stockSheets).flat()) expect(length).toBeGreaterThan(width);
  });
});

describe("sheets of paper", () => {
  it("ISO 216: each size is the one before, halved across and rounded down", () => {
    const { A0, A1, A2, A3, A4 } = isoSheets;
    for (const [large, small] of [
      [A0, A1],
      [A1, A2],
      [A2, A3],
      [A3, A4],
    ] as const) {
      expect(small.long).toBe(large.short);
      expect(small.short).toBe(Math.floor(large.long / 2 / 1e6) * 1e6);
    }
  });

  it("ISO 216: A0 is one square metre with sides as 1 to the square root of 2", () => {
    const { A0 } = isoSheets;
    expect((A0.short / 1e9) * (A0.long / 1e9)).toBeCloseTo(1, 3);
    expect(A0.long / A0.short).toBeCloseTo(Math.SQRT2, 3);
  });

  it("ASME Y14.1: A is a letter of 8-1/2 x 11 in; B to E are made of two sheets of the size before", () => {
    const { A, B, C, D, E } = asmeSheets;
    expect([A.short, A.long]).toEqual([inches(8.5), inches(11)]);
    for (const [small, large] of [
      [A, B],
      [B, C],
      [C, D],
      [D, E],
    ] as const) {
      expect(large.short).toBe(small.long);
      expect(large.long).toBe(2 * small.short);
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
