/** Room beside a square washer that lies with its sides along the base's axes. Doubled lengths, nothing is halved. */

import type { Contour, Path, Point } from "../../geometry/index.js";
import {
  arcOf,
  meetsAngle,
  onCircle,
  segmentsOf,
  twiceDistanceBetweenPoints,
  twiceToLattice,
} from "../../geometry/index.js";
import { leastOf } from "../../units/extremes.js";
import { NM_PER_MM } from "../../units/index.js";

/** Twice the larger of the distances along x and along y: two squares lie clear where either does. */
export function twiceAlongAxes(a: Point, b: Point): number {
  return twiceToLattice(Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y)));
}

/** Twice the distance from a point to a square of this side about `center`; 0 within it. */
export function twiceToSquare(at: Point, center: Point, side: number): number {
  const past = (a: number, b: number) => Math.max(0, Math.abs(a - b) - side / 2 / NM_PER_MM);
  return twiceDistanceBetweenPoints({ x: past(at.x, center.x), y: past(at.y, center.y) }, { x: 0, y: 0 });
}

/** The side of the largest square about a point beside a contour that no line of it cuts. */
export function squareRoom(at: Point, contour: Contour): number {
  return twiceToLattice(leastOf(segmentsOf(contour).map((segment) => roomBeside(at, segment))));
}

/** The least over a segment of the larger of |dx| and |dy|, millimetres. */
function roomBeside(at: Point, segment: Path["segments"][number]): number {
  const places = [segment.from, segment.to, ...(segment.bulge === 0 ? onLine(at, segment) : onArc(at, segment))];
  return leastOf(places.map(({ x, y }) => Math.max(Math.abs(x - at.x), Math.abs(y - at.y))));
}

type Segment = Path["segments"][number];

/** Where a line meets the axes and the diagonals through a point: |dx|, |dy| or both are least there. */
function onLine({ x, y }: Point, { from, to }: Segment): readonly Point[] {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const [fx, fy] = [from.x - x, from.y - y];
  const meets = [
    [-fx, dx],
    [-fy, dy],
    [-(fx - fy), dx - dy],
    [-(fx + fy), dx + dy],
  ] as const;
  return meets.flatMap(([above, below]) => {
    const t = above / below;
    return t > 0 && t < 1 ? [{ x: from.x + t * dx, y: from.y + t * dy }] : [];
  });
}

/** Where an arc runs along x or y, and where it meets the diagonals through a point. */
function onArc(at: Point, segment: Segment): readonly Point[] {
  const arc = arcOf(segment);
  const { center, radius } = arc;
  const turning = [0, 0.5, 1, 1.5].map((quarter) => quarter * Math.PI);
  const diagonals = [1, -1].flatMap((slope) => {
    // On the diagonal (u, slope u) from the point: a quadratic in u.
    const [cx, cy] = [center.x - at.x, center.y - at.y];
    const middle = (cx + slope * cy) / 2;
    const square = middle * middle - (cx * cx + cy * cy - radius * radius) / 2;
    if (square < 0) return [];
    return [middle - Math.sqrt(square), middle + Math.sqrt(square)].map((u) => Math.atan2(slope * u - cy, u - cx));
  });
  return [...turning, ...diagonals]
    .filter((angle) => meetsAngle(arc, angle))
    .map((angle) => onCircle(center, radius, angle));
}
