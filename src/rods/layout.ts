/** Rod positions of a base, tagged. */
import type { Point } from "../geometry/vocabulary.js";
import type { RodGroup } from "../job/model/job.js";

/** One rod of a base, in the base's own axes. */
export interface PlacedRod {
  /** Letter of the group and order, clockwise from the north-west rod of the type seen from above: A1, A2, ... */
  readonly tag: string;
  readonly group: RodGroup;
  readonly center: Point;
}

export interface Layout {
  readonly rods: readonly PlacedRod[];
}
