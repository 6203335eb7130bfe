/** Rows of washer and nut tables that are printed alike. */
import { inches, millimetres } from "../units/length.js";
import type { Confidence, NutRow, WasherRow } from "./model.js";
import { metricDiameter, printedInches } from "./sizes.js";

/** A washer of an ISO table, in mm: inside d1, outside d2, thickness h nominal (null: not listed) and greatest. */
export function isoWasher(
  size: string,
  inside: number,
  outside: number,
  nominal: number | null,
  greatest: number,
  source: string,
  confidence: Confidence,
  note = "",
): WasherRow {
  const thickness = {
    least: null,
    nominal: nominal === null ? null : millimetres(nominal),
    greatest: millimetres(greatest),
  };
  const widths = { inside: [millimetres(inside)], outside: millimetres(outside) };
  return { size, diameter: metricDiameter(size), ...widths, thickness, source, confidence, note };
}

/** A plain washer of ASME B18.21.1, in inches: inside, outside, basic thickness. */
export function asmeWasher(
  size: string,
  inside: number,
  outside: number,
  thickness: number,
  source: string,
  confidence: Confidence,
  note = "",
): WasherRow {
  const widths = { inside: [inches(inside)], outside: inches(outside) };
  const basic = { least: null, nominal: inches(thickness), greatest: null };
  return { size, diameter: printedInches(size), ...widths, thickness: basic, source, confidence, note };
}

/** A nut of an ISO table, in mm: s across flats, m height (both greatest), e across corners (least; null: not tabulated). */
export function isoNut(
  size: string,
  s: number,
  m: number,
  e: number | null,
  confidence: Confidence,
  note = "",
): NutRow {
  return {
    size,
    diameter: metricDiameter(size),
    acrossFlats: millimetres(s),
    acrossFlatsLeast: null,
    acrossCorners: null,
    acrossCornersLeast: e === null ? null : millimetres(e),
    height: millimetres(m),
    heightLeast: null,
    source: "ISO 4032 / 4033 / 4034",
    confidence,
    note,
  };
}
