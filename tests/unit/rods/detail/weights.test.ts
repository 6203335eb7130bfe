/** Weights by nominal sizes, against published tables. */
import { describe, expect, it } from "vitest";
import { lengthOfWeight, weighBar, weighNut, weighPiece } from "../../../../src/rods/detail/weights.js";
import { findNut, findThread, steelDensities } from "../../../../src/standards/index.js";
import type { Length } from "../../../../src/units/length.js";
import { inches, millimetres } from "../../../../src/units/length.js";

const POUND = 0.45359237;

describe("round bars", () => {
  // ASTM A615/A615M, nominal weights: those of a plain round bar of the nominal diameter (concreteconstruction.net, "Rebar size
  // and weights"). Pounds a foot.
  it.each([
    [0.375, 0.376],
    [0.5, 0.668],
    [0.625, 1.043],
    [0.75, 1.502],
    [0.875, 2.044],
    [1, 2.67],
    [1.128, 3.4],
    [1.27, 4.303],
    [1.41, 5.313],
    [1.693, 7.65],
    [2.257, 13.6],
  ])("of %d in weigh %d lb a foot", (diameter, pounds) => {
    const weight = weighBar(inches(diameter), inches(12), steelDensities.in) / POUND;
    expect(Math.abs(weight - pounds) / pounds).toBeLessThan(0.002);
  });

  // jajalger2018.org, "Weight of steel", worked example: a 1 in round of 144 in, 32.04 lb at 0.2833 lb/in3.
  it("of 1 in and 12 ft weigh 32.04 lb", () => {
    expect(weighBar(inches(1), inches(144), steelDensities.in) / POUND).toBeCloseTo(32.07, 1);
  });

  // EN 10060 / EN 10080, from memory: kilograms a metre.
  it.each([
    [10, 0.617],
    [12, 0.888],
    [16, 1.58],
    [20, 2.47],
    [25, 3.85],
    [32, 6.31],
    [40, 9.86],
  ])("of %d mm weigh %d kg a metre", (diameter, kilograms) => {
    const weight = weighBar(millimetres(diameter), millimetres(1000), steelDensities.mm);
    expect(Math.abs(weight - kilograms) / kilograms).toBeLessThan(0.003);
  });

  it.each([0.5, 1, 1.25, 2])("of %d in: the length that weighs a pound weighs a pound", (diameter) => {
    const length = lengthOfWeight(POUND, inches(diameter), steelDensities.in);
    expect(weighBar(inches(diameter), length, steelDensities.in)).toBeCloseTo(POUND, 5);
  });
});

describe("nuts", () => {
  // Heavy hex nuts, kilograms a thousand (steelnutbolts.com, A563 nuts: a trade table). A prism without chamfers, at its greatest
  // sizes and a hole of the full thread, comes within 8 per cent.
  it.each([
    ["1/2", 30],
    ["5/8", 54],
    ["3/4", 88],
    ["7/8", 135],
    ["1", 193],
    ["1-1/8", 269],
    ["1-1/4", 348],
    ["1-3/8", 463],
    ["1-1/2", 595],
    ["1-3/4", 926],
    ["2", 1357],
  ])("%s heavy hex: %d kg a thousand", (size, thousand) => {
    const thread = findThread(size);
    const nut = thread.found ? findNut("ASME B18.2.2 heavy hex", thread.row.diameter) : null;
    if (nut?.found !== true) throw new Error(`no nut ${size}`);
    const { acrossFlats, height, diameter } = nut.row;
    const weight = 1000 * weighNut(acrossFlats, height, diameter, steelDensities.in);
    expect(Math.abs(weight - thousand) / thousand).toBeLessThan(0.08);
  });
});

describe("washers and plates", () => {
  // Tabulated plate weights (AISC practice): 1/2 in 20.41 lb a square foot.
  it("weigh as the plate that they are cut from, less their hole", () => {
    const size = { shape: "square", size: inches(12), thickness: inches(0.5) } as const;
    const whole = weighPiece(size, 0 as Length, steelDensities.in);
    expect((whole ?? 0) / POUND).toBeCloseTo(20.42, 2);
    const hole = (whole ?? 0) - (weighPiece(size, inches(1), steelDensities.in) ?? 0);
    expect(hole).toBeCloseTo(weighBar(inches(1), inches(0.5), steelDensities.in), 5);
  });

  it("have none where the hole takes the whole piece", () => {
    const piece = { shape: "round", size: inches(3), thickness: inches(0.5) } as const;
    expect(weighPiece(piece, inches(3), steelDensities.in)).toBeNull();
    expect(weighPiece(piece, inches(4), steelDensities.in)).toBeNull();
    expect(weighPiece(piece, inches(2.9), steelDensities.in)).toBeGreaterThan(0);
  });

  it("of a round one: pi / 4 of a square one", () => {
    const piece = { size: inches(4), thickness: inches(1) } as const;
    const square = weighPiece({ shape: "square", ...piece }, 0 as Length, steelDensities.in);
    expect(weighPiece({ shape: "round", ...piece }, 0 as Length, steelDensities.in)).toBeCloseTo(
      ((square ?? 0) * Math.PI) / 4,
      4,
    );
  });
});
