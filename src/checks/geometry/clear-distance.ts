/** The clear distance between two shapes, with how far they overlap where they do. */
import type { Contour, Path, Point, Segment } from "../../geometry/index.js";
import {
  arcOf,
  containsPoint,
  crossings,
  extentOf,
  millimetresBetween,
  onCircle,
  twiceDepthInside,
  twiceWeb,
} from "../../geometry/index.js";

/**
 * Twice the clear distance between two contours in whole nanometres: 0 where they touch. Where they overlap it is negative:
 * for two round ones the true amount; otherwise twice the depth of the deepest of their corners, of the middles of the
 * pieces of their edges between crossings, and of the middles of their boxes.
 */
export function twiceClear(a: Contour, b: Contour): number {
  if (a.kind === "circle" || b.kind === "circle") return twiceWeb(a, b);
  const web = twiceWeb(a, b);
  if (web > 0) return web;
  const depth = Math.max(deepest(a, b), deepest(b, a));
  return depth > 0 ? -depth : Math.min(web, 0) + 0;
}

/** Twice how deep the deepest sample of `inner` lies in `outer`; 0 where none does. */
function deepest(inner: Path, outer: Path): number {
  return samplesOf(inner, outer)
    .filter((at) => containsPoint(outer, at))
    .reduce((most, at) => Math.max(most, twiceDepthInside(at, outer)), 0);
}

function samplesOf(path: Path, other: Path): readonly Point[] {
  const { x0, y0, x1, y1 } = extentOf(path);
  const middle = { x: (x0 + x1) / 2, y: (y0 + y1) / 2 };
  const own = containsPoint(path, middle) ? [middle] : [];
  return [...own, ...path.segments.flatMap((segment) => [segment.from, ...middlesOf(segment, other)])];
}

/** Middles of the pieces into which the crossings with another path cut a segment; an arc counts as one piece. */
function middlesOf(segment: Segment, other: Path): readonly Point[] {
  if (segment.bulge !== 0) return [middleOfArc(segment)];
  const cuts = other.segments.flatMap((edge) => crossings(segment, edge));
  const along = [segment.from, ...cuts, segment.to].sort(
    (p, q) => millimetresBetween(segment.from, p) - millimetresBetween(segment.from, q),
  );
  return along.slice(1).map((to, i) => {
    const from = along[i] ?? to;
    return { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  });
}

function middleOfArc(segment: Segment): Point {
  const { center, radius, start, sweep } = arcOf(segment);
  return onCircle(center, radius, start + sweep / 2);
}
