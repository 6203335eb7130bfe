/** Row shapes of AISC 360 Tables J3.3 and J3.3M: bolt holes. */
import type { Length } from "../units/length.js";
import type { Rule, Sized, Sourced } from "./model.js";
import { printedInches } from "./sizes.js";

/** Width across the slot and length along it. */
export interface Slot {
  readonly width: Length;
  readonly length: Length;
}

/** Holes of a bolt, diameters. */
export interface BoltHoleRow extends Sized {
  readonly standard: Length;
  readonly oversized: Length;
  readonly shortSlot: Slot;
  readonly longSlot: Slot;
}

/** The printed rule row at the foot of the table: holes for every diameter from `from` on. */
export interface BoltHoleRule extends Sourced {
  readonly from: Length;
  readonly standard: Rule;
  readonly oversized: Rule;
  readonly shortSlot: { readonly width: Rule; readonly length: Rule };
  readonly longSlot: { readonly width: Rule; readonly length: Rule };
}

/** A row in inches as printed: bolt, standard and oversized hole, short and long slot (width, length). */
export function inchBoltHole(
  size: string,
  standard: string,
  oversized: string,
  short: readonly [width: string, length: string],
  long: readonly [width: string, length: string],
  sourced: Sourced,
): BoltHoleRow {
  return {
    size,
    diameter: printedInches(size),
    standard: printedInches(standard),
    oversized: printedInches(oversized),
    shortSlot: { width: printedInches(short[0]), length: printedInches(short[1]) },
    longSlot: { width: printedInches(long[0]), length: printedInches(long[1]) },
    ...sourced,
  };
}
