/** Lines and arcs cut off at the sides of a rectangle: what lies outside is not drawn, rather than hidden. */
import { arcOf, positionAlong, segmentExtent } from "../../geometry/index.js";
import type { Point, Segment } from "../../geometry/vocabulary.js";
import type { Area } from "../paper.js";

/** What of the segments lies in the area or on its edge, in order. */
export function clipSegments(segments: readonly Segment[], area: Area): readonly Segment[] {
  return segments.flatMap((segment) => clipSegment(segment, area));
}

function clipSegment(segment: Segment, area: Area): readonly Segment[] {
  const { x0, y0, x1, y1 } = segmentExtent(segment);
  if (x0 >= area.x0 && y0 >= area.y0 && x1 <= area.x1 && y1 <= area.y1) return [segment];
  if (x1 < area.x0 || y1 < area.y0 || x0 > area.x1 || y0 > area.y1) return [];
  const stops = [0, ...crossings(segment, area).toSorted((a, b) => a - b), 1];
  return stops.flatMap((to, i): readonly Segment[] => {
    const from = stops[i - 1];
    if (from === undefined || to - from < LEAST) return [];
    return isIn(area, positionAlong(segment, (from + to) / 2)) ? [partOf(segment, from, to)] : [];
  });
}

/** Shares of a segment that are the noise of doubles. */
const LEAST = 1e-12;

function isIn({ x0, y0, x1, y1 }: Area, { x, y }: Point): boolean {
  return x >= x0 && x <= x1 && y >= y0 && y <= y1;
}

/** Where along the segment, from 0 to 1, it passes the lines of the four sides. */
function crossings(segment: Segment, { x0, y0, x1, y1 }: Area): readonly number[] {
  const { from, to, bulge } = segment;
  const passes = [
    ...[x0, x1].map((at) => ({ at, axis: "x" as const })),
    ...[y0, y1].map((at) => ({ at, axis: "y" as const })),
  ];
  if (bulge === 0)
    return passes
      .filter(({ axis }) => to[axis] !== from[axis])
      .map(({ at, axis }) => (at - from[axis]) / (to[axis] - from[axis]))
      .filter(isWithin);
  const { center, radius, start, sweep } = arcOf(segment);
  return passes.flatMap(({ at, axis }) => {
    const share = (at - center[axis]) / radius;
    if (Math.abs(share) >= 1) return [];
    const angles =
      axis === "x" ? [Math.acos(share), -Math.acos(share)] : [Math.asin(share), Math.PI - Math.asin(share)];
    return angles.map((angle) => turned(sweep < 0 ? start - angle : angle - start) / Math.abs(sweep)).filter(isWithin);
  });
}

const isWithin = (share: number): boolean => share > 0 && share < 1;

function turned(angle: number): number {
  const full = 2 * Math.PI;
  return ((angle % full) + full) % full;
}

function partOf(segment: Segment, from: number, to: number): Segment {
  const { bulge } = segment;
  return {
    from: positionAlong(segment, from),
    to: positionAlong(segment, to),
    bulge: bulge === 0 ? 0 : Math.tan(Math.atan(bulge) * (to - from)),
  };
}
