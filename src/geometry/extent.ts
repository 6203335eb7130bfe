/** Axis-parallel boxes in millimetres. */
import type { Extent, Point } from "./vocabulary.js";

/** The box that holds nothing: joined with any other it gives that other. */
export const NO_EXTENT: Extent = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };

/** The box around two boxes. */
export function joinExtents(a: Extent, b: Extent): Extent {
  return {
    x0: Math.min(a.x0, b.x0),
    y0: Math.min(a.y0, b.y0),
    x1: Math.max(a.x1, b.x1),
    y1: Math.max(a.y1, b.y1),
  };
}

/** The box around points; `NO_EXTENT` when there are none. */
export function extentOfPoints(points: Iterable<Point>): Extent {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    x0 = Math.min(x0, x);
    y0 = Math.min(y0, y);
    x1 = Math.max(x1, x);
    y1 = Math.max(y1, y);
  }
  return { x0, y0, x1, y1 };
}

/** Gap between two boxes in millimetres, 0 where they touch or overlap. */
export function gapBetweenExtents(a: Extent, b: Extent): number {
  const dx = Math.max(a.x0 - b.x1, b.x0 - a.x1, 0);
  const dy = Math.max(a.y0 - b.y1, b.y0 - a.y1, 0);
  return dx === 0 ? dy : dy === 0 ? dx : Math.sqrt(dx * dx + dy * dy);
}

/** Gap from a point to a box in millimetres, 0 inside. */
export function gapToExtent({ x, y }: Point, box: Extent): number {
  const dx = Math.max(box.x0 - x, x - box.x1, 0);
  const dy = Math.max(box.y0 - y, y - box.y1, 0);
  return dx === 0 ? dy : dy === 0 ? dx : Math.sqrt(dx * dx + dy * dy);
}

/** The box made larger by `by` millimetres on every side. */
export function growExtent({ x0, y0, x1, y1 }: Extent, by: number): Extent {
  return { x0: x0 - by, y0: y0 - by, x1: x1 + by, y1: y1 + by };
}
