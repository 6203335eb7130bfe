/** What a job says of its budgets: how far rods may be off, and how that is reckoned. */
import type { Length } from "../../units/length.js";
import type { Input } from "./values.js";

/** Out of plumb by so much over a length. */
export interface Lean {
  readonly by: Length;
  readonly per: Length;
}

/** How the base plate may move over the rods: shifted and turned, only shifted, or held in its place. */
export type PlateFreedom = "held" | "shifted" | "free";

/** Reaches are radii; with a square zone those of `placing` and `setting` hold along each axis. */
export interface BudgetSpec {
  /** The as-placed tolerance, or the components that make it up; never both. */
  readonly rods: "edition" | "components";
  /** As-placed tolerance instead of the edition's. */
  readonly placing: Input<Length>;
  /** How far the template's hole pattern is set off its place at the rod. */
  readonly setting: Input<Length>;
  /** How far a template hole is cut off its place. */
  readonly cutting: Input<Length>;
  readonly lean: Input<Lean>;
  /** How far a base-plate hole is off its place. */
  readonly baseHoles: Input<Length>;
  readonly zone: "round" | "square";
  readonly spread: "uniform" | "normal";
  /** Standard deviations per axis from the place to the zone's edge, where normal curves are cut off. */
  readonly sigmas: number;
  /** Share of placing or setting that moves the whole group alike, 0 to 1. */
  readonly common: number;
  /** What the erector may do with the plate: the probability that is held against the target. */
  readonly plate: PlateFreedom;
  /** How far the plate may turn either way, in radians. */
  readonly maxTurn: number;
  /** Probability wanted, 0 to 1. */
  readonly target: Input<number>;
  readonly seed: number;
  /** Standard error of the probability at which the trials end. */
  readonly standardError: number;
}
