/** Lengths as a person with a tape reads them, and as dimensions print them. */
import { formatFeetInches, formatLength, type Length, nanometres, type Unit } from "../units/index.js";

/** The finest figure that is printed exact: 1/64 in, half a millimetre. */
const EXACT: Readonly<Record<Unit, number>> = { in: 396_875, mm: 500_000 };

/**
 * A length between two points of the nanometre lattice, each of which was rounded by half a nanometre at most: the exact figure
 * where it lies one nanometre off at most. For print alone; no rule compares it.
 */
export function unrounded(value: number, unit: Unit): Length {
  const near = Math.round(value / EXACT[unit]) * EXACT[unit];
  return nanometres(Math.abs(near - value) <= 1 ? near : Math.round(value));
}

/** To 1/16 in, in feet and inches, or to 1 mm. */
export function tapeFigure(length: number, unit: Unit): string {
  return unit === "in" ? formatFeetInches(length, 16) : `${Math.round(length / 1e6)}`;
}

/**
 * A dimension: exact where it is a whole 1/64 in or half millimetre, else the figure that a tape has and the exact one in
 * brackets: `2'-3 13/16" (27.7849)`.
 */
export function dimensionWords(length: Length, unit: Unit): string {
  const value = unrounded(length, unit);
  const exact = formatLength(value, unit);
  return value % EXACT[unit] === 0 ? exact : `${tapeFigure(value, unit)} (${exact})`;
}

/** A figure that others give already: in brackets (reference dimension, ASME Y14.5; auxiliary dimension, ISO 129-1). */
export function referenceWords(length: Length, unit: Unit): string {
  const value = unrounded(length, unit);
  return value % EXACT[unit] === 0 ? `(${formatLength(value, unit)})` : `(${tapeFigure(value, unit)})`;
}
