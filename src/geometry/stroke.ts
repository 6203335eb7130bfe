/** Open polylines against contours: for scribed and painted marks. */

import { polyline, segmentsOf } from "./contour.js";
import { crossings } from "./crossing.js";
import { nearestBetweenSegments } from "./distance.js";
import { gapBetweenExtents, gapToExtent } from "./extent.js";
import { line, segmentExtent } from "./segment.js";
import type { Contour, Extent, Point, Segment } from "./vocabulary.js";

/** True where a stroke meets a contour's line. */
export function strokeMeets(stroke: readonly Point[], contour: Contour): boolean {
  const edges = segmentsOf(contour);
  return polyline(stroke).some((piece) => edges.some((edge) => crossings(piece, edge).length > 0));
}

/** Distance from a stroke to a contour's line in millimetres, 0 where they meet; Infinity for a stroke of one point. */
export function strokeDistance(stroke: readonly Point[], contour: Contour): number {
  return distanceBetweenChains(polyline(stroke), segmentsOf(contour));
}

/** Distance between two strokes in millimetres, 0 where they meet. */
export function distanceBetweenStrokes(a: readonly Point[], b: readonly Point[]): number {
  return distanceBetweenChains(polyline(a), polyline(b));
}

function distanceBetweenChains(a: readonly Segment[], b: readonly Segment[]): number {
  let best = Infinity;
  for (const first of a) {
    const box = segmentExtent(first);
    for (const second of b) {
      if (gapBetweenExtents(box, segmentExtent(second)) >= best) continue;
      best = Math.min(best, nearestBetweenSegments(first, second).distance);
    }
  }
  return best;
}

/**
 * Gap between a box and a segment in millimetres, 0 where the segment enters the box. Exact for lines; for an arc the gap
 * to the box around it where that is positive, else the true distance.
 */
export function gapFromExtentToSegment(box: Extent, segment: Segment): number {
  const rough = gapBetweenExtents(box, segmentExtent(segment));
  const parallel = segment.from.x === segment.to.x || segment.from.y === segment.to.y;
  if (rough > 0 && (segment.bulge !== 0 || parallel)) return rough;
  if (gapToExtent(segment.from, box) === 0) return 0;
  return Math.min(...sides(box).map((side) => nearestBetweenSegments(side, segment).distance));
}

function sides({ x0, y0, x1, y1 }: Extent): readonly Segment[] {
  const corners = [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
  return corners.map((from, i) => line(from, corners[(i + 1) % 4] ?? from));
}
