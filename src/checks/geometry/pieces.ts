/** Places on a path between its crossings with another: between two of them it stays on one side of the other. */
import type { Path, Point, Segment } from "../../geometry/index.js";
import { arcOf, crossings, millimetresBetween, positionAlong } from "../../geometry/index.js";

/** Corners of a path, and the middles of the pieces into which its crossings with `other` cut its edges and arcs. */
export function placesAlong(path: Path, other: Path): readonly Point[] {
  return path.segments.flatMap((segment) => [segment.from, ...middlesOf(segment, other)]);
}

function middlesOf(segment: Segment, other: Path): readonly Point[] {
  const cuts = other.segments.flatMap((edge) => crossings(segment, edge)).map((at) => shareOf(segment, at));
  const along = [0, ...cuts, 1].sort((a, b) => a - b);
  return along.slice(1).map((to, i) => positionAlong(segment, ((along[i] ?? to) + to) / 2));
}

/** How far along a segment one of its points lies, 0 to 1. */
function shareOf(segment: Segment, at: Point): number {
  const { from, to } = segment;
  if (segment.bulge === 0) return Math.min(1, millimetresBetween(from, at) / millimetresBetween(from, to));
  const { center, start, sweep } = arcOf(segment);
  const angle = Math.atan2(at.y - center.y, at.x - center.x);
  const turn = Math.sign(sweep) * (angle - start);
  const full = 2 * Math.PI;
  return Math.min(1, (((turn % full) + full) % full) / Math.abs(sweep));
}
