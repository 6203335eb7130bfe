/** Contours of very many segments, held by the points that reach farthest: their box is the same however they are turned. */
import { positionAlong } from "../geometry/index.js";
import type { Point, Segment } from "../geometry/vocabulary.js";

/** Contours of more segments than this are compared by their boxes. */
export const MOST_SEGMENTS = 1000;

/** Directions over half a turn: between two of them the box is short by 4e-5 of half its size at most, as between two points of an arc. */
const DIRECTIONS = 180;
const MOST_ARC_POINTS = 180;

/** The farthest points in every direction and against it, as a closed path of straight segments. */
export function hullOf(segments: readonly Segment[]): readonly Segment[] {
  const points = segments.flatMap(pointsOf);
  const [along, against]: [Point[], Point[]] = [[], []];
  for (let step = 0; step < DIRECTIONS; step++) {
    const angle = (step * Math.PI) / DIRECTIONS;
    const [least, most] = farthest(points, Math.cos(angle), Math.sin(angle));
    along.push(most);
    against.push(least);
  }
  return closed([...along, ...against]);
}

/** The start of a segment, and of an arc a point for every degree (bulge: tangent of a quarter of the angle). */
function pointsOf(segment: Segment): readonly Point[] {
  const degrees = (4 * Math.atan(Math.abs(segment.bulge)) * 180) / Math.PI;
  const pieces = Math.min(MOST_ARC_POINTS, Math.max(1, Math.ceil(degrees)));
  return Array.from({ length: pieces }, (_, index) => positionAlong(segment, index / pieces));
}

function farthest(points: readonly Point[], x: number, y: number): readonly [Point, Point] {
  let [least, most] = [Infinity, -Infinity];
  let [first, last]: [Point, Point] = [
    { x: 0, y: 0 },
    { x: 0, y: 0 },
  ];
  for (const point of points) {
    const reach = point.x * x + point.y * y;
    if (reach < least) [least, first] = [reach, point];
    if (reach > most) [most, last] = [reach, point];
  }
  return [first, last];
}

function closed(points: readonly Point[]): readonly Segment[] {
  return points.map((from, index) => ({ from, to: points[(index + 1) % points.length] ?? from, bulge: 0 }));
}
