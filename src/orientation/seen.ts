/** What shows a wrong placement, and to whom. */
import { isSetOverCastRods } from "../job/model/base-hole.js";
import type { Base } from "../job/model/job.js";
import type { Length } from "../units/index.js";
import { inches } from "../units/index.js";
import type { WrongPlacement } from "./model.js";

/** A cut of this size in a corner or edge is big enough to be seen: common practice. */
export const LEAST_SEEN: Length = inches(0.5);

/** Twice what an eye at the edge sees: as much as a corner cut of `LEAST_SEEN` both ways takes from the corner, 0.354 in. */
export const SEEN_TWICE = Math.ceil(LEAST_SEEN * Math.SQRT2);

/** True where the rods would not be the right ones in the right places. */
export function matters({ errorTwice }: Pick<WrongPlacement, "errorTwice">): boolean {
  return errorTwice > 0;
}

/** True where the outline alone shows that the template lies wrong. */
export function showsAtEdge({ outlineTwice }: Pick<WrongPlacement, "outlineTwice">): boolean {
  return outlineTwice >= SEEN_TWICE;
}

/** True where the base plate drops on over the rods as they would stand; false where it does not or where that is not known. */
export function dropsOn({ dropsOn: plate }: Pick<WrongPlacement, "dropsOn">): boolean {
  return plate.kind === "known" && plate.twice <= 0;
}

/**
 * True where a wrong way round matters and nothing shows it while it can still be put right: the outline looks right and, for a
 * plate over rods that are cast already, the plate goes over them.
 */
export function isSilent({ template }: Base, placement: Omit<WrongPlacement, "way">): boolean {
  if (!matters(placement) || showsAtEdge(placement)) return false;
  return isSetOverCastRods(template) ? dropsOn(placement) : true;
}
