/** The values that the program works with, where it works with them, held against what is published. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { CAUTIONS } from "../../../src/checks/cautions.js";
import { newLeanDocument } from "../../../src/formats/lean-document.js";
import { writeSheetSvg } from "../../../src/formats/sheet-svg.js";
import { readShop } from "../../../src/job/resolve/shop.js";
import { millimetresPer } from "../../../src/readers/dxf-header.js";
import { BORDER } from "../../../src/sheets/border.js";
import { lineSpacing } from "../../../src/sheets/dimension.js";
import { drawSheet } from "../../../src/sheets/index.js";
import { sheetSizes } from "../../../src/sheets/sheet-sizes.js";
import { extraThread, leastRods } from "../../../src/standards/index.js";
import { SURVEY_CAUTIONS } from "../../../src/survey/words.js";
import { weighPlate } from "../../../src/template/weigh.js";
import { inches, millimetres, toMillimetres, type Unit } from "../../../src/units/index.js";
import { type CuttingItem, cuttingLimits } from "../../reference/cutting-practice/limits.js";
import { cautions } from "../../reference/osha-1926/cautions.js";
import { plateWeights } from "../../reference/plate-weights/weights.js";
import { sheetCases } from "../../unit/sheets/sheet-cases.js";
import { readWrittenSheet } from "../written-sheet.js";

/** ISO 128 line widths in mm (secondary copy; 0.13 from memory). */
const LINE_WIDTHS = [0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2];

/** A shop file that comes with the program, as a job of a unit gets it. */
function shopOf(name: string, unit: Unit) {
  const url = new URL(`../../../templates/shops/${name}.yaml`, import.meta.url);
  const reading = readShop(readFileSync(url), `${name}.yaml`, unit);
  if (!reading.ok) throw new Error(`${name}.yaml is faulty`);
  return reading.value.shop;
}

const SHOPS = ["plasma", "laser", "oxyfuel", "waterjet", "plywood"].flatMap((name) => [
  [name, "in"] as const,
  [`${name}-metric`, "mm"] as const,
]);

describe("weights, by the density that a shop file leaves out (tabulated plate weights, AISC practice)", () => {
  it.each(SHOPS)("%s: one square foot of plate, in pounds", (name) => {
    const steel = shopOf(name, "in").density.steel;
    const rows = plateWeights.filter(({ unit }) => unit === "lb/ft2");
    expect(rows.length).toBe(6);
    for (const { thickness, weight } of rows) {
      // Tables print 10.21 for 10.208, 20.41 for 20.417: one unit of the last figure.
      const own = weighPlate(304.8 ** 2, thickness, steel, "in");
      expect(own?.unit).toBe("lb");
      expect(Math.abs((own?.value ?? 0) - weight)).toBeLessThanOrEqual(0.0101);
    }
  });

  it.each(SHOPS)("%s: one square metre of 1 mm, in kilograms", (name) => {
    expect(weighPlate(1e6, millimetres(1), shopOf(name, "mm").density.steel, "mm")).toEqual({
      value: 7.85,
      unit: "kg",
    });
  });
});

describe("AISC Design Guide 1, 2nd ed. (2006)", () => {
  it.each(SHOPS)("s.2.9: setting plates warp beyond 24 in, %s", (name, unit) => {
    const { largestSide } = shopOf(name, unit);
    expect(largestSide).toEqual({ kind: "given", value: inches(24), from: "Design Guide 1, 2nd ed., s.2.9" });
  });

  it("advises at least 3 in of thread beyond the design's", () => {
    expect(extraThread.value).toBe(inches(3));
  });
});

describe("29 CFR 1926 Subpart R", () => {
  it("1926.755(a)(1): columns have at least 4 anchor rods", () => {
    expect(leastRods).toMatchObject({ value: 4, clause: "1926.755(a)(1)" });
    expect(cautions.find(({ topic }) => topic.includes(leastRods.clause))?.value).toBe("min 4 anchor rods per column");
  });

  it("each clause that a caution names is one that says so", () => {
    const named = [...CAUTIONS, ...SURVEY_CAUTIONS].flatMap((caution) =>
      [...caution.matchAll(/1926\.\d+(?:\([a-z]\))?/g)].map(([clause]) => clause),
    );
    expect(named.length).toBeGreaterThan(1);
    for (const clause of named) {
      const said = cautions.filter(({ topic }) => topic.startsWith(clause)).map(({ value }) => value);
      expect(said.join("; ")).toMatch(/field modification of rods without .*engineer of record approval/);
    }
  });
});

