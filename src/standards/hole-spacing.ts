/** Row shape of the least spacing of holes: AISC 360 by the fastener's diameter, EN 1993-1-8 by the hole's. */
import type { Sourced } from "./model.js";

/** A least distance between two holes, `times` / `per` x the diameter of `of`: a fraction, so that 2-2/3 is exact. */
export interface HoleSpacingRow extends Sourced {
  /** spacing: from centre to centre. clear: from edge to edge. */
  readonly what: "spacing" | "clear";
  /** rod: nominal diameter d of the fastener. hole: diameter d0. */
  readonly of: "rod" | "hole";
  readonly times: number;
  readonly per: number;
  /** As printed: `2-2/3 d`. */
  readonly printed: string;
}
