import { describe, expect, it } from "vitest";
import {
  formatDecimals,
  formatDegrees,
  formatFeetInches,
  formatInches,
  formatLength,
  formatStock,
  formatWithUnit,
  inches,
  millimetres,
  nanometres,
  parseAngle,
} from "../../../src/units/index.js";

const TICK = 396_875;

describe("formatStock", () => {
  it.each([
    [inches(0.375), "in", "3/8"],
    [inches(1.5), "in", "1-1/2"],
    [millimetres(6), "in", "6 mm"],
    [millimetres(12.5), "in", "12.5 mm"],
    [millimetres(25.4), "in", "1"],
    [inches(0.3), "in", "0.3"],
    [millimetres(6), "mm", "6"],
    [inches(0.25), "mm", "6.35"],
  ] as const)("says %d in %s as plate is bought: %s", (length, unit, text) => {
    expect(formatStock(length, unit)).toBe(text);
  });
});

describe("formatLength", () => {
  it.each([
    [inches(1.3125), "1-5/16"],
    [inches(0.75), "3/4"],
    [inches(12), "12"],
    [inches(0), "0"],
    [inches(-1.25), "-1-1/4"],
    [inches(-0.5), "-1/2"],
    [nanometres(TICK), "1/64"],
    [nanometres(63 * TICK), "63/64"],
    [inches(2.309), "2.309"],
    [inches(1.23456), "1.2346"],
    [inches(0.99996), "1"],
    [inches(-0.00001), "0"],
    [nanometres(1), "0"],
    [millimetres(32), "1.2598"],
  ])("%d nm in inches", (length, text) => {
    expect(formatLength(length, "in")).toBe(text);
  });

  it.each([
    [millimetres(32), "32"],
    [millimetres(0.5), "0.5"],
    [millimetres(13.25), "13.25"],
    [millimetres(-7.005), "-7.005"],
    [inches(1), "25.4"],
    [nanometres(499), "0"],
    [nanometres(-499), "0"],
    [nanometres(500), "0.001"],
    [nanometres(-500), "-0.001"],
    [nanometres(999_500), "1"],
    [millimetres(100_000), "100000"],
  ])("%d nm in millimetres", (length, text) => {
    expect(formatLength(length, "mm")).toBe(text);
  });

  it("adds the unit on request", () => {
    expect(formatWithUnit(inches(1.3125), "in")).toBe("1-5/16 in");
    expect(formatWithUnit(millimetres(32), "mm")).toBe("32 mm");
  });
});

/** Carries: rounding to whole ticks comes first, splitting second. One tick is 1/16 in here unless said otherwise. */
describe("formatFeetInches", () => {
  it.each([
    [inches(12.625), `1'-0 5/8"`],
    [inches(12), `1'-0"`],
    [inches(18.5), `1'-6 1/2"`],
    [inches(11.5), `11 1/2"`],
    [inches(0.625), `5/8"`],
    [inches(0), `0"`],
    [inches(11.98), `1'-0"`],
    [inches(23.98), `2'-0"`],
    [inches(23.96), `1'-11 15/16"`],
    [inches(0.98), `1"`],
    [inches(12.98), `1'-1"`],
    [inches(11 + 31 / 32), `1'-0"`],
    [nanometres(inches(11 + 31 / 32) - 1), `11 15/16"`],
    [inches(-12.625), `-1'-0 5/8"`],
    [inches(-11.98), `-1'-0"`],
    [inches(-0.01), `0"`],
    [inches(120), `10'-0"`],
    [inches(119.99), `10'-0"`],
  ])("%d nm", (length, text) => {
    expect(formatFeetInches(length, 16)).toBe(text);
  });

  it.each([
    [inches(11 + 63 / 64), 64, `11 63/64"`],
    [inches(11 + 127 / 128), 64, `1'-0"`],
    [inches(11.5), 1, `1'-0"`],
    [inches(11.75), 4, `11 3/4"`],
    [inches(11.75), 2, `1'-0"`],
  ] as const)("%d nm to 1/%d", (length, denominator, text) => {
    expect(formatFeetInches(length, denominator)).toBe(text);
  });

  it("never writes 12 inches, a fraction of one, or an unreduced fraction, for every 1/256 in up to 5 ft", () => {
    for (let at = 0; at <= 5 * 12 * 256; at++) {
      const text = formatFeetInches(inches(at / 256), 16);
      expect(text).not.toMatch(/(^|-)12(?!\d)/);
      expect(text).not.toMatch(/16\/16|[2468]\/(4|8|16)\b/);
    }
  });
});

describe("formatInches", () => {
  it.each([
    [inches(1.3125), 16, "1-5/16"],
    [inches(1.3125), 8, "1-3/8"],
    [inches(15 / 16 + 0.04), 16, "1"],
    [inches(-2.5), 16, "-2-1/2"],
    [inches(26), 64, "26"],
  ] as const)("%d nm to 1/%d", (length, denominator, text) => {
    expect(formatInches(length, denominator)).toBe(text);
  });
});

describe("formatDecimals", () => {
  it.each([
    [inches(1.3125), "in", 4, "1.3125"],
    [inches(1), "in", 3, "1.000"],
    [inches(-0.5), "in", 3, "-0.500"],
    [inches(0.9999), "in", 3, "1.000"],
    [inches(-0.0001), "in", 3, "0.000"],
    [nanometres(1), "in", 8, "0.00000004"],
    [millimetres(12.3456), "mm", 2, "12.35"],
    [millimetres(99_999.9996), "mm", 3, "100000.000"],
    [millimetres(2.5), "mm", 0, "3"],
    [millimetres(-2.5), "mm", 0, "-3"],
  ] as const)("%d nm in %s to %d places", (length, unit, places, text) => {
    expect(formatDecimals(length, unit, places)).toBe(text);
  });
});

describe("angles", () => {
  it.each([
    ["45", 45],
    ["22.5", 22.5],
    ["-30\u00B0", -30],
    ["30 deg", 30],
    [".5 degrees", 0.5],
    ["\u221290", -90],
    [360, 360],
    ["-0", 0],
  ] as const)("reads %j", (text, degrees) => {
    expect(parseAngle(text)).toEqual({ ok: true, value: degrees });
  });

  it.each(["", "1,5", "north", "45'", "361", "1e2", "NaN", Number.NaN, "4 5", "45 rad"])("refuses %j", (text) => {
    const reading = parseAngle(text);
    expect(reading.ok ? "" : reading.message).toMatch(/allowed|decimal point/);
  });

  it.each([
    [45, "45\u00B0"],
    [22.5, "22.5\u00B0"],
    [-30.25, "-30.25\u00B0"],
    [0.00001, "0\u00B0"],
    [-0.00001, "0\u00B0"],
    [359.99999, "360\u00B0"],
    [0.1 + 0.2, "0.3\u00B0"],
  ])("writes %d", (degrees, text) => {
    expect(formatDegrees(degrees)).toBe(text);
  });
});
