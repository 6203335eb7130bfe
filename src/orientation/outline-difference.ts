/** How far a moved outline lies from where it belongs: what an eye at the edge can see. */
import type { Contour, Move, Path, Point, Segment } from "../geometry/index.js";
import {
  arcOf,
  millimetresBetween,
  moveContour,
  onCircle,
  rawDistanceToSegment,
  sameContour,
  twiceToLattice,
} from "../geometry/index.js";

/** An outline of which it is asked again and again how it would lie. */
export interface OutlineProbe {
  /**
   * Twice the largest distance found between the outline and its image, from the ends and middles of the pieces of each to the
   * other; 0 where the image is the outline itself. Never more than the true (Hausdorff) distance.
   */
  difference(move: Move): number;
  /** True where the difference is at least `twice` nanometres. */
  isAtLeast(move: Move, twice: number): boolean;
}

/** Keeps what every question about an outline needs. */
export function outlineProbe(outline: Contour): OutlineProbe {
  if (outline.kind === "circle") {
    const difference = (move: Move) => twiceToLattice(millimetresBetween(outline.center, move.apply(outline.center)));
    return { difference, isAtLeast: (move, twice) => difference(move) >= twice };
  }
  const own = lookouts(outline);
  return {
    difference: (move) => differenceOf(outline, own, move, Infinity),
    isAtLeast: (move, twice) => differenceOf(outline, own, move, twice) >= twice,
  };
}

/** Stops looking once `enough` is found, in twice the nanometres. */
function differenceOf(outline: Path, own: readonly Point[], move: Move, enough: number): number {
  const moved = moveContour(outline, move);
  if (moved.kind === "circle" || sameContour(moved, outline)) return 0;
  const there = farthest(own, moved.segments, 0, enough);
  return twiceToLattice(farthest(lookouts(moved), outline.segments, there, enough));
}

/** The largest distance of points to a path, or `start` where that is more; a point that is nearer than that is left at once. */
function farthest(points: readonly Point[], segments: readonly Segment[], start: number, enough: number): number {
  let most = start;
  for (const at of points) {
    if (twiceToLattice(most) >= enough) return most;
    let least = Infinity;
    for (const segment of segments) {
      least = Math.min(least, rawDistanceToSegment(at, segment));
      if (least <= most) break;
    }
    most = Math.max(most, least);
  }
  return most;
}

function lookouts({ segments }: Path): readonly Point[] {
  return segments.flatMap((segment) => {
    const { from, to, bulge } = segment;
    if (bulge === 0) return [from, { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }];
    const { center, radius, start, sweep } = arcOf(segment);
    return [from, onCircle(center, radius, start + sweep / 2)];
  });
}
