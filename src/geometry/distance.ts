import { NM_PER_MM } from "../units/length.js";
import { segmentsOf } from "./contour.js";
import { crossings } from "./crossing.js";
import { gapBetweenExtents } from "./extent.js";
import { millimetresBetween, twiceToLattice } from "./point.js";
import { containsPoint } from "./section.js";
import { arcOf, meetsAngle, onCircle, segmentExtent } from "./segment.js";
import type { Circle, Contour, Extent, Path, Point, Segment } from "./vocabulary.js";

/** The nearest point and how far it is, in millimetres, off the lattice in general. */
export interface Nearest {
  readonly at: Point;
  readonly distance: number;
}

/** The nearest points of two things and how far they are apart, in millimetres; 0 where they touch or cross. */
export interface NearestPair {
  readonly a: Point;
  readonly b: Point;
  readonly distance: number;
}

/** The point of a segment nearest to `from`. */
export function nearestOnSegment(from: Point, segment: Segment): Nearest {
  return segment.bulge === 0 ? nearestOnLine(from, segment) : nearestOnArc(from, segment);
}

function nearestOnLine(p: Point, { from, to }: Segment): Nearest {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : ((p.x - from.x) * dx + (p.y - from.y) * dy) / square;
  const at = t <= 0 ? from : t >= 1 ? to : { x: from.x + t * dx, y: from.y + t * dy };
  return { at, distance: millimetresBetween(p, at) };
}

function nearestOnArc(p: Point, segment: Segment): Nearest {
  const arc = arcOf(segment);
  const away = millimetresBetween(arc.center, p);
  const angle = away === 0 ? arc.start : Math.atan2(p.y - arc.center.y, p.x - arc.center.x);
  if (meetsAngle(arc, angle)) {
    return { at: onCircle(arc.center, arc.radius, angle), distance: Math.abs(away - arc.radius) };
  }
  return nearer(
    { at: segment.from, distance: millimetresBetween(p, segment.from) },
    { at: segment.to, distance: millimetresBetween(p, segment.to) },
  );
}

/** How far a segment is from `p`, in millimetres: `nearestOnSegment` without the place, for many points. */
export function rawDistanceToSegment(p: Point, segment: Segment): number {
  if (segment.bulge !== 0) return nearestOnArc(p, segment).distance;
  const { from, to } = segment;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : ((p.x - from.x) * dx + (p.y - from.y) * dy) / square;
  if (t <= 0) return millimetresBetween(p, from);
  if (t >= 1) return millimetresBetween(p, to);
  const x = from.x + t * dx;
  const y = from.y + t * dy;
  return Math.sqrt((x - p.x) * (x - p.x) + (y - p.y) * (y - p.y));
}

function nearer<T extends { readonly distance: number }>(a: T, b: T): T {
  return b.distance < a.distance ? b : a;
}

/** The point of a contour nearest to `from`, which may lie inside or outside. */
export function nearestOnContour(from: Point, contour: Contour): Nearest {
  if (contour.kind === "circle") return nearestOnCircle(from, contour);
  return contour.segments
    .map((segment) => nearestOnSegment(from, segment))
    .reduce(nearer, { at: from, distance: Infinity });
}

function nearestOnCircle(p: Point, { center, diameter }: Circle): Nearest {
  const radius = diameter / 2 / NM_PER_MM;
  const away = millimetresBetween(center, p);
  const at =
    away === 0
      ? { x: center.x + radius, y: center.y }
      : { x: center.x + ((p.x - center.x) / away) * radius, y: center.y + ((p.y - center.y) / away) * radius };
  return { at, distance: Math.abs(away - radius) };
}

/** Twice the depth of a point inside a contour, its distance to the contour, in whole nanometres; negative outside. */
export function twiceDepthInside(at: Point, contour: Contour): number {
  return twiceToLattice(signedDepth(at, contour));
}

function signedDepth(at: Point, contour: Contour): number {
  if (contour.kind === "circle") return contour.diameter / 2 / NM_PER_MM - millimetresBetween(contour.center, at);
  let distance = Infinity;
  for (const segment of contour.segments) distance = Math.min(distance, rawDistanceToSegment(at, segment));
  return containsPoint(contour, at) ? distance : -distance;
}

/** The nearest points of two segments. */
export function nearestBetweenSegments(a: Segment, b: Segment): NearestPair {
  const shared = crossings(a, b)[0];
  if (shared !== undefined) return { a: shared, b: shared, distance: 0 };
  return [...endPairs(a, b), ...innerPairs(a, b)].reduce(nearer);
}

