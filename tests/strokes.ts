/** Distances of marks, for tests: every pair of segments by the distance that the geometry tests hold. */
import type { Contour, Point, Segment } from "../src/geometry/index.js";
import { nearestBetweenSegments, polyline, segmentsOf } from "../src/geometry/index.js";

/** Distance from a stroke to a contour's line in millimetres, 0 where they meet; Infinity for a stroke of one point. */
export function strokeDistance(stroke: readonly Point[], contour: Contour): number {
  return distanceBetweenChains(polyline(stroke), segmentsOf(contour));
}

/** Distance between two strokes in millimetres, 0 where they meet. */
export function distanceBetweenStrokes(a: readonly Point[], b: readonly Point[]): number {
  return distanceBetweenChains(polyline(a), polyline(b));
}

function distanceBetweenChains(a: readonly Segment[], b: readonly Segment[]): number {
  return Math.min(...a.flatMap((first) => b.map((second) => nearestBetweenSegments(first, second).distance)));
}
