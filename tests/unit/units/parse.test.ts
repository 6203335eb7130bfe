import { describe, expect, it } from "vitest";
import { parseCount, parseLength, type Unit } from "../../../src/units/index.js";

const INCH = 25_400_000;
const FOOT = 12 * INCH;
const MM = 1_000_000;

/** Text, unit of a bare number, nanometres: 1 in = 25.4 mm and 1 ft = 304.8 mm exactly (international yard and pound, 1959). */
const READ: readonly [string | number, Unit, number][] = [
  ["1-1/4", "in", 31_750_000],
  ['1 1/4"', "in", 31_750_000],
  ["1 - 1/4", "in", 31_750_000],
  ["1 1/4 in", "mm", 31_750_000],
  ["1'-6 1/2\"", "in", FOOT + 165_100_000],
  ["1' 6\"", "in", FOOT + 6 * INCH],
  ["1'6", "in", FOOT + 6 * INCH],
  ["1' - 6\"", "in", FOOT + 6 * INCH],
  ["1 ft 6 in", "mm", FOOT + 6 * INCH],
  ["1'-0 5/8\"", "in", FOOT + 15_875_000],
  ["1'-11 63/64\"", "in", 2 * FOOT - INCH / 64],
  ["1'-6.5\"", "in", FOOT + 165_100_000],
  ["2'", "mm", 2 * FOOT],
  ["1.5'", "in", FOOT + 6 * INCH],
  ["1.25 ft", "in", 15 * INCH],
  ["18", "in", 18 * INCH],
  ["18.5", "in", 469_900_000],
  ["18.", "in", 18 * INCH],
  [".75", "in", 19_050_000],
  ["0.75 in", "mm", 19_050_000],
  ["0.75IN", "mm", 19_050_000],
  ["3 inches", "mm", 3 * INCH],
  ["32 mm", "in", 32 * MM],
  ["12.7mm", "in", INCH / 2],
  ["3.2 cm", "in", 32 * MM],
  ["1.5 m", "in", 1500 * MM],
  ["32", "mm", 32 * MM],
  ["5/8", "in", 15_875_000],
  ["5 / 8", "in", 15_875_000],
  ["1/64", "in", 396_875],
  ["0.1 in", "mm", 2_540_000],
  ["-6", "in", -6 * INCH],
  ["+6", "in", 6 * INCH],
  ["-1-1/4", "in", -31_750_000],
  ["- 1 1/4", "in", -31_750_000],
  ["-1'-6\"", "in", -FOOT - 6 * INCH],
  ["\u22126", "in", -6 * INCH],
  ["1\u20131/4", "in", 31_750_000],
  ["1\u00BD", "in", 38_100_000],
  ["1-\u00BD\u2033", "in", 38_100_000],
  ["\u215D", "in", 15_875_000],
  ["1\u2032-6\u00BD\u2033", "in", FOOT + 165_100_000],
  ["1\u2019-6\u201D", "in", FOOT + 6 * INCH],
  ["1''", "mm", INCH],
  ["1\u00A01/4\u00A0in", "mm", 31_750_000],
  ["1\u20445", "mm", 200_000],
  ["0", "in", 0],
  ["-0", "in", 0],
  [18.5, "in", 469_900_000],
  [0.1, "in", 2_540_000],
  [-0, "mm", 0],
  [1e-6, "mm", 1],
  ["100 m", "in", 100_000 * MM],
  ["-100 m", "in", -100_000 * MM],
  // Off the lattice: rounded to 1 nm, half away from zero. 1/3 in = 8 466 666.67 nm; 0.0000005 mm = 0.5 nm.
  ["1/3", "in", 8_466_667],
  ["-1/3", "in", -8_466_667],
  ["0.0000005", "mm", 1],
  ["0.0000015", "mm", 2],
];

