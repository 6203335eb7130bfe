/** Ways in which a template can be set wrong, and what each does to the rods. */
import type { Move, Point } from "../geometry/index.js";
import type { Missing } from "../job/model/job.js";

/** One way of laying the template down, other than the right one. */
export interface Way {
  /** "turned 90", "face down", "face down and turned 90"; with "by its edges" where it is set by its own outline. */
  readonly words: string;
  readonly faceDown: boolean;
  /** Counter-clockwise, seen from above, after it has been turned over left to right. */
  readonly degrees: number;
  /** True for quarter turns about the working point: exact on the lattice. Others are within 2 nm. */
  readonly exact: boolean;
}

/** A way with what it does to points. */
export interface WayMove extends Way {
  readonly move: Move;
}

/** What the base plate does over rods that stand wrong. */
export type DropsOn =
  | {
      readonly kind: "known";
      /** Twice the largest (distance - clearance) in the best position found for the base plate; 0 or less: it drops on. */
      readonly twice: number;
      /** Twice how far its working point is then from where it belongs; 0 where it drops on in its place. */
      readonly shiftTwice: number;
      /** The best position: the base plate's own working point goes to `shift`, turned by `theta` radians. */
      readonly theta: number;
      readonly shift: Point;
    }
  | { readonly kind: "not known"; readonly missing: readonly Missing[] };

/** Rods set with the template a wrong way round. */
export interface WrongPlacement {
  readonly way: Way;
  /** Twice the largest distance from a rod to where one of its kind belongs, in nanometres; 0: nothing is wrong with the rods. */
  readonly errorTwice: number;
  /** Rods that would stand at the place of one of another kind, as "A1 at B2". */
  readonly swapped: readonly string[];
  /** Twice the largest distance between the outline and where it belongs; 0: it maps onto itself. */
  readonly outlineTwice: number;
  readonly dropsOn: DropsOn;
}
