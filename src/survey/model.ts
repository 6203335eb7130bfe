/**
 * Rods as built. Lengths are whole nanometres; turns are degrees, counter-clockwise seen from above. `dx`, `dy` lie along the
 * base's own axes, `north` and `east` along the plan's: as built less as designed.
 */
import type { CheckRow } from "../checks/model.js";
import type { Point } from "../geometry/vocabulary.js";
import type { Base, Input } from "../job/model/job.js";
import type { SurveyHeight } from "../job/model/survey.js";
import type { SettingOutPoint } from "../plan/index.js";
import type { PlacedBase, Plan } from "../plan/model.js";
import type { PointsFile } from "../readers/points-model.js";
import type { PlacedRod } from "../rods/model.js";
import type { Length, Unit } from "../units/length.js";

/** What the survey is held against. `expected`: the setting-out points, rods first, in the order of the plan's. */
export interface SurveyAim {
  readonly plan: Plan;
  readonly expected: readonly SettingOutPoint[];
}

/** What is stated of the survey: by an option, or by the job. */
export interface SurveyTerms {
  readonly accuracy: Input<Length>;
  readonly height: Input<SurveyHeight>;
  /** Farthest from its place that a point without a known name is taken for a rod's. */
  readonly within: Length;
  readonly line: Input<Length>;
  readonly turn: Input<number>;
}

/** Whether the base plate drops on. */
export type Verdict = "fits" | "does not fit" | "within measuring uncertainty" | "not-checked";

/** A point of the file on the plan, in millimetres; plan coordinates are not snapped. */
export interface PointOnPlan {
  readonly name: string;
  readonly line: number;
  readonly plan: Point;
  readonly elevation: Length | null;
  /** What name or description say of its place on the rod. */
  readonly end: "upper" | "lower" | null;
}

/** Lean between two points of one rod: how far the upper is off the lower, over their difference in height. */
export interface RodLean {
  readonly dx: Length;
  readonly dy: Length;
  readonly over: Length;
}

/** A rod as surveyed. */
export interface RodAsBuilt {
  readonly placed: PlacedRod;
  readonly tag: string;
  readonly points: readonly string[];
  /** Centre of the rod in the base's own axes, in millimetres, not snapped. */
  readonly at: Point;
  readonly north: Length;
  readonly east: Length;
  readonly dx: Length;
  readonly dy: Length;
  readonly radial: Length;
  /** Elevation of the (upper) point less that of the top of the rod as designed. */
  readonly dz: Length | null;
  /** Above the top of concrete, where the tops of the rods were taken. */
  readonly projection: Length | null;
  readonly lean: RodLean | null;
  /** Twice the radial clearance, H - d; null: the hole is not known. */
  readonly clearanceTwice: number | null;
  /** What the best position of the plate leaves of the clearance. */
  readonly margin: Length | null;
}

/** A motion of the base's own axes: shift of the working point and turn about it. */
export interface Motion {
  readonly x: Length;
  readonly y: Length;
  /** Degrees; null where one rod alone tells no turn. */
  readonly turn: number | null;
}

/** The plate where it has most to spare, and what holds it there. */
export interface BestPosition {
  readonly spare: Length;
  readonly motion: Motion;
  /** The angles in degrees around the turn that have the same spare to 1e-6 mm. */
  readonly turnRange: readonly [number, number];
  /** No position has more to spare than `spare` plus this, in millimetres. */
  readonly certainTo: number;
  /** Rods that govern, with their share of it. */
  readonly governs: readonly { readonly tag: string; readonly share: number }[];
}

/** A change that would let the plate drop on. Never more than that: the engineer decides. */
export interface Remedy {
  readonly kind: "hole" | "slot" | "all holes";
  readonly tags: readonly string[];
  /** How much larger the hole is, or how much longer than wide the slot. */
  readonly by: Length;
  /** Diameter, or width of the slot. */
  readonly hole: Length;
  /** Overall length of a slot and the direction in which it is cut from the hole, in degrees from the base's own x axis. */
  readonly slot: { readonly length: Length; readonly direction: number } | null;
  readonly spare: Length;
  /** `washer-cover`, `washer-on-plate` and `base-plate-edge` with the change. */
  readonly rows: readonly CheckRow[];
}

/** outside: a row of the group fails. within: none fails and its rods were held. not-checked: no row of its rods was held. */
export type PlacingVerdict = "outside" | "within" | "not-checked";

/** A group's placing, with the rows that fail. */
export interface GroupPlacing {
  readonly verdict: PlacingVerdict;
  /** Tags of rods outside the placing edition, each once; of a spacing both rods. */
  readonly rods: readonly string[];
  /** True where the column on the best fit of its rods is outside its tolerance of line or turn. */
  readonly offLine: boolean;
}

/** One group as surveyed, with both answers. */
export interface GroupSurvey {
  readonly standing: PlacedBase;
  readonly base: Base;
  readonly mark: string;
  /** Grid lines, as `A-1`. */
  readonly at: string;
  readonly verdict: Verdict;
  /** What the verdict wants or rests on. */
  readonly why: readonly string[];
  readonly rods: readonly RodAsBuilt[];
  /** Tags that the survey does not hold. */
  readonly missing: readonly string[];
  /** Least squares over the rods; null where none is surveyed. */
  readonly fit: Motion;
  readonly best: BestPosition | null;
  /** Spare of the plate standing exactly on line and unturned. */
  readonly spareOnLine: Length | null;
  readonly rows: readonly CheckRow[];
  /** Whether rods and column are within their tolerances, apart from whether the plate drops on. */
  readonly placing: GroupPlacing;
  readonly remedies: readonly Remedy[];
}

/** A point that is no rod's. */
export interface OtherPoint {
  readonly name: string;
  readonly kind: SettingOutPoint["kind"];
  readonly line: number;
  readonly north: Length;
  readonly east: Length;
  readonly dz: Length | null;
}

/** A point of the file that is no rod of the job, and why. */
export interface UnmatchedPoint {
  readonly name: string;
  readonly line: number;
  readonly northing: Length;
  readonly easting: Length;
  readonly why: string;
  /** Names of the rods that it may be. */
  readonly candidates: readonly string[];
}

/** The whole survey; groups worst first. */
export interface Survey {
  readonly unit: Unit;
  readonly file: Pick<PointsFile, "file" | "sha256" | "order" | "unit" | "headed">;
  readonly system: "local" | "site";
  readonly terms: SurveyTerms;
  readonly groups: readonly GroupSurvey[];
  readonly notSurveyed: readonly { readonly mark: string; readonly at: string }[];
  readonly others: readonly OtherPoint[];
  readonly unmatched: readonly UnmatchedPoint[];
  /** Adjacent groups and column lines, by the placing edition. */
  readonly rows: readonly CheckRow[];
}
