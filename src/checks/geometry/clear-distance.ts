/** The clear distance between two shapes, with how far they overlap where they do. */
import type { Contour, Path, Point } from "../../geometry/index.js";
import { containsPoint, extentOf, twiceDepthInside, twiceWeb } from "../../geometry/index.js";
import { placesAlong } from "./pieces.js";

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
  return [...(containsPoint(path, middle) ? [middle] : []), ...placesAlong(path, other)];
}
