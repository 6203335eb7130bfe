/** Row shape of placing tolerances, whatever the publication. */
import type { Length } from "../units/length.js";
import type { Sourced } from "./model.js";

/** What a tolerance is about. */
export type PlacingItem =
  | "rod position"
  | "rod spacing"
  | "adjacent groups"
  | "group position"
  | "accumulated along a column line"
  | "top of rod"
  | "verticality"
  | "embedded item"
  | "reinforcement clearance"
  | "top of concrete";

/** A printed tolerance of placing. */
export interface PlacingTableRow extends Sourced {
  readonly clause: string;
  readonly about: PlacingItem;
  /** What is held, in words. */
  readonly item: string;
  /** Rod sizes that the row is printed for; "all" where it is for every one. */
  readonly sizes: readonly string[] | "all";
  /** Minus and plus as positive lengths; null where the printed value is in words. */
  readonly minus: Length | null;
  readonly plus: Length | null;
  /** A value that is not one number, as printed; "" otherwise. */
  readonly printed: string;
  /** A tolerance that grows along a line: this much for each `per`, never more than the row's own in total. */
  readonly growth: Growth | null;
}

/** A tolerance for each length of a line. */
export interface Growth {
  readonly tolerance: Length;
  readonly per: Length;
}

/** A row with equal minus and plus. */
export function equal(tolerance: Length): { readonly minus: Length; readonly plus: Length; readonly printed: "" } {
  return { minus: tolerance, plus: tolerance, printed: "" };
}
