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

/**
 * Greatest and least thickness of plain washers by their basic one, in inches: ASME B18.21.1-2009, Types A and B (Machinery's
 * Handbook, 31st ed., pp. 1694, 1695, 1697, secondary copy); 0.220, 0.259, 0.284 and 0.375 from memory.
 */
const ASME_THICKNESS: ReadonlyMap<number, readonly [greatest: number, least: number]> = new Map([
  [0.063, [0.071, 0.056]],
  [0.065, [0.08, 0.051]],
  [0.083, [0.104, 0.064]],
  [0.095, [0.121, 0.074]],
  [0.1, [0.112, 0.09]],
  [0.109, [0.132, 0.086]],
  [0.134, [0.16, 0.108]],
  [0.148, [0.177, 0.122]],
  [0.16, [0.174, 0.146]],
  [0.165, [0.192, 0.136]],
  [0.18, [0.213, 0.153]],
  [0.22, [0.248, 0.193]],
  [0.238, [0.28, 0.21]],
  [0.25, [0.266, 0.234]],
  [0.259, [0.31, 0.228]],
  [0.284, [0.327, 0.249]],
  [0.375, [0.393, 0.357]],
]);

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
  const [greatest, least] = (ASME_THICKNESS.get(thickness) ?? [null, null]).map((limit) =>
    limit === null ? null : inches(limit),
  );
  const limits = { least: least ?? null, nominal: inches(thickness), greatest: greatest ?? null };
  return { size, diameter: printedInches(size), ...widths, thickness: limits, source, confidence, note };
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
