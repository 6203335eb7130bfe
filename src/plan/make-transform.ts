/** The transform from building grid to site: from control points by least squares, or from an origin and a bearing. */
import { pointAt, turnOf } from "../geometry/index.js";
import type { ControlPoint, Offset, PlanSpec } from "../job/index.js";
import { coordinate } from "../units/index.js";
import type { SitePoint, SiteTransform } from "./model.js";
import { planToSite } from "./transform.js";

/** A control point that takes part, known on both sides. */
interface Tie {
  readonly name: string;
  readonly plan: Offset;
  readonly at: SitePoint;
}

/** The transform that the job asks for; null where it asks for none, or names fewer than two usable control points. */
export function makeTransform(spec: PlanSpec): SiteTransform | null {
  const scaleFactor = spec.scaleFactor.kind === "given" ? spec.scaleFactor.value : 1;
  const { transform } = spec;
  switch (transform.kind) {
    case "none":
      return null;
    case "origin": {
      const { northing, easting, bearing } = transform;
      const motion = { kind: "origin", bearing, scaleFactor, origin: { northing, easting } } as const;
      return { ...motion, residuals: tiesOf(spec.control).map((tie) => residualOf(motion, tie)) };
    }
    case "points": {
      const ties = tiesOf(spec.control).filter(({ name }) => transform.points.includes(name));
      return fitTransform(ties, scaleFactor);
    }
  }
}

function tiesOf(control: readonly ControlPoint[]): readonly Tie[] {
  return control.flatMap(({ name, plan, northing, easting }) =>
    plan.kind === "given" ? [{ name, plan: plan.value, at: { northing, easting } }] : [],
  );
}

/**
 * Least squares over turn and shift, the scale held: the bearing is the direction of the sum of products about the two
 * centroids (the plane case of the orthogonal Procrustes problem); residual = given less computed.
 */
export function fitTransform(ties: readonly Tie[], scaleFactor: number): SiteTransform | null {
  const first = ties[0];
  if (first === undefined || ties.length < 2) return null;
  const centered = centre(ties, first);
  let [along, across] = [0, 0];
  for (const { x, y, north, east } of centered.pairs) {
    along += x * east + y * north;
    across += y * east - x * north;
  }
  const bearing = ((Math.atan2(across, along) * 180) / Math.PI + 360) % 360;
  const motion = { bearing, scaleFactor, origin: originOf(first, centered, bearing, scaleFactor) };
  return { kind: "points", ...motion, residuals: ties.map((tie) => residualOf(motion, tie)) };
}

interface Centred {
  /** Centroids as differences from the first point, in nanometres. */
  readonly mean: { readonly x: number; readonly y: number; readonly north: number; readonly east: number };
  readonly pairs: readonly { readonly x: number; readonly y: number; readonly north: number; readonly east: number }[];
}

/** Differences from the first point are exact; site coordinates themselves have too many figures to be squared. */
function centre(ties: readonly Tie[], first: Tie): Centred {
  const from = ties.map(({ plan, at }) => ({
    x: plan.x - first.plan.x,
    y: plan.y - first.plan.y,
    north: at.northing - first.at.northing,
    east: at.easting - first.at.easting,
  }));
  const meanOf = (key: "x" | "y" | "north" | "east") => from.reduce((sum, pair) => sum + pair[key], 0) / from.length;
  const mean = { x: meanOf("x"), y: meanOf("y"), north: meanOf("north"), east: meanOf("east") };
  const pairs = from.map(({ x, y, north, east }) => ({
    x: x - mean.x,
    y: y - mean.y,
    north: north - mean.north,
    east: east - mean.east,
  }));
  return { mean, pairs };
}

/** Site position of plan 0,0: the centroid's, less the turned and scaled centroid of the plan. */
function originOf(first: Tie, { mean }: Centred, bearing: number, k: number): SitePoint {
  const { cos, sin } = turnOf(bearing);
  const [x, y] = [first.plan.x + mean.x, first.plan.y + mean.y];
  return {
    northing: coordinate(first.at.northing + coordinate(mean.north - k * (y * cos - x * sin))),
    easting: coordinate(first.at.easting + coordinate(mean.east - k * (x * cos + y * sin))),
  };
}

function residualOf(motion: Pick<SiteTransform, "bearing" | "scaleFactor" | "origin">, { name, plan, at }: Tie) {
  const computed = planToSite(motion, pointAt(plan.x, plan.y));
  return {
    name,
    dn: coordinate(at.northing - computed.northing),
    de: coordinate(at.easting - computed.easting),
  };
}
