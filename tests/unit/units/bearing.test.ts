import { describe, expect, it } from "vitest";
import { parseBearing } from "../../../src/units/index.js";

const readValue = (text: string) => {
  const reading = parseBearing(text);
  return reading.ok ? reading.value : reading.message;
};

describe("bearings", () => {
  it.each([
    ["32.5", 32.5],
    ["0", 0],
    ["360", 0],
    ["32-30-00", 32.5],
    ["32\u00B030'", 32.5],
    ["32\u00B030'36\"", 32.51],
    ["32 30 36", 32.51],
    ["N 32-30 E", 32.5],
    ["S 32-30 E", 147.5],
    ["S32\u00B030'W", 212.5],
    ["n 32.5 w", 327.5],
    ["N 0 W", 0],
    ["45 deg", 45],
  ])("%s", (text, degrees) => {
    expect(readValue(text)).toBeCloseTo(degrees, 12);
  });

  it.each(["361", "-5", "32-60-00", "32-30-60", "N 91 E", "E 5 N", "", "east", "1e2"])("%s is refused", (text) => {
    expect(readValue(text)).toMatch("is no bearing: allowed are degrees clockwise from north");
  });
});
