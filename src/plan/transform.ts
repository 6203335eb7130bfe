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

/** Plan position of a site point, snapped. */
export function siteToPlan({ bearing, scaleFactor, origin }: Motion, { northing, easting }: SitePoint): Point {
  const { cos, sin } = turnOf(bearing);
  const k = scaleFactor * NM_PER_MM;
  const [north, east] = [(northing - origin.northing) / k, (easting - origin.easting) / k];
  return point(east * cos - north * sin, north * cos + east * sin);
}
