/** Sheets and scales against the published sizes. */
import { describe, expect, it } from "vitest";
import { scales, sheetSizes } from "../../../src/sheets/sheet-sizes.js";
import { scaleWords } from "../../../src/sheets/title-block.js";

describe("sheets", () => {
  it("inch: ASME Y14.1 A to D, landscape", () => {
    const inch = sheetSizes("in").map(({ name, width, height }) => [name, width / 25.4, height / 25.4]);
    const expected = [
      ["A", 11, 8.5],
      ["B", 17, 11],
      ["C", 22, 17],
      ["D", 34, 22],
    ] as const;
    expected.forEach(([name, width, height], i) => {
      expect(inch[i]?.[0]).toBe(name);
      expect(inch[i]?.[1]).toBeCloseTo(width, 9);
      expect(inch[i]?.[2]).toBeCloseTo(height, 9);
    });
    expect(inch).toHaveLength(4);
  });

  it("metric: ISO 216 A4 to A1, landscape", () => {
    expect(sheetSizes("mm").map(({ name, width, height }) => [name, width, height])).toEqual([
      ["A4", 297, 210],
      ["A3", 420, 297],
      ["A2", 594, 420],
      ["A1", 841, 594],
    ]);
  });

  // ISO 3098: height series, and 2.5 mm at least for notes of A3 to A1 sheets (secondary copies).
  it("metric lettering: heights of the series only, 2.5 mm at least on every size", () => {
    const series = [1.8, 2.5, 3.5, 5, 7, 10, 14, 20];
    for (const { lettering, name } of sheetSizes("mm")) {
      for (const height of Object.values(lettering)) expect(series, name).toContain(height);
      expect(Math.min(...Object.values(lettering)), name).toBeGreaterThanOrEqual(2.5);
    }
  });

  // ASME Y14.2: .12 in (3 mm) for notes and dimensions, .24 in (6 mm) for title and drawing number (from memory).
  it("inch lettering: 3 mm at least, titles 6 mm", () => {
    for (const { lettering, name } of sheetSizes("in")) {
      expect(Math.min(...Object.values(lettering)), name).toBeGreaterThanOrEqual(3);
      expect(lettering.title, name).toBeGreaterThanOrEqual(6);
    }
  });

  it("each height is at least the one before it, on each sheet at least that of the smaller sheet", () => {
    for (const unit of ["in", "mm"] as const)
      sheetSizes(unit).forEach(({ lettering: { small, body, heading, title } }, i, all) => {
        expect([small, body, heading, title]).toEqual([small, body, heading, title].sort((a, b) => a - b));
        expect(small).toBeGreaterThanOrEqual(all[i - 1]?.lettering.small ?? 0);
      });
  });

  // Common practice: prints of half size; 2 mm and 1.75 mm are the least that reads there.
  it("letters of the largest sheets read on a print of half size", () => {
    expect((sheetSizes("in").at(-1)?.lettering.small ?? 0) / 2).toBeGreaterThanOrEqual(2);
    expect((sheetSizes("mm").at(-1)?.lettering.small ?? 0) / 2).toBeGreaterThanOrEqual(1.75);
  });
});

describe("scales", () => {
  it("inches to the foot: the name says the factor", () => {
    for (const { name, factor } of scales("in")) {
      const [, whole = "0", above = "0", below = "1"] =
        /^(?:(\d+)(?:-|(?=")))?(?:(\d+)\/(\d+))?" = 1'-0"$/.exec(name) ?? [];
      const inchesToTheFoot = Number(whole) + Number(above) / Number(below);
      expect(name === "FULL SIZE" ? 1 : inchesToTheFoot / 12).toBeCloseTo(factor, 12);
    }
  });

  it("metric: ISO 5455 ratios", () => {
    expect(scales("mm").map(scaleWords)).toEqual([
      "1:1",
      "1:2",
      "1:5",
      "1:10",
      "1:20",
      "1:50",
      "1:100",
      "1:200",
      "1:500",
      "1:1000",
    ]);
  });

  it("print both the name and the ratio in inches", () => {
    expect(scales("in").slice(0, 5).map(scaleWords)).toEqual([
      "FULL SIZE (1:1)",
      `6" = 1'-0" (1:2)`,
      `3" = 1'-0" (1:4)`,
      `1-1/2" = 1'-0" (1:8)`,
      `1" = 1'-0" (1:12)`,
    ]);
  });
});
