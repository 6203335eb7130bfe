/**
 * The order in which rods are numbered: clockwise from the north-west rod, seen from above; north is the type's +y.
 * North-west is the rod with the greatest y - x (ties: greater y, then smaller x). The others follow by clockwise angle
 * about the centre of the box around the rods; on one ray the farther comes first; a rod at the centre comes last.
 */
import type { Point } from "../geometry/index.js";
import { extentOfPoints } from "../geometry/index.js";
import { greatestOf } from "../units/extremes.js";

/** Figures closer than this are equal, so that rounding to the lattice cannot change the order: 1 um, 1e-6 rad. */
const SAME_MM = 1e-3;
const SAME_RAD = 1e-6;
const FULL = 2 * Math.PI;

interface Polar {
  readonly at: Point;
  readonly radius: number;
  /** Clockwise from the north-west rod, in [0, 2 pi). */
  readonly turn: number;
}

/** The points in numbering order. The order in which they are given makes no difference. */
export function clockwiseFromNorthWest(points: readonly Point[]): readonly Point[] {
  const first = northWest(points);
  if (first === undefined) return [];
  const { x0, y0, x1, y1 } = extentOfPoints(points);
  const center = { x: (x0 + x1) / 2, y: (y0 + y1) / 2 };
  const start = clockwiseAngle(center, first);
  const polars = points.filter((at) => at !== first).map((at) => polar(center, start, at));
  const around = polars.filter(({ radius }) => radius >= SAME_MM);
  const central = polars.filter(({ radius }) => radius < SAME_MM);
  return [first, ...[...byRay(around), ...central].map(({ at }) => at)];
}

function northWest(points: readonly Point[]): Point | undefined {
  const best = greatestOf(points.map(({ x, y }) => y - x));
  const tied = points.filter(({ x, y }) => y - x >= best - SAME_MM);
  const top = greatestOf(tied.map(({ y }) => y));
  return tied.filter(({ y }) => y >= top - SAME_MM).sort((a, b) => a.x - b.x || b.y - a.y)[0];
}

function clockwiseAngle(center: Point, at: Point): number {
  return -Math.atan2(at.y - center.y, at.x - center.x);
}

function polar(center: Point, start: number, at: Point): Polar {
  const turn = (clockwiseAngle(center, at) - start + 2 * FULL) % FULL;
  const radius = Math.hypot(at.x - center.x, at.y - center.y);
  return { at, radius, turn: turn > FULL - SAME_RAD ? 0 : turn };
}

/** Sorts by angle; rods on one ray, within the tolerance, from the outside in. */
function byRay(polars: readonly Polar[]): readonly Polar[] {
  const sorted = [...polars].sort((a, b) => a.turn - b.turn);
  const rays: Polar[][] = [];
  for (const item of sorted) {
    const ray = rays.at(-1);
    const previous = ray?.at(-1);
    if (ray !== undefined && previous !== undefined && item.turn - previous.turn < SAME_RAD) ray.push(item);
    else rays.push([item]);
  }
  return rays.flatMap((ray) => ray.sort((a, b) => b.radius - a.radius));
}
