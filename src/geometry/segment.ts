/** Straight lines and circular arcs by their ends and bulge. */
import { millimetresBetween } from "./point.js";
import type { Extent, Point, Segment } from "./vocabulary.js";

/** bulge of a quarter turn: tan(90 degrees / 4). */
export const QUARTER_BULGE = Math.SQRT2 - 1;

/** What an arc's bulge stands for. Angles in radians; `sweep` positive counter-clockwise; `end` = `start` + `sweep`. */
export interface Arc {
  readonly center: Point;
  readonly radius: number;
  readonly start: number;
  readonly end: number;
  readonly sweep: number;
}

/** A straight segment. */
export function line(from: Point, to: Point): Segment {
  return { from, to, bulge: 0 };
}

/** An arc with bulge = tan(sweep / 4), positive counter-clockwise. */
export function arc(from: Point, to: Point, bulge: number): Segment {
  return { from, to, bulge };
}

/** Center (off the lattice in general), radius and angles of an arc; the bulge must not be 0. */
export function arcOf({ from, to, bulge }: Segment): Arc {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const rise = (1 - bulge * bulge) / (4 * bulge);
  const center = { x: (from.x + to.x) / 2 - dy * rise, y: (from.y + to.y) / 2 + dx * rise };
  const radius = (Math.sqrt(dx * dx + dy * dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  const start = Math.atan2(from.y - center.y, from.x - center.x);
  const sweep = 4 * Math.atan(bulge);
  return { center, radius, start, sweep, end: start + sweep };
}

/** True where the direction `angle` (radians) from an arc's center meets the arc; its ends count. */
export function meetsAngle({ start, sweep }: Pick<Arc, "start" | "sweep">, angle: number): boolean {
  const turn = sweep < 0 ? start - angle : angle - start;
  const full = 2 * Math.PI;
  const within = ((turn % full) + full) % full;
  return within <= Math.abs(sweep) + 1e-12 || within >= full - 1e-12;
}

/** Length along the segment, in millimetres. */
export function segmentLength(segment: Segment): number {
  if (segment.bulge === 0) return millimetresBetween(segment.from, segment.to);
  const { radius, sweep } = arcOf(segment);
  return radius * Math.abs(sweep);
}

/** Position at the fraction `t` (0 to 1) of the segment's length, off the lattice in general. */
export function positionAlong(segment: Segment, t: number): Point {
  const { from, to } = segment;
  if (t === 0) return from;
  if (t === 1) return to;
  if (segment.bulge === 0) return { x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t };
  const { center, radius, start, sweep } = arcOf(segment);
  return onCircle(center, radius, start + sweep * t);
}

/** Position on a circle in the direction `angle` (radians), off the lattice in general. */
export function onCircle(center: Point, radius: number, angle: number): Point {
  return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
}

/** Directions of travel (radians) where the segment starts and where it ends. */
export function headings(segment: Segment): { readonly start: number; readonly end: number } {
  const chord = Math.atan2(segment.to.y - segment.from.y, segment.to.x - segment.from.x);
  const half = 2 * Math.atan(segment.bulge);
  return { start: chord - half, end: chord + half };
}

/** The segment run the other way. */
export function reversed({ from, to, bulge }: Segment): Segment {
  return { from: to, to: from, bulge: bulge === 0 ? 0 : -bulge };
}

/** Box around a segment, an arc's quadrant points included. */
export function segmentExtent(segment: Segment): Extent {
  const { from, to } = segment;
  const box = {
    x0: Math.min(from.x, to.x),
    y0: Math.min(from.y, to.y),
    x1: Math.max(from.x, to.x),
    y1: Math.max(from.y, to.y),
  };
  return segment.bulge === 0 ? box : withQuadrants(box, arcOf(segment));
}

function withQuadrants(box: Extent, round: Arc): Extent {
  const { center, radius } = round;
  const meets = (quarter: number) => meetsAngle(round, (quarter * Math.PI) / 2);
  return {
    x0: meets(2) ? Math.min(box.x0, center.x - radius) : box.x0,
    y0: meets(3) ? Math.min(box.y0, center.y - radius) : box.y0,
    x1: meets(0) ? Math.max(box.x1, center.x + radius) : box.x1,
    y1: meets(1) ? Math.max(box.y1, center.y + radius) : box.y1,
  };
}
