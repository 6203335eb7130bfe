/** One rod as built: its point or its two, against its place as designed. */

import { toLattice, turnOf } from "../geometry/index.js";
import type { Point } from "../geometry/vocabulary.js";
import { baseHoleOf } from "../job/model/base-hole.js";
import type { Input } from "../job/model/job.js";
import { heightOfBasePlate } from "../job/model/stack.js";
import type { PlacedBase } from "../plan/model.js";
import type { Length } from "../units/length.js";
import { add, subtract } from "../units/length.js";
import type { DesignedRod } from "./match.js";
import type { PointOnPlan, RodAsBuilt, RodLean, SurveyTerms } from "./model.js";

/** Plan millimetres in the base's own axes; not snapped. */
function toOwnAxes({ placement, workingPoint }: PlacedBase, { x, y }: Point): Point {
  const { cos, sin } = turnOf(placement.turn);
  const [dx, dy] = [x - workingPoint.x, y - workingPoint.y];
  return { x: dx * cos + dy * sin, y: -dx * sin + dy * cos };
}

/** The rod where its base plate will sit, as far as the points tell. `margin` is left open. */
export function rodAsBuilt(target: DesignedRod, points: readonly PointOnPlan[], terms: SurveyTerms): RodAsBuilt {
  const { standing, planned, expected } = target;
  const { rod } = planned;
  const ends = orderEnds(points);
  const plan = placeAtPlate(ends, plateMiddle(standing));
  const at = toOwnAxes(standing, plan);
  const [dx, dy] = [at.x - rod.center.x, at.y - rod.center.y];
  const top = ends.upper.elevation;
  const baseHole = baseHoleOf(rod.group, { orTable: false });
  return {
    placed: rod,
    tag: rod.tag,
    points: points.map(({ name }) => name),
    at,
    north: toLattice(plan.y - planned.plan.y),
    east: toLattice(plan.x - planned.plan.x),
    dx: toLattice(dx),
    dy: toLattice(dy),
    radial: toLattice(Math.hypot(dx, dy)),
    dz: top === null || expected.elevation === null ? null : subtract(top, expected.elevation),
    projection: projectionOf(top, standing.placement.topOfConcrete, terms),
    lean: leanOf(ends, standing),
    clearanceTwice: baseHole.kind === "given" ? baseHole.value - rod.group.rod.diameter : null,
    margin: null,
  };
}

interface Ends {
  readonly upper: PointOnPlan;
  /** null: one point alone, or two whose difference in height is not known. */
  readonly lower: PointOnPlan | null;
}

function orderEnds(points: readonly PointOnPlan[]): Ends {
  const [a, b] = points;
  if (a === undefined) throw new RangeError("a rod without points");
  if (b === undefined) return { upper: a, lower: null };
  if (a.elevation === null || b.elevation === null || a.elevation === b.elevation) {
    return { upper: a.end === "lower" || b.end === "upper" ? b : a, lower: null };
  }
  return a.elevation > b.elevation ? { upper: a, lower: b } : { upper: b, lower: a };
}

/** Elevation of the middle of the base plate's thickness; null where it is not known. */
function plateMiddle({ placement, base }: PlacedBase): Length | null {
  const { thickness } = base.basePlate;
  const bottom = bottomOfPlate(placement.bottomOfPlate, placement.topOfConcrete, heightOfBasePlate(base));
  if (bottom === null || thickness.kind === "missing") return null;
  return add(bottom, Math.round(thickness.value / 2) as Length);
}

function bottomOfPlate(bottom: Input<Length>, concrete: Input<Length>, height: Input<Length>): Length | null {
  if (bottom.kind === "given") return bottom.value;
  return concrete.kind === "given" && height.kind === "given" ? add(concrete.value, height.value) : null;
}

/** On the line through both points at that height; the upper point where one of them is not known. */
function placeAtPlate({ upper, lower }: Ends, height: Length | null): Point {
  if (lower === null || height === null || upper.elevation === null || lower.elevation === null) return upper.plan;
  const share = (height - lower.elevation) / (upper.elevation - lower.elevation);
  return {
    x: lower.plan.x + share * (upper.plan.x - lower.plan.x),
    y: lower.plan.y + share * (upper.plan.y - lower.plan.y),
  };
}

function leanOf({ upper, lower }: Ends, standing: PlacedBase): RodLean | null {
  if (lower === null || upper.elevation === null || lower.elevation === null) return null;
  const [top, foot] = [toOwnAxes(standing, upper.plan), toOwnAxes(standing, lower.plan)];
  const over = subtract(upper.elevation, lower.elevation);
  return { dx: toLattice(top.x - foot.x), dy: toLattice(top.y - foot.y), over };
}

function projectionOf(top: Length | null, concrete: Input<Length>, { height }: SurveyTerms): Length | null {
  if (top === null || concrete.kind === "missing") return null;
  return height.kind === "given" && height.value.kind === "top" ? subtract(top, concrete.value) : null;
}
