/** Lengths as an anchor-rod plan writes them: feet and inches, or millimetres; rounded figures stand in brackets. */
import { toLattice } from "../../geometry/index.js";
import {
  formatFeetInches,
  formatInches,
  formatLength,
  type Length,
  NM_PER_INCH,
  nanometres,
  type Unit,
} from "../../units/index.js";

const FINEST = { in: NM_PER_INCH / 64, mm: 100_000 } as const;
const ROUNDED = { in: NM_PER_INCH / 16, mm: 1_000_000 } as const;
const FOOT = 12 * NM_PER_INCH;

/** `25'-0"`, `4-1/2"`, `7620`; exact to 1/64 in or 0.1 mm, else rounded to 1/16 in or 1 mm, in brackets: `(9'-7 1/8")`. */
export function planLength(length: number, unit: Unit): string {
  if (isExact(length, unit)) return unit === "in" ? feetInches(length, 64) : formatLength(length, unit);
  const rounded = Math.round(length / ROUNDED[unit]) * ROUNDED[unit];
  return `(${unit === "in" ? feetInches(rounded, 16) : formatLength(rounded, unit)})`;
}

/** True for a length that `planLength` writes as it is. */
export function isExact(length: number, unit: Unit): boolean {
  return length % FINEST[unit] === 0;
}

/** Below a foot as on templates, with the inch mark: `4-1/2"`. */
function feetInches(length: number, denominator: 16 | 64): string {
  return Math.abs(length) < FOOT ? `${formatInches(length, denominator)}"` : formatFeetInches(length, denominator);
}

/** As `planLength`; one that is rounded for the tape with its decimals behind: a detail says both. */
export function detailLength(length: number, unit: Unit): string {
  if (isExact(length, unit)) return planLength(length, unit);
  const rounded = Math.round(length / ROUNDED[unit]) * ROUNDED[unit];
  const taped = unit === "in" ? feetInches(rounded, 16) : formatLength(rounded, unit);
  return `${taped} (${formatLength(length, unit)})`;
}

/** A length in millimetres (a double) on the lattice. */
export function lengthOf(mm: number): Length {
  return nanometres(toLattice(mm));
}

/** An elevation, its sign written: `+99'-6"`, `-150`; a zero has none. */
export function elevationText(length: number, unit: Unit): string {
  const text = planLength(Math.abs(length), unit);
  const sign = length < 0 ? "-" : length > 0 ? "+" : "";
  return text.startsWith("(") ? `(${sign}${text.slice(1)}` : `${sign}${text}`;
}
