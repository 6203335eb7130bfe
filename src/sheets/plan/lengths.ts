/** Lengths as an anchor-rod plan writes them: feet and inches, or millimetres; rounded figures carry a plus-minus sign. */
import { toLattice } from "../../geometry/index.js";
import { formatFeetInches, formatLength, type Length, NM_PER_INCH, nanometres, type Unit } from "../../units/index.js";

const FINEST = { in: NM_PER_INCH / 64, mm: 100_000 } as const;
const ROUNDED = { in: NM_PER_INCH / 16, mm: 100_000 } as const;

/** `25'-0"`, `4 1/2"`, `7620`; exact to 1/64 in or 0.1 mm, else rounded to 1/16 in or 0.1 mm and marked: `±9'-7 1/8"`. */
export function planLength(length: number, unit: Unit): string {
  if (length % FINEST[unit] === 0) return unit === "in" ? formatFeetInches(length, 64) : formatLength(length, unit);
  const rounded = Math.round(length / ROUNDED[unit]) * ROUNDED[unit];
  return `±${unit === "in" ? formatFeetInches(rounded, 16) : formatLength(rounded, unit)}`;
}

/** As `planLength` where that is exact, else decimals: a detail is not rounded. */
export function detailLength(length: number, unit: Unit): string {
  if (length % FINEST[unit] === 0) return planLength(length, unit);
  return `${formatLength(length, unit)}${unit === "in" ? '"' : ""}`;
}

/** A length in millimetres (a double) on the lattice. */
export function lengthOf(mm: number): Length {
  return nanometres(toLattice(mm));
}

/** An elevation, its sign written: `+99'-6"`, `-150`; a zero is `±0`-free `0`. */
export function elevationText(length: number, unit: Unit): string {
  const text = planLength(Math.abs(length), unit);
  return length < 0 ? `-${text}` : length > 0 ? `+${text}` : text;
}
