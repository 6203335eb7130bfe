/** Row shapes of AISC 360 Tables J3.3 and J3.3M: bolt holes. */
import type { Length } from "../units/length.js";
import type { Rule, Sized, Sourced } from "./model.js";

/** Width across the slot and length along it. */
export interface Slot {
  readonly width: Length;
  readonly length: Length;
}

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
