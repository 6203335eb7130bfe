/** Row shape of AISC 360 Tables J3.4 and J3.4M: least edge distances. */
import type { Length } from "../units/length.js";
import type { Sized, Sourced } from "./model.js";
import { printedInches } from "./sizes.js";

/** Least edge distance of a bolt. */
export interface LeastEdgeRow extends Sized {
  /** Centre of the hole to the edge. */
  readonly least: Length;
  /** As printed. */
  readonly printed: string;
}

/** A row in inches as printed: bolt, least distance. */
export function inchEdge(size: string, least: string, sourced: Sourced): LeastEdgeRow {
  return { size, diameter: printedInches(size), least: printedInches(least), printed: least, ...sourced };
}