/** Text and a part of the message that refuses it. */
const REFUSED: readonly [string | number, string][] = [
  ["", "is empty"],
  ["   ", "is empty"],
  ["1/0", "divides by zero"],
  ["3-0/0", "divides by zero"],
  ["7/16/2", "more than one fraction bar"],
  ["NaN", "not a number"],
  [Number.NaN, "not a number"],
  [".nan", "not a number"],
  ["Infinity", "not a number"],
  [Number.POSITIVE_INFINITY, "not a number"],
  ["-.inf", "not a number"],
  ["1e9", "has an exponent"],
  [1e21, "has an exponent"],
  ["1,5", "has a comma"],
  ["1,200 mm", "has a comma"],
  ["1'-13\"", "12 or more inches"],
  ["1'-12\"", "12 or more inches"],
  ["1'-5 8/8\"", "improper fraction"],
  ["1.5'-6\"", "only whole feet"],
  ["1'-", "not feet and inches"],
  ["1'-6 mm", "not feet and inches"],
  ["6' 5'", "not feet and inches"],
  ["1-5/4", "improper fraction 1 5/4: write 2-1/4"],
  ["5/4", "improper fraction 5/4: write 1-1/4"],
  ["8/4", "improper fraction 8/4: write 2"],
  ["4/4", "improper fraction 4/4: write 1"],
  ["11/4", "improper fraction 11/4: 1-1/4 or 2-3/4? write the one that is meant"],
  ["13/4", "1-3/4 or 3-1/4?"],
  ["113/16", "1-13/16, 11-3/16 or 7-1/16?"],
  ["19/16", "1-9/16 or 1-3/16?"],
  ['9/8"', "write 1-1/8"],
  ["11/4 in", "1-1/4 or 2-3/4?"],
  ["11 / 4", "1-1/4 or 2-3/4?"],
  ["11\u20444", "1-1/4 or 2-3/4?"],
  ["-11/4", "1-1/4 or 2-3/4?"],
  ["105/8", "10-5/8 or 13-1/8?"],
  ["1 11/8", "1-1/8, 11-1/8 or 2-3/8?"],
  ["1'-11/4\"", "1-1/4 or 2-3/4?"],
  ["11/4'", "1-1/4 or 2-3/4?"],
  ["25/4 mm", "write 6-1/4"],
  ["1-4/4", "improper fraction"],
  ["6 5", "two numbers"],
  ["6-5", "two numbers"],
  ["1 -1/4", "two numbers"],
  ["1.5-1/4", "mixes a decimal and a fraction"],
  ["1.5/4", "mixes a decimal and a fraction"],
  ["1.2.3", "more than one decimal point"],
  [".", "is not a number"],
  ["--6", "is not a number"],
  ["-", "is not a length"],
  ["in", "is not a length"],
  ["six", "is not a length"],
  ["0x10", "is not a length"],
  ["1 furlong", "has the unit"],
  ["1 M", "has the unit"],
  ["M30", "thread size"],
  ["m 30", "thread size"],
  ["101 m", "more than 100 m"],
  ["100.000000001 m", "more than 100 m"],
  [1e9, "more than 100 m"],
  ["0.00000001", "less than 1 nm"],
  ["1".repeat(60), "longer than"],
];

describe("parseLength", () => {
  it.each(READ)("reads %j in %s as %d nm", (text, unit, nanometres) => {
    expect(parseLength(text, unit)).toEqual({ ok: true, value: nanometres });
  });

  it.each(REFUSED)("refuses %j: %s", (text, part) => {
    const reading = parseLength(text, "in");
    expect(reading.ok).toBe(false);
    if (!reading.ok) {
      expect(reading.message).toContain(part);
      expect(reading.message.startsWith('"')).toBe(true);
    }
  });

  it("says what was read and what is allowed in every refusal", () => {
    for (const [text] of REFUSED) {
      const reading = parseLength(text, "in");
      expect(reading.ok ? "" : reading.message).toMatch(/allowed|write|least length|only whole feet|up to 100 m/);
    }
  });

  it("does not take time with long digits", () => {
    expect(parseLength("9".repeat(100_000), "mm").ok).toBe(false);
    expect(parseLength(`1/${"9".repeat(100_000)}`, "mm").ok).toBe(false);
  });
});

describe("parseCount", () => {
  it.each([
    ["4", 4],
    [4, 4],
    ["+4", 4],
    [" 200 ", 200],
    ["4.0", 4],
  ] as const)("reads %j", (text, count) => {
    expect(parseCount(text, 1, 200)).toEqual({ ok: true, value: count });
  });

  it.each(["0", "-1", "201", "4.5", "4.01", "1e2", "", "four", 4.5, Number.NaN, 1e21, "9".repeat(40)])(
    "refuses %j",
    (text) => {
      const reading = parseCount(text, 1, 200);
      expect(reading.ok ? "" : reading.message).toContain("whole number from 1 to 200");
    },
  );
});
