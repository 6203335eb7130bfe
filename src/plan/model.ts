/** The plan worked out: where each line, base and rod stands in plan coordinates, and on the site. */
import type { Extent, Point } from "../geometry/vocabulary.js";
import type { Base } from "../job/model/job.js";
import type { ControlPoint, GridLine, Placement, PlanSpec } from "../job/model/plan.js";
import type { PlacedRod } from "../rods/model.js";
import type { Length } from "../units/length.js";

/** One base where it stands. Plan coordinates in millimetres on the 1 nm lattice, x plan east, y plan north. */
export interface PlacedBase {
  readonly placement: Placement;
  readonly base: Base;
  /** In the base's own axes. */
  readonly ownRods: readonly PlacedRod[];
  /** `B1 A-1`: mark and grid lines; with `(2)` and so on where two placements would read the same. */
  readonly name: string;
  readonly lines: readonly [GridLine, GridLine];
  /** Crossing of its two grid lines, and the base's working point. */
  readonly crossing: Point;
  readonly workingPoint: Point;
  readonly rods: readonly PlannedRod[];
}

/** A rod and its place on the plan. */
export interface PlannedRod {
  readonly rod: PlacedRod;
  readonly plan: Point;
}

/** Site coordinates: exact lengths, northing and easting. */
export interface SitePoint {
  readonly northing: Length;
  readonly easting: Length;
}

/** Plan to site: turn by `bearing` (of plan north, degrees clockwise from site north), scale, shift. */
export interface SiteTransform {
  readonly kind: "points" | "origin";
  readonly bearing: number;
  /** Applied to plan distances: the surveyor's combined scale factor. */
  readonly scaleFactor: number;
  /** Site position of plan 0,0. */
  readonly origin: SitePoint;
  /** What is left at each control point that took part: site as given minus site as computed. */
  readonly residuals: readonly { readonly name: string; readonly dn: Length; readonly de: Length }[];
}

/** Grid, bases and control points worked out; plan coordinates in millimetres. */
export interface Plan {
  readonly spec: PlanSpec;
  readonly bases: readonly PlacedBase[];
  readonly control: readonly ControlPoint[];
  /** null: no site coordinates are asked for. */
  readonly transform: SiteTransform | null;
  /** Box around grid crossings in use, rods and concrete. */
  readonly extent: Extent;
}
