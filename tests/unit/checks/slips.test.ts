/** Slips of the hand, guessed. Ratios of units: 1 ft = 12 in, 1 in = 25.4 mm exactly (international yard and pound, 1959). */
import { describe, expect, it } from "vitest";
import { favouredPair, suspectRatio, suspectSlip } from "../../../src/checks/slips.js";
import { inches, millimetres } from "../../../src/units/index.js";

const feet = (value: number) => inches(12 * value);
const between = (from: number, to: number) => ({ from, to });

describe("suspectSlip", () => {
  it.each([
    ["feet for inches", feet(12), between(inches(3), inches(20)), "in", "12 ft where 12 in is meant?"],
    ["three quarters of a foot", feet(0.75), between(inches(0.5), inches(1)), "in", "0.75 ft where 0.75 in is meant?"],
    ["feet for metres from 10 ft on", feet(10), between(feet(30), feet(40)), "in", "10 ft where 10 m is meant?"],
    ["feet and a half", feet(1.5), between(inches(1), inches(3)), "in", "1.5 ft where 1.5 in is meant?"],
    ["inches for feet", inches(25), between(feet(15), feet(40)), "in", "25 in where 25 ft is meant?"],
    ["millimetres read as inches", inches(319), between(inches(5), inches(24)), "in", "319 in where 319 mm is meant?"],
    [
      "inches read as millimetres",
      millimetres(12),
      between(millimetres(150), millimetres(600)),
      "mm",
      "12 mm where 12 in is meant?",
    ],
    [
      "a fraction of an inch read as millimetres",
      millimetres(1.25),
      between(millimetres(20), millimetres(90)),
      "mm",
      "1.25 mm where 1.25 in is meant?",
    ],
    [
      "metres for feet, decimals",
      millimetres(31_700),
      between(feet(20), feet(40)),
      "in",
      "31.7 m where 31.7 ft is meant?",
    ],
    ["metres for feet", millimetres(30_000), between(feet(20), feet(40)), "in", "30 m where 30 ft is meant?"],
    [
      "feet for metres",
      feet(30),
      between(millimetres(25_000), millimetres(35_000)),
      "mm",
      "30 ft where 30 m is meant?",
    ],
    [
      "metres for millimetres",
      millimetres(250_000),
      between(millimetres(100), millimetres(400)),
      "mm",
      "250 m where 250 mm is meant?",
    ],
    [
      "a decimal point lost",
      millimetres(3000),
      between(millimetres(290), millimetres(310)),
      "mm",
      "3000 where 300 is meant?",
    ],
    ["a decimal point too far left", inches(1.5), between(inches(14), inches(16)), "in", "1-1/2 where 15 is meant?"],
  ] as const)("%s", (_name, length, plausible, unit, words) => {
    expect(suspectSlip(length, plausible, unit)?.words).toBe(words);
  });

  it.each([
    ["one that is plausible, at either end too", inches(12), between(inches(12), inches(12))],
    ["one that no slip brings there", inches(47), between(inches(10), inches(11))],
    ["a figure that nobody would write: 2-3/4 in is 0.2292 ft", inches(2.75), between(inches(0.2), inches(0.25))],
    [
      "a part of a foot that nobody would write: 2-1/4 in is 0.1875 ft",
      inches(2.25),
      between(inches(0.18), inches(0.19)),
    ],
    ["a decimal where the figure is round as it is: 100 ft is 30.48 m", feet(100), between(feet(27), feet(87))],
    ["feet for metres at the size of a plate", inches(18), between(inches(21), inches(126))],
  ])("says nothing of %s", (_name, length, plausible) => {
    expect(suspectSlip(length, plausible, "in")).toBeNull();
  });

  it("takes the rounder figure, unless the other lengths say otherwise", () => {
    const wide = between(inches(2), inches(60));
    expect(suspectSlip(inches(230), wide, "in")?.words).toBe("230 in where 230 mm is meant?");
    expect(suspectSlip(inches(300), wide, "in")?.words).toBe("25 ft where 25 in is meant?");
    const metric = favouredPair([230, 250, 300].map((value) => ({ value: inches(value), plausible: wide })));
    expect(suspectSlip(inches(300), wide, "in", metric)?.words).toBe("300 in where 300 mm is meant?");
  });

  it("one strange length alone favours no pair", () => {
    expect(favouredPair([{ value: inches(230), plausible: between(0, inches(60)) }])).toBeNull();
    expect(favouredPair([])).toBeNull();
  });
});

describe("suspectRatio", () => {
  it.each([
    [12, "feet where inches are meant?"],
    [1 / 12, "inches where feet are meant?"],
    [25.4, "inches where millimetres are meant?"],
    [1 / 25.4, "millimetres where inches are meant?"],
    [1 / 0.3048, "metres where feet are meant?"],
    [0.3048, "feet where metres are meant?"],
    [304.8, "feet where millimetres are meant?"],
    [1000, "metres where millimetres are meant?"],
    [10, "a decimal point too far right?"],
    [0.1, "a decimal point too far left?"],
    [12.013, ""],
    [1, ""],
    [Number.NaN, ""],
  ])("%d", (ratio, words) => {
    expect(suspectRatio(ratio)).toBe(words);
  });
});
