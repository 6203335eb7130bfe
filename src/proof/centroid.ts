/** Where the middle of a contour lies. */
import { positionAlong } from "../geometry/index.js";
import type { Contour, Point } from "../geometry/vocabulary.js";

/** Centre of the area inside a contour, its arcs by 64 chords each: the same for both, so that what is alike stays alike. */
export function centroidOf(contour: Contour): Point {
  if (contour.kind === "circle") return contour.center;
  const points = contour.segments.flatMap((segment) => {
    const chords = segment.bulge === 0 ? 1 : 64;
    return Array.from({ length: chords }, (_, index) => positionAlong(segment, index / chords));
  });
  const origin = points[0] ?? { x: 0, y: 0 };
  let [area, x, y] = [0, 0, 0];
  points.forEach((a, index) => {
    const b = points[(index + 1) % points.length] ?? a;
    const [ax, ay, bx, by] = [a.x - origin.x, a.y - origin.y, b.x - origin.x, b.y - origin.y];
    const twice = ax * by - bx * ay;
    area += twice;
    x += twice * (ax + bx);
    y += twice * (ay + by);
  });
  return area === 0 ? origin : { x: origin.x + x / (3 * area), y: origin.y + y / (3 * area) };
}
