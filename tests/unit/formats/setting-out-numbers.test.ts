/** Figures of setting-out files against the definitions of the units. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { surveyUnitName } from "../../../src/formats/survey-unit-name.js";
import type { SurveyUnit } from "../../../src/units/index.js";
import { formatCoordinate, millimetres, nanometres } from "../../../src/units/index.js";

const METRE = 1_000_000_000;

describe("lengths in survey units", () => {
  // NIST SP 811 (2008), B.6 and B.8: 1 ft = 0.3048 m exactly, 1 US survey foot = 1200/3937 m exactly.
  it.each<[number, SurveyUnit, string]>([
    [METRE, "m", "1.0000"],
    [METRE, "mm", "1000.0"],
    [0.3048 * METRE, "ft", "1.0000"],
    [1200 * METRE, "ft-us", "3937.0000"],
    [1200 * METRE, "ft", "3937.0079"],
    [500_000 * METRE, "ft-us", "1640416.6667"],
    [500_000 * METRE, "ft", "1640419.9475"],
    [-1200 * METRE, "ft-us", "-3937.0000"],
    [25_400_000, "ft", "0.0833"],
    [0, "m", "0.0000"],
  ])("%d nm in %s", (length, unit, text) => {
    expect(formatCoordinate(nanometres(length), unit)).toBe(text);
  });

  it.each<[number, SurveyUnit, string]>([
    [49_999, "m", "0.0000"],
    [50_000, "m", "0.0001"],
    [-49_999, "m", "0.0000"],
    [-50_000, "m", "-0.0001"],
    [49_999, "mm", "0.0"],
    [50_000, "mm", "0.1"],
    [-50_000, "mm", "-0.1"],
    [150_000, "mm", "0.2"],
    [15_239, "ft", "0.0000"],
    [15_240, "ft", "0.0001"],
    [-15_240, "ft", "-0.0001"],
    [15_240, "ft-us", "0.0000"],
    [15_241, "ft-us", "0.0001"],
  ])("rounds half away from zero: %d nm in %s", (length, unit, text) => {
    expect(formatCoordinate(nanometres(length), unit)).toBe(text);
  });

  it("is within half of its last place, and odd in the length", () => {
    const steps: Readonly<Record<SurveyUnit, number>> = { m: 1e5, mm: 1e5, ft: 30_480, "ft-us": 120_000_000 / 3937 };
    const units = fc.constantFrom<SurveyUnit>("m", "mm", "ft", "ft-us");
    fc.assert(
      fc.property(fc.integer({ min: -1e12, max: 1e12 }), units, (length, unit) => {
        const text = formatCoordinate(nanometres(length), unit);
        const ticks = Number(text.replace(".", ""));
        expect(Math.abs(ticks * steps[unit] - length)).toBeLessThanOrEqual(steps[unit] / 2 + 0.01);
        const mirrored = formatCoordinate(nanometres(-length), unit);
        expect(mirrored).toBe(Number(text) === 0 ? text : text.startsWith("-") ? text.slice(1) : `-${text}`);
        expect(text).toMatch(unit === "mm" ? /^-?\d+\.\d$/ : /^-?\d+\.\d{4}$/);
      }),
    );
  });

  it("never names a foot without saying which", () => {
    expect((["m", "mm", "ft", "ft-us"] as const).map(surveyUnitName)).toEqual(["m", "mm", "ft-intl", "ft-us"]);
    expect(formatCoordinate(millimetres(304.8), "ft")).toBe("1.0000");
  });
});
