/**
 * The base plate over rods as they stand. Any one length unit; angles in radians, counter-clockwise about the origin of the
 * holes' own axes. A hole's clearance is radial: (H - d)/2.
 */

/** Nominal centre of a hole in the plate's axes and its radial clearance. */
export interface FitHole {
  readonly x: number;
  readonly y: number;
  readonly clearance: number;
}

/** Centre of a rod as it stands. */
export interface FitRod {
  readonly x: number;
  readonly y: number;
}

/** The best position: each hole goes to R(theta) hole + t. `value <= 0`: the plate drops on, with -value to spare. */
export interface Fit {
  readonly value: number;
  readonly theta: number;
  readonly tx: number;
  readonly ty: number;
  /** The holes that govern: their distance to the rod less their clearance is the value. */
  readonly active: readonly number[];
}

/** How much a hole governs: weights of the optimality conditions, positive, with sum 1. */
export interface Multiplier {
  readonly hole: number;
  readonly weight: number;
}

/** A best position with the proof that it is: multipliers and a lower bound of the value. */
export interface CertifiedFit extends Fit {
  readonly multipliers: readonly Multiplier[];
  /** No position within the turn bound has a smaller value than this: weak duality, nothing linearised. */
  readonly lowerBound: number;
}

/** What the fit may be told beside holes and rods. */
export interface FitOptions {
  /** Bound on |theta| in radians: the solver's, not a permission. */
  readonly maxTurn?: number;
}

/** The bound on |theta| where none is given. */
export const DEFAULT_MAX_TURN = 0.05;
