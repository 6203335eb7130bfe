import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SurveyUnit } from "../../../src/units/index.js";
import {
  COORDINATE_PLACES,
  coordinate,
  coordinateStep,
  formatCoordinate,
  parseCoordinate,
  roundCoordinate,
  SURVEY_UNITS,
} from "../../../src/units/index.js";

const readValue = (text: string, unit: SurveyUnit | null = "m") => {
  const reading = parseCoordinate(text, unit);
  return reading.ok ? reading.value : reading.message;
};

describe("site coordinates are read exactly", () => {
  it.each([
    ["5000.125", "m", 5_000_125_000_000],
    ["-0.5", "m", -500_000_000],
    ["1640.42", "ft", 1640.42 * 304_800_000],
    ["1234.5678 mm", "m", 1_234_567_800],
    ["12 ft", "m", 3_657_600_000],
    ["12'", "m", 3_657_600_000],
    ["10000000", "m", 1e16],
    [".5 m", null, 500_000_000],
  ] as const)("%s in %s", (text, unit, nm) => {
    expect(readValue(text, unit)).toBe(nm);
  });

  /** US survey foot = 1200/3937 m (from memory: deprecated after 2022): 3937 ft-us are 1200 m, and 1 ft-us is 304 800 610 nm rounded. */
  it("US survey feet", () => {
    expect(readValue("3937 ft-us")).toBe(1_200_000_000_000);
    expect(readValue("1 ft-us")).toBe(304_800_610);
    expect(readValue("3937", "ft-us")).toBe(1_200_000_000_000);
    for (const text of ["1 usft", "1 US-FT", "1 us survey ft"]) expect(readValue(text)).toBe(304_800_610);
  });

  /** A state-plane easting of 2 000 000: the two feet are 1.219 m apart there (2 ppm of 609 600 m). */
  it("international and US survey feet differ by 2 parts in a million", () => {
    const [ft, us] = [readValue("2000000 ft"), readValue("2000000 ft-us")].map(Number);
    expect(Math.round(((us ?? 0) - (ft ?? 0)) / 1e6)).toBe(1219);
  });

  it.each([
    ["", "is not a coordinate"],
    ["1,000.5", "is not a coordinate"],
    ["1e3", "is not a coordinate"],
    ["NaN", "is not a coordinate"],
    ["12.3.4", "is not a coordinate"],
    ["12 yd", 'has the unit "yd"'],
    ["10000000.001", "is more than 10 000 km"],
  ])("%s is refused", (text, message) => {
    expect(readValue(text)).toMatch(message);
  });

  it("a bare number is refused where no unit is named", () => {
    expect(readValue("5000", null)).toMatch('"5000" has no unit');
  });
});

describe("site coordinates are written with fixed decimals", () => {
  it.each([
    [5_000_125_000_000, "m", 4, "5000.1250"],
    [-49_999, "m", 4, "0.0000"],
    [-50_000, "m", 4, "-0.0001"],
    [50_000, "m", 4, "0.0001"],
    [1e16, "m", 3, "10000000.000"],
    [1_200_000_000_000, "ft-us", 4, "3937.0000"],
    [304_800_000, "ft", 0, "1"],
    [1_500_000, "mm", 1, "1.5"],
  ] as const)("%d nm in %s", (nm, unit, places, text) => {
    expect(formatCoordinate(coordinate(nm), unit, places)).toBe(text);
  });

  const units = fc.constantFrom(...SURVEY_UNITS);
  const values = fc.integer({ min: -9_000_000_000_000_000, max: 9_000_000_000_000_000 }).map(coordinate);

  it("what is written is read back within half a unit of the last place, and as rounded exactly", () => {
    fc.assert(
      fc.property(values, units, (value, unit) => {
        const back = readValue(formatCoordinate(value, unit), unit);
        expect(back).toBe(roundCoordinate(value, unit));
        expect(Math.abs(Number(back) - value)).toBeLessThanOrEqual(coordinateStep(unit) / 2 + 1);
        expect(formatCoordinate(Number(back) as typeof value, unit)).toBe(formatCoordinate(value, unit));
      }),
    );
  });

  it("mirrors", () => {
    fc.assert(
      fc.property(values, units, (value, unit) => {
        const [one, other] = [value, coordinate(-value)].map((nm) =>
          roundCoordinate(nm, unit, COORDINATE_PLACES[unit]),
        );
        expect(Number(one) + Number(other)).toBe(0);
      }),
    );
  });
});
