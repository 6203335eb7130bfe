/**
 * Where the bases stand: grid, placements, control points, north, and the way from the building grid to the site. Plan
 * axes: x plan east, y plan north, exact lengths; angles are degrees counter-clockwise from plan east unless a name says
 * bearing (degrees clockwise from site north).
 */
import type { Place } from "../../diagnostics/finding.js";
import type { PointOrder } from "../../readers/points-model.js";
import type { BearingForm } from "../../units/bearing.js";
import type { SurveyUnit } from "../../units/coordinate.js";
import type { Length } from "../../units/length.js";
import type { Input, Offset } from "./values.js";

/**
 * A named line of the building grid. `x` lines are located by their x (they run plan north), `y` lines by their y; skewed
 * and radial lines by a point and a direction; arcs by centre and radius.
 */
export type GridLine =
  | { readonly kind: "x"; readonly name: string; readonly at: Length }
  | { readonly kind: "y"; readonly name: string; readonly at: Length }
  | { readonly kind: "skewed"; readonly name: string; readonly through: Offset; readonly degrees: number }
  | { readonly kind: "radial"; readonly name: string; readonly center: Offset; readonly degrees: number }
  | { readonly kind: "arc"; readonly name: string; readonly center: Offset; readonly radius: Length };

/** One base, set at the crossing of two grid lines. Every placement of a job is one column. */
export interface Placement {
  readonly place: Place;
  /** Mark of the base. */
  readonly mark: string;
  /** Names of the two lines, as written, in the order written. */
  readonly lines: readonly [string, string];
  /** From the crossing to the base's working point, in plan axes. */
  readonly offset: Offset;
  /** Where two lines cross twice, the crossing nearest to this plan point is meant. */
  readonly near: Input<Offset>;
  /** Turn of the base's own axes on the plan, degrees counter-clockwise. */
  readonly turn: number;
  /** Elevation of the top of concrete, and of the bottom of the base plate where it is given. */
  readonly topOfConcrete: Input<Length>;
  readonly bottomOfPlate: Input<Length>;
  /** Truck or pour that it goes with; empty where that is the base's. */
  readonly delivery: string;
}

/** A point known in site coordinates and, where it takes part in the transform, in plan coordinates. */
export interface ControlPoint {
  readonly name: string;
  readonly plan: Input<Offset>;
  readonly northing: Length;
  readonly easting: Length;
  readonly elevation: Input<Length>;
}

/** From plan to site: two (or more) control points known in both, or an origin and the bearing of plan north. */
export type TransformSpec =
  | { readonly kind: "points"; readonly points: readonly string[] }
  | {
      readonly kind: "origin";
      readonly northing: Length;
      readonly easting: Length;
      /** Bearing of plan north, degrees clockwise from site north. */
      readonly bearing: number;
    }
  | { readonly kind: "none" };

export type { PointOrder, SurveyUnit };

/** The building grid with what stands on it, and the way to site coordinates. */
export interface PlanSpec {
  /** In the order written: x lines, y lines, the others. */
  readonly lines: readonly GridLine[];
  readonly placements: readonly Placement[];
  readonly control: readonly ControlPoint[];
  /** Bearing of plan north from true north, degrees clockwise; missing: true north is not shown. */
  readonly trueNorth: Input<number>;
  /** How the job writes its bearings; decimal where it writes none. */
  readonly bearings: BearingForm;
  readonly transform: TransformSpec;
  /** The surveyor's combined scale factor, grid distance = ground distance x factor; 1 unless given. */
  readonly scaleFactor: Input<number>;
  /** Largest residual or misclosure of the control that the job accepts; missing: they are reported, not held. */
  readonly controlTolerance: Input<Length>;
  readonly settingOut: { readonly order: PointOrder; readonly unit: SurveyUnit };
}
