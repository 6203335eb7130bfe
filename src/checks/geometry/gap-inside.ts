/** The gap between a plate and the contour around it, true at corners, notches and rounds. */
import type { Contour, Path, Point } from "../../geometry/index.js";
import {
  containsPoint,
  nearestBetweenContours,
  nearestOnContour,
  twiceDepthInside,
  twiceToLattice,
} from "../../geometry/index.js";
import { farthestOf } from "./measure.js";
import { placesAlong } from "./pieces.js";

/** Twice a gap in whole nanometres, negative where the inner contour reaches past the outer, and where that is. */
export interface GapAt {
  readonly twice: number;
  /** Millimetres, on the outer contour or, past it, on the inner one. */
  readonly at: Point;
}

/** The least gap of a contour inside another; past it, twice the depth of the deepest place found, negative. */
export function leastGapInside(inner: Contour, outer: Contour): GapAt {
  if (outer.kind === "circle") {
    const { twice, at } = farthestOf(inner, outer.center);
    return { twice: outer.diameter - twice, at };
  }
  if (inner.kind === "circle") {
    const twice = twiceDepthInside(inner.center, outer) - inner.diameter;
    return { twice, at: nearestOnContour(inner.center, outer).at };
  }
  const past = deepest([...outsideOf(inner, outer), ...insideOf(outer, inner)]);
  if (past !== null) return past;
  const { distance, b } = nearestBetweenContours(inner, outer);
  return { twice: twiceToLattice(distance), at: b };
}

/** Places of the inner path past the outer one, with minus twice how far. */
function outsideOf(inner: Path, outer: Path): readonly GapAt[] {
  return placesAlong(inner, outer)
    .filter((at) => !containsPoint(outer, at))
    .map((at) => ({ at, twice: twiceDepthInside(at, outer) }));
}

/** Places of the outer path within the inner one, with minus twice how deep. */
function insideOf(outer: Path, inner: Path): readonly GapAt[] {
  return placesAlong(outer, inner)
    .map((at) => ({ at, twice: -twiceDepthInside(at, inner) }))
    .filter(({ twice }) => twice < 0);
}

function deepest(gaps: readonly GapAt[]): GapAt | null {
  return gaps.reduce<GapAt | null>((worst, gap) => (worst === null || gap.twice < worst.twice ? gap : worst), null);
}
