/** Polygons in place of arcs: the only place where they appear. */
import { segmentsOf } from "./contour.js";
import { point } from "./point.js";
import { arcOf, onCircle } from "./segment.js";
import type { Contour, Point, Segment } from "./vocabulary.js";

/**
 * The contour as a polygon whose chords stay within `tolerance` millimetres of the arcs (besides the rounding of each
 * point to the lattice); vertices lie on the contour, the first is not repeated.
 */
export function flatten(contour: Contour, tolerance: number): readonly Point[] {
  return segmentsOf(contour).flatMap((segment) => flattenSegment(segment, tolerance));
}

function flattenSegment(segment: Segment, tolerance: number): readonly Point[] {
  const start = point(segment.from.x, segment.from.y);
  if (segment.bulge === 0) return [start];
  const { center, radius, start: angle, sweep } = arcOf(segment);
  const step = 2 * Math.acos(Math.max(0, 1 - tolerance / radius));
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / step));
  const rest = Array.from({ length: count - 1 }, (_, i) => {
    const { x, y } = onCircle(center, radius, angle + (sweep * (i + 1)) / count);
    return point(x, y);
  });
  return [start, ...rest];
}
