/** Sections of a contour by axis-parallel lines, and with them what lies inside it. */
import { NM_PER_MM } from "../units/length.js";
import { segmentsOf } from "./contour.js";
import { millimetresBetween } from "./point.js";
import type { Arc } from "./segment.js";
import { arcOf, meetsAngle, onCircle } from "./segment.js";
import type { Contour, Point, Segment } from "./vocabulary.js";

/** A stretch of an axis-parallel line, `from` < `to`, in millimetres. */
export interface Interval {
  readonly from: number;
  readonly to: number;
}

/**
 * Where the line `axis` = `at` (millimetres) runs inside the contour: intervals of the other coordinate, ascending. The
 * plate's width where it passes the face of a form, for one.
 */
export function sectionAt(contour: Contour, axis: "x" | "y", at: number): readonly Interval[] {
  const crossings = axis === "y" ? crossingsOfRow(contour, at) : crossingsOfColumn(contour, at);
  const sorted = crossings.sort((a, b) => a - b);
  return sorted.flatMap((from, i) => {
    const to = sorted[i + 1];
    return i % 2 === 0 && to !== undefined && to > from ? [{ from, to }] : [];
  });
}

/** True inside a contour or on it (within half a nanometre). */
export function containsPoint(contour: Contour, at: Point): boolean {
  if (contour.kind === "circle") return 2 * millimetresBetween(contour.center, at) * NM_PER_MM <= contour.diameter + 1;
  const toTheLeft = crossingsOfRow(contour, at.y).filter((x) => x < at.x).length;
  return toTheLeft % 2 === 1 || touches(contour.segments, at);
}

const HALF_NANOMETRE = 0.5 / NM_PER_MM;

function touches(segments: readonly Segment[], at: Point): boolean {
  return segments.some((segment) => isNear(segment, at));
}

function isNear(segment: Segment, at: Point): boolean {
  const { from, to } = segment;
  if (millimetresBetween(from, at) <= HALF_NANOMETRE || millimetresBetween(to, at) <= HALF_NANOMETRE) return true;
  if (segment.bulge !== 0) {
    const arc = arcOf(segment);
    const off = Math.abs(millimetresBetween(arc.center, at) - arc.radius);
    return off <= HALF_NANOMETRE && meetsAngle(arc, Math.atan2(at.y - arc.center.y, at.x - arc.center.x));
  }
  const length = millimetresBetween(from, to);
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const along = (at.x - from.x) * ux + (at.y - from.y) * uy;
  const off = Math.abs((at.x - from.x) * uy - (at.y - from.y) * ux);
  return off <= HALF_NANOMETRE && along >= 0 && along <= length;
}

/** x of every crossing of the row y = `at`; a piece that only touches the row from one side counts twice or not at all. */
function crossingsOfRow(contour: Contour, at: number): number[] {
  return segmentsOf(contour).flatMap((segment) => segmentCrossings(segment, at));
}

function crossingsOfColumn(contour: Contour, at: number): number[] {
  return segmentsOf(contour)
    .map(transposed)
    .flatMap((segment) => segmentCrossings(segment, at));
}

function transposed({ from, to, bulge }: Segment): Segment {
  return { from: { x: from.y, y: from.x }, to: { x: to.y, y: to.x }, bulge: -bulge };
}

function segmentCrossings(segment: Segment, at: number): number[] {
  const { from, to } = segment;
  if (segment.bulge === 0) {
    if (from.y <= at === to.y <= at) return [];
    return [from.x + ((at - from.y) * (to.x - from.x)) / (to.y - from.y)];
  }
  return arcCrossings(segment, arcOf(segment), at);
}

/** An arc's pieces between its highest and lowest points cross the row once each, by the half-open rule of the lines. */
function arcCrossings({ from, to }: Segment, arc: Arc, at: number): number[] {
  const { center, radius } = arc;
  const turning = [Math.PI / 2, -Math.PI / 2]
    .map((angle) => ({ angle, along: travelled(arc, angle) }))
    .filter(({ along }) => along > 0 && along < Math.abs(arc.sweep))
    .sort((a, b) => a.along - b.along);
  const stations = [
    { at: from, along: 0 },
    ...turning.map(({ angle, along }) => ({ at: onCircle(center, radius, angle), along })),
    { at: to, along: Math.abs(arc.sweep) },
  ];
  const reach = Math.sqrt(Math.max(0, radius * radius - (at - center.y) * (at - center.y)));
  return stations.slice(1).flatMap((end, i) => {
    const start = stations[i] ?? end;
    if (start.at.y <= at === end.at.y <= at) return [];
    const middle = arc.start + (Math.sign(arc.sweep) * (start.along + end.along)) / 2;
    return [center.x + (Math.cos(middle) < 0 ? -reach : reach)];
  });
}

/** How far along the sweep (radians, in travel direction) the arc passes `angle`. */
function travelled({ start, sweep }: Arc, angle: number): number {
  const turn = sweep < 0 ? start - angle : angle - start;
  const full = 2 * Math.PI;
  return ((turn % full) + full) % full;
}
