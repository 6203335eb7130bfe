/** Over-tap of nuts for zinc-coated rods, by size. */
import type { Length } from "../units/length.js";
import { type OverTapRow, overTap } from "./astm-a563/over-tap.js";
import type { Lookup } from "./model.js";
import { findSized, indexByDiameter } from "./sized-index.js";

const ROWS = indexByDiameter(overTap);

/** What a nut for a zinc-coated rod of a diameter is tapped over size, on the diameter. */
export function findOverTap(diameter: Length): Lookup<OverTapRow> {
  return findSized(ROWS, diameter);
}
