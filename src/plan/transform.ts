/**
 * Plan to site and back. The plan is turned by the bearing of plan north (degrees clockwise from site north), scaled by the
 * surveyor's factor, shifted: N = N0 + k (y cos b - x sin b), E = E0 + k (x cos b + y sin b).
 */
import type { Point } from "../geometry/index.js";
import { point, turnOf } from "../geometry/index.js";
import { coordinate, NM_PER_MM } from "../units/index.js";
import type { SitePoint, SiteTransform } from "./model.js";

/** The turn, the factor and the shift of a transform. */
export type Motion = Pick<SiteTransform, "bearing" | "scaleFactor" | "origin">;

/** Site position of a plan point, rounded to 1 nm. */
export function planToSite({ bearing, scaleFactor, origin }: Motion, { x, y }: Point): SitePoint {
  const { cos, sin } = turnOf(bearing);
  const k = scaleFactor * NM_PER_MM;
  return {
    northing: coordinate(origin.northing + coordinate(k * (y * cos - x * sin))),
    easting: coordinate(origin.easting + coordinate(k * (x * cos + y * sin))),
  };
}

/** Plan position of a site point, snapped; it must lie within reach of the lattice. */
export function siteToPlan(motion: Motion, at: SitePoint): Point {
  const { x, y } = siteToPlanUnsnapped(motion, at);
  return point(x, y);
}

/** Plan position of a site point in millimetres, however far it lies. */
export function siteToPlanUnsnapped({ bearing, scaleFactor, origin }: Motion, { northing, easting }: SitePoint): Point {
  const { cos, sin } = turnOf(bearing);
  const k = scaleFactor * NM_PER_MM;
  const [north, east] = [(northing - origin.northing) / k, (easting - origin.easting) / k];
  return { x: east * cos - north * sin, y: north * cos + east * sin };
}
