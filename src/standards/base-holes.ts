/** Rows of tables of base-plate holes. */
import { millimetres } from "../units/length.js";
import type { BaseHoleRow, Sourced } from "./model.js";
import { metricDiameter, printedInches } from "./sizes.js";

/** A hole in mm; the table names no washer. */
export function metricBaseHole(size: string, hole: number, sourced: Sourced): BaseHoleRow {
  const bare = { washer: null, washerThickness: null, alternateHole: null };
  return { size, diameter: metricDiameter(size), hole: millimetres(hole), ...bare, ...sourced };
}

/** A hole in inches as printed, with the least washer and its thickness where the table names one. */
export function inchBaseHole(
  size: string,
  hole: string,
  washer: { readonly size: string; readonly thickness: string } | null,
  sourced: Sourced,
): BaseHoleRow {
  return {
    size,
    diameter: printedInches(size),
    hole: printedInches(hole),
    washer: washer === null ? null : printedInches(washer.size),
    washerThickness: washer === null ? null : printedInches(washer.thickness),
    alternateHole: null,
    ...sourced,
  };
}