function endPairs(a: Segment, b: Segment): readonly [NearestPair, ...NearestPair[]] {
  const toB = (end: Point): NearestPair => {
    const { at, distance } = nearestOnSegment(end, b);
    return { a: end, b: at, distance };
  };
  const toA = (end: Point): NearestPair => {
    const { at, distance } = nearestOnSegment(end, a);
    return { a: at, b: end, distance };
  };
  return [toB(a.from), toB(a.to), toA(b.from), toA(b.to)];
}

/** Pairs that lie inside both segments: on the normal from an arc's center to a line, or on the line through two centers. */
function innerPairs(a: Segment, b: Segment): readonly NearestPair[] {
  if (a.bulge === 0 && b.bulge === 0) return [];
  if (a.bulge === 0) return fromArcToLine(b, a).map(({ a: p, b: q, distance }) => ({ a: q, b: p, distance }));
  if (b.bulge === 0) return fromArcToLine(a, b);
  const [first, second] = [arcOf(a), arcOf(b)];
  const axis = Math.atan2(second.center.y - first.center.y, second.center.x - first.center.x);
  const onFirst = [axis, axis + Math.PI].filter((angle) => meetsAngle(first, angle));
  return onFirst.map((angle) => {
    const at = onCircle(first.center, first.radius, angle);
    const other = nearestOnSegment(at, b);
    return { a: at, b: other.at, distance: other.distance };
  });
}

function fromArcToLine(curved: Segment, straight: Segment): readonly NearestPair[] {
  const arc = arcOf(curved);
  const foot = nearestOnLine(arc.center, straight).at;
  const angle = Math.atan2(foot.y - arc.center.y, foot.x - arc.center.x);
  if (!meetsAngle(arc, angle)) return [];
  const at = onCircle(arc.center, arc.radius, angle);
  const { at: b, distance } = nearestOnLine(at, straight);
  return [{ a: at, b, distance }];
}

/** The nearest points of two contours' lines; one inside the other is as far as its line is from the other's. */
export function nearestBetweenContours(a: Contour, b: Contour): NearestPair {
  const boxed = segmentsOf(b).map((segment) => ({ segment, box: segmentExtent(segment) }));
  const start: NearestPair = { a: { x: 0, y: 0 }, b: { x: 0, y: 0 }, distance: Infinity };
  return segmentsOf(a).reduce((best, segment) => nearestAmong(segment, segmentExtent(segment), boxed, best), start);
}

function nearestAmong(
  segment: Segment,
  box: Extent,
  others: readonly { readonly segment: Segment; readonly box: Extent }[],
  start: NearestPair,
): NearestPair {
  return others.reduce((best, other) => {
    if (gapBetweenExtents(box, other.box) >= best.distance) return best;
    return nearer(best, nearestBetweenSegments(segment, other.segment));
  }, start);
}

/**
 * Twice the clear material between two holes (web), in whole nanometres: negative where they overlap. A round hole's
 * overlap is true; where two paths overlap it is 0, or minus twice their distance where one lies inside the other.
 */
export function twiceWeb(a: Contour, b: Contour): number {
  if (a.kind === "circle") {
    const apart =
      b.kind === "circle"
        ? 2 * millimetresBetween(a.center, b.center) - b.diameter / NM_PER_MM
        : -2 * signedDepth(a.center, b);
    return twiceToLattice(apart / 2) - a.diameter;
  }
  return b.kind === "circle" ? twiceWeb(b, a) : pathWeb(a, b);
}

function pathWeb(a: Path, b: Path): number {
  const twice = twiceToLattice(nearestBetweenContours(a, b).distance);
  return isInside(a, b) || isInside(b, a) ? -twice + 0 : twice;
}

/**
 * Twice the clear material from a hole to the contour around it (edge web), in whole nanometres: negative where a round
 * hole reaches past the edge (true amount) or a path lies outside it (minus twice its distance).
 */
export function twiceEdgeWeb(hole: Contour, edge: Contour): number {
  if (hole.kind === "circle") return twiceDepthInside(hole.center, edge) - hole.diameter;
  const twice = twiceToLattice(nearestBetweenContours(hole, edge).distance);
  return isInside(hole, edge) ? twice : -twice + 0;
}

function isInside(inner: Path, outer: Contour): boolean {
  const start = inner.segments[0]?.from;
  return start !== undefined && containsPoint(outer, start);
}
