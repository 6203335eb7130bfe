/** Row shape of AISC 360 Tables J3.4 and J3.4M: least edge distances. */
import type { Length } from "../units/length.js";
import type { Sized } from "./model.js";

export interface LeastEdgeRow extends Sized {
  /** Centre of the hole to the edge. */
  readonly least: Length;
  /** As printed. */
  readonly printed: string;
}