describe("drawing practice", () => {
  const lettering = (name: string) =>
    Object.values([...sheetSizes("in"), ...sheetSizes("mm")].find((sheet) => sheet.name === name)?.lettering ?? {});

  it("ISO 3098: heights of the series on metric sheets, ISO 5457 notes of at least 2.5 mm", () => {
    // The series grows by the square root of 2, each height rounded.
    const series = [1.8, 2.5, 3.5, 5, 7, 10, 14, 20];
    for (const [i, height] of series.slice(1).entries())
      expect(Math.abs(height - (series[i] ?? 0) * Math.SQRT2)).toBeLessThan(0.3);
    for (const name of ["A4", "A3", "A2", "A1"]) {
      for (const height of lettering(name)) expect(series).toContain(height);
      expect(Math.min(...lettering(name))).toBeGreaterThanOrEqual(2.5);
    }
  });

  it("ASME Y14.2, from memory: .12 in (3 mm) and more on inch sheets, titles .24 in (6 mm)", () => {
    for (const name of ["A", "B", "C", "D"]) {
      expect(Math.min(...lettering(name))).toBeGreaterThanOrEqual(3);
      expect(Math.max(...lettering(name))).toBeGreaterThanOrEqual(6);
    }
  });

  it.each(Object.keys(sheetCases))(
    "ISO 128: widths of the series, outlines twice as wide as centre lines: %s",
    (name) => {
      const request = sheetCases[name]?.();
      if (request === undefined) throw new Error(`no case ${name}`);
      const { paths } = readWrittenSheet(writeSheetSvg(drawSheet(request), newLeanDocument()));
      const widths = (role: string) =>
        paths.filter((path) => path.class === role).map((path) => Number(path["stroke-width"]));
      const strokes = paths.filter((path) => path["stroke-width"] !== undefined);
      expect(strokes.length).toBeGreaterThan(10);
      for (const path of strokes) expect(LINE_WIDTHS).toContain(Number(path["stroke-width"]));
      expect(widths("outline").length).toBeGreaterThan(0);
      expect(Math.min(...widths("outline"))).toBeGreaterThanOrEqual(2 * Math.max(...widths("centre")));
    },
  );

  it("ISO 5457: 20 mm at the binding edge, 10 mm elsewhere (from memory)", () => {
    expect(BORDER).toEqual({ left: 20, other: 10 });
  });

  it("ASME Y14.5M: first dimension line at 10 mm (3/8 in) or more, following ones at 6 mm (1/4 in) or more", () => {
    expect(lineSpacing(1)).toEqual({ first: 10, next: 6 });
    expect(10).toBeGreaterThanOrEqual(toMillimetres(inches(3 / 8)));
  });
});

describe("units of drawing files, $INSUNITS (published DXF reference)", () => {
  // International yard and pound agreement, 1959: 1 in = 25.4 mm; 1 US survey foot = 1200/3937 m.
  it.each([
    ["ft", 12 * 25.4],
    ["yd", 36 * 25.4],
    ["mi", 5280 * 12 * 25.4],
    ["mil", 25.4 / 1000],
    ["microinch", 25.4 / 1e6],
    ["US survey foot", 1_200_000 / 3937],
    ["cm", 10],
    ["m", 1000],
    ["km", 1e6],
  ])("%s is %d mm", (unit, mm) => {
    expect(millimetresPer(unit) / mm).toBeCloseTo(1, 12);
  });
});

describe("the shop files that come with the program keep to the trade's values of their process", () => {
  const trade = (process: string, item: CuttingItem) => {
    const value = cuttingLimits.find((row) => row.process === process && row.item === item)?.value;
    if (value === undefined) throw new Error(`no ${item} of ${process}`);
    return value;
  };
  const both = (name: string) => [shopOf(name, "in"), shopOf(`${name}-metric`, "mm")];

  it.each(["plasma", "laser", "oxyfuel"])("%s: smallest hole as a multiple of the thickness", (name) => {
    const value = trade(name, "smallest hole");
    if (value.kind !== "per thickness") throw new Error("no multiple");
    for (const { smallestHole } of both(name)) {
      expect(smallestHole.perThickness).toBeGreaterThanOrEqual(value.least);
      expect(smallestHole.perThickness).toBeLessThanOrEqual(value.greatest);
    }
  });

  it("waterjet: no hole smaller than the jet pierces", () => {
    const value = trade("waterjet", "smallest hole");
    if (value.kind !== "span") throw new Error("no span");
    for (const { smallestHole } of both("waterjet")) expect(smallestHole.least).toBeGreaterThan(value.least);
  });

  it("plasma: web 1.5 t and about 5 mm, corners of 1 to 2 mm, letters of 15 mm", () => {
    const [web, corner, text] = (["hole spacing", "corner radius", "text height"] as const).map((item) =>
      trade("plasma", item),
    );
    if (web?.kind !== "per thickness" || corner?.kind !== "span" || text?.kind !== "span") throw new Error("no values");
    for (const shop of both("plasma")) {
      expect(shop.smallestWeb.perThickness).toBe(web.least);
      expect(shop.smallestWeb.least).toBeGreaterThanOrEqual(web.floor ?? Number.POSITIVE_INFINITY);
      expect(shop.smallestCorner.least).toBeGreaterThanOrEqual(corner.least);
      expect(shop.smallestCorner.least).toBeLessThanOrEqual(corner.greatest);
      expect(shop.marking.leastTextHeight).toBeGreaterThanOrEqual(text.least);
    }
  });
});
