import type { Extent, Point } from "../src/geometry/index.js";

/** From a point to a box in millimetres, 0 inside: written anew, beside the product's own. */
export function pointGap({ x, y }: Point, { x0, y0, x1, y1 }: Extent): number {
  return Math.hypot(Math.max(x0 - x, x - x1, 0), Math.max(y0 - y, y - y1, 0));
}
