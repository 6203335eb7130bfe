/** What a template bears on a straight form: on two opposite sides, or at its corners past cut corners of the form. */

import type { Contour, Extent, Path, Point } from "../../geometry/index.js";
import {
  arcOf,
  containsPoint,
  meetsAngle,
  onCircle,
  sectionAt,
  segmentsOf,
  twiceDepthInside,
  twiceToLattice,
} from "../../geometry/index.js";
import { greatestOf, leastOf } from "../../units/extremes.js";
import { NM_PER_MM } from "../../units/index.js";

type Axis = "x" | "y";

/**
 * Twice how far a plate reaches past the faces of a form on two opposite sides, along `axis`: the least of four places, each
 * side to both sides of `middle` (the rods' centre), so that a plate that would tip does not bear. Only what lies beside the
 * face counts. `faces`: the form's box in doubled nanometres. null where the plate does not lie beside a face at all.
 */
export function twiceSideBearing(plate: Contour, faces: Extent, middle: Point, axis: Axis): number | null {
  const [low, high] = axis === "x" ? [faces.x0, faces.x1] : [faces.y0, faces.y1];
  const [from, to] = axis === "x" ? [faces.y0, faces.y1] : [faces.x0, faces.x1];
  const across = axis === "x" ? middle.y : middle.x;
  const halves = [
    [from / 2 / NM_PER_MM, across],
    [across, to / 2 / NM_PER_MM],
  ] as const;
  const reaches = halves.map(([a, b]) => reachWithin(plate, axis, a, b));
  if (reaches.some((reach) => reach === null)) return null;
  return leastOf(reaches.map((reach) => (reach === null ? 0 : Math.min(low - reach.low, reach.high - high))));
}

interface Reach {
  readonly low: number;
  readonly high: number;
}

/** Ends of a plate along `axis`, doubled nanometres, where the other coordinate is from `a` to `b` millimetres. */
function reachWithin(plate: Contour, axis: Axis, a: number, b: number): Reach | null {
  if (a > b) return null;
  const other = axis === "x" ? "y" : "x";
  const turning = turningPoints(plate)
    .filter((at) => at[other] >= a && at[other] <= b)
    .map((at) => at[axis]);
  const ends = [a, b].flatMap((at) => sectionAt(plate, other, at).flatMap(({ from, to }) => [from, to]));
  const all = [...turning, ...ends];
  if (all.length === 0) return null;
  return { low: twiceToLattice(leastOf(all)), high: twiceToLattice(greatestOf(all)) };
}

/** Corners of a contour, and the places where its arcs run along x or y. */
function turningPoints(contour: Contour): readonly Point[] {
  if (contour.kind === "circle") {
    const { x, y } = contour.center;
    const radius = contour.diameter / 2 / NM_PER_MM;
    return [
      { x: x + radius, y },
      { x: x - radius, y },
      { x, y: y + radius },
      { x, y: y - radius },
    ];
  }
  return segmentsOf(contour).flatMap((segment) => {
    if (segment.bulge === 0) return [segment.from];
    const arc = arcOf(segment);
    const quarters = [0, 0.5, 1, 1.5].map((quarter) => quarter * Math.PI).filter((angle) => meetsAngle(arc, angle));
    return [segment.from, ...quarters.map((angle) => onCircle(arc.center, arc.radius, angle))];
  });
}

/**
 * Twice the side of the square seat that every quarter of the plate, about `middle`, has at one of its corners past the form's
 * contour: where the form's own corners are cut, a plate bears on them as on a round form. null where a quarter has no corner.
 */
export function twiceCornerBearing(plate: Path, form: Path, middle: Point): number | null {
  const quarters = [
    [1, 1],
    [-1, 1],
    [-1, -1],
    [1, -1],
  ] as const;
  const best = quarters.map(([sx, sy]) => {
    const corners = plate.segments.filter(({ from }) => sx * (from.x - middle.x) > 0 && sy * (from.y - middle.y) > 0);
    return greatestOf(corners.map(({ from }) => twiceSeat(from, middle, plate, form)));
  });
  const least = leastOf(best);
  return Number.isFinite(least) ? least : null;
}

/** Twice the side of the largest square that lies on the plate at its corner and past the form; negative inside the form. */
function twiceSeat(corner: Point, middle: Point, plate: Path, form: Path): number {
  const depth = twiceDepthInside(corner, form);
  if (depth > 0) return -depth;
  const [x, y] = [middle.x - corner.x, middle.y - corner.y];
  const inward = (side: number, along: Point) => ({
    x: corner.x + (Math.sign(x) * along.x * side) / NM_PER_MM,
    y: corner.y + (Math.sign(y) * along.y * side) / NM_PER_MM,
  });
  const fits = (side: number) =>
    twiceDepthInside(inward(side, BOTH), form) <= 0 &&
    [BOTH, { x: 1, y: 0 }, { x: 0, y: 1 }].every((along) => containsPoint(plate, inward(side, along)));
  return 2 * largest(Math.floor(Math.min(Math.abs(x), Math.abs(y)) * NM_PER_MM), fits);
}

const BOTH: Point = { x: 1, y: 1 };

/** The largest whole number up to `most` that fits, where every smaller one fits too. */
function largest(most: number, fits: (side: number) => boolean): number {
  let [low, high] = [0, most + 1];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}
