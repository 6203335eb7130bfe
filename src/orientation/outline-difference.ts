/** How far a moved outline lies from where it belongs: what an eye at the edge can see. */
import type { Contour, Move, Point } from "../geometry/index.js";
import {
  arcOf,
  millimetresBetween,
  moveContour,
  nearestOnContour,
  onCircle,
  sameContour,
  twiceToLattice,
} from "../geometry/index.js";

/**
 * Twice the largest distance found between an outline and its image, from the ends and middles of the pieces of each to the
 * other; 0 where the image is the outline itself. Never more than the true (Hausdorff) distance.
 */
export function outlineDifference(outline: Contour, move: Move): number {
  if (outline.kind === "circle") return twiceToLattice(millimetresBetween(outline.center, move.apply(outline.center)));
  const moved = moveContour(outline, move);
  if (sameContour(moved, outline)) return 0;
  return twiceToLattice(Math.max(farthest(outline, moved), farthest(moved, outline)));
}

function farthest(from: Contour, to: Contour): number {
  return Math.max(0, ...lookouts(from).map((at) => nearestOnContour(at, to).distance));
}

function lookouts(contour: Contour): readonly Point[] {
  if (contour.kind === "circle") return [];
  return contour.segments.flatMap((segment) => {
    const { from, to, bulge } = segment;
    if (bulge === 0) return [from, { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }];
    const { center, radius, start, sweep } = arcOf(segment);
    return [from, onCircle(center, radius, start + sweep / 2)];
  });
}
