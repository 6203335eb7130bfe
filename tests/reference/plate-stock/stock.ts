/** Plate thicknesses and sheets that are usually stocked: common practice, without a published source. */

import type { Sourced } from "../../../src/standards/model.js";
import { printedInches, printedMillimetres } from "../../../src/standards/sizes.js";
import type { Length, Unit } from "../../../src/units/length.js";

/** One stocked thickness. */
export interface ThicknessRow extends Sourced {
  readonly printed: string;
  readonly thickness: Length;
}

/** One stocked sheet: width and length. */
export interface StockSheetRow extends Sourced {
  readonly printed: string;
  readonly width: Length;
  readonly length: Length;
}

/** Stocked thicknesses, thinnest first. */
export const stockThicknesses: Readonly<Record<Unit, readonly ThicknessRow[]>> = {
  in: [
    inch("10 ga", ".1345"),
    inch("3/16"),
    inch("1/4", "1/4", "base-plate thickness steps: 1/8 to 1-1/4 in, 1/4 to 3 in, 1/2 above"),
    inch("5/16"),
    inch("3/8"),
    inch("1/2"),
    inch("5/8"),
    inch("3/4"),
    inch("7/8"),
    inch("1"),
    inch("1-1/8"),
    inch("1-1/4"),
    inch("1-3/8"),
    inch("1-1/2"),
    inch("1-3/4"),
    inch("2"),
    inch("2-1/4"),
    inch("2-1/2"),
    inch("2-3/4"),
    inch("3"),
  ],
  mm: [
    millimetre("3"),
    millimetre("4"),
    millimetre("5"),
    millimetre("6"),
    millimetre("8"),
    millimetre("10"),
    millimetre("12"),
    millimetre("15"),
    millimetre("16"),
    millimetre("20"),
    millimetre("25"),
    millimetre("30"),
    millimetre("32"),
    millimetre("35"),
    millimetre("40"),
    millimetre("50"),
    millimetre("60"),
  ],
};

/** Stocked sheets. */
export const stockSheets: Readonly<Record<Unit, readonly StockSheetRow[]>> = {
  in: [
    sheet("in", "48", "96"),
    sheet("in", "48", "120"),
    sheet("in", "60", "120"),
    sheet("in", "60", "144"),
    sheet("in", "72", "120"),
    sheet("in", "72", "144"),
    sheet("in", "96", "240"),
  ],
  mm: [
    sheet("mm", "1000", "2000"),
    sheet("mm", "1250", "2500"),
    sheet("mm", "1500", "3000"),
    sheet("mm", "1500", "6000"),
    sheet("mm", "2000", "4000"),
    sheet("mm", "2000", "6000"),
    sheet("mm", "2500", "6000"),
  ],
};

function inch(printed: string, value = printed, note = ""): ThicknessRow {
  return { printed, thickness: printedInches(value), source: "common practice", confidence: "common practice", note };
}

function millimetre(printed: string): ThicknessRow {
  const thickness = printedMillimetres(printed);
  return { printed, thickness, source: "common practice", confidence: "common practice", note: "" };
}

function sheet(unit: Unit, width: string, length: string): StockSheetRow {
  const printed = unit === "in" ? printedInches : printedMillimetres;
  const sides = { printed: `${width}x${length}`, width: printed(width), length: printed(length) };
  return { ...sides, source: "common practice", confidence: "common practice", note: "" };
}
