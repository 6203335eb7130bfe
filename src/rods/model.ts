/** Rods of a base, tagged and in their places. */
import type { Contour, Point } from "../geometry/vocabulary.js";
import type { Base, RodGroup } from "../job/model/job.js";

/** One rod of a base, in the base's own axes. */
export interface PlacedRod {
  /** Letter of the group and order, clockwise from the north-west rod of the type seen from above: A1, A2, ... */
  readonly tag: string;
  readonly group: RodGroup;
  readonly center: Point;
}

/** A base with its rods, in the order of their tags. */
export interface BaseWithRods {
  readonly base: Base;
  readonly rods: readonly PlacedRod[];
}

/** The same with the outline of its template, in the base's own axes. */
export interface OutlinedBase extends BaseWithRods {
  readonly outline: Contour;
}
