/** How far two contours stray from each other at most, seen from both. */
import { extentOf, nearestOnContour, positionAlong, segmentsOf } from "../geometry/index.js";
import type { Contour, Point } from "../geometry/vocabulary.js";
import type { DrawnContour } from "./drawn-part.js";
import { MOST_SEGMENTS } from "./hull.js";

/** The largest distance of an end or a middle of a segment from the other contour, in millimetres; of a hull that of the boxes. */
export function contourGap({ contour, isHull }: DrawnContour, known: Contour): number {
  if (isHull || segmentsOf(known).length > MOST_SEGMENTS) return boxGap(contour, known);
  return Math.max(oneWay(contour, known), oneWay(known, contour));
}

function oneWay(from: Contour, to: Contour): number {
  return probes(from).reduce((worst, probe) => Math.max(worst, nearestOnContour(probe, to).distance), 0);
}

function probes(contour: Contour): readonly Point[] {
  return segmentsOf(contour).flatMap((segment) => [
    segment.from,
    positionAlong(segment, 0.5),
    positionAlong(segment, 0.25),
  ]);
}

function boxGap(a: Contour, b: Contour): number {
  const [p, q] = [extentOf(a), extentOf(b)];
  return Math.max(Math.abs(p.x0 - q.x0), Math.abs(p.y0 - q.y0), Math.abs(p.x1 - q.x1), Math.abs(p.y1 - q.y1));
}
