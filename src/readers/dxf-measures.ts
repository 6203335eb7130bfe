/** Length, area and extents of what a cut file draws, from its own ends and bulges. Any one unit, y up. */
import type { DxfEntity, DxfVertex } from "./dxf-model.js";

/** A point in the file's unit, y up. */
export interface CutPoint {
  readonly x: number;
  readonly y: number;
}

/** A line (`bulge` 0) or an arc; bulge = tan(sweep / 4), counter-clockwise positive. */
export interface CutSegment {
  readonly from: CutPoint;
  readonly to: CutPoint;
  readonly bulge: number;
}

/** Axis-parallel box; empty while `x0` is greater than `x1`. */
export interface CutBox {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** The box around nothing: covering it with another box gives that box. */
export const EMPTY_BOX: CutBox = {
  x0: Number.POSITIVE_INFINITY,
  y0: Number.POSITIVE_INFINITY,
  x1: Number.NEGATIVE_INFINITY,
  y1: Number.NEGATIVE_INFINITY,
};

/** The box around both boxes. */
export function coverBoxes(a: CutBox, b: CutBox): CutBox {
  return {
    x0: Math.min(a.x0, b.x0),
    y0: Math.min(a.y0, b.y0),
    x1: Math.max(a.x1, b.x1),
    y1: Math.max(a.y1, b.y1),
  };
}

/** True where `inner` lies in `outer`, touching allowed. */
export function isBoxInside(inner: CutBox, outer: CutBox, tolerance: number): boolean {
  return (
    inner.x0 >= outer.x0 - tolerance &&
    inner.y0 >= outer.y0 - tolerance &&
    inner.x1 <= outer.x1 + tolerance &&
    inner.y1 <= outer.y1 + tolerance
  );
}

/** Straight distance in the points' unit. */
export function distance(a: CutPoint, b: CutPoint): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

/** The point half way along the segment: the sagitta, chord / 2 x bulge, lies to the right of a counter-clockwise arc's chord. */
export function middleOf({ from, to, bulge }: CutSegment): CutPoint {
  return {
    x: (from.x + to.x) / 2 + ((to.y - from.y) * bulge) / 2,
    y: (from.y + to.y) / 2 - ((to.x - from.x) * bulge) / 2,
  };
}

/** Centre and radius of an arc: the centre lies radius - sagitta from the chord, on the arc's other side. */
export function roundOf(segment: CutSegment): { readonly center: CutPoint; readonly radius: number } {
  const { from, to, bulge } = segment;
  const half = distance(from, to) / 2;
  const radius = (half * (bulge + 1 / bulge)) / 2;
  const apex = middleOf(segment);
  const inward = radius / half;
  return {
    center: { x: apex.x - (to.y - from.y) * (inward / 2), y: apex.y + (to.x - from.x) * (inward / 2) },
    radius: Math.abs(radius),
  };
}

/** Length along the segment: the chord of a line, the arc of a bulge; never negative. */
export function segmentLength(segment: CutSegment): number {
  const chord = distance(segment.from, segment.to);
  const quarter = Math.abs(Math.atan(segment.bulge));
  return quarter === 0 || chord === 0 ? chord : (chord / Math.sin(2 * quarter)) * 2 * quarter;
}

/** Area between the segment and the x axis through `base`, counter-clockwise positive; sums to the area of a closed path. */
function sweptArea({ from, to, bulge }: CutSegment, base: CutPoint): number {
  const triangle = ((from.x - base.x) * (to.y - base.y) - (to.x - base.x) * (from.y - base.y)) / 2;
  if (bulge === 0) return triangle;
  const chord = distance(from, to);
  const sweep = 4 * Math.atan(bulge);
  const radius = chord / (2 * Math.sin(sweep / 2));
  return triangle + (radius * radius * (sweep - Math.sin(sweep))) / 2;
}

/** Area inside a closed path, counter-clockwise positive. */
export function pathArea(segments: readonly CutSegment[]): number {
  const base = segments[0]?.from ?? { x: 0, y: 0 };
  return segments.reduce((sum, segment) => sum + sweptArea(segment, base), 0);
}

/** True extents: an arc reaches beyond its ends where it crosses the direction of an axis from its centre. */
export function segmentBox(segment: CutSegment): CutBox {
  const { from, to, bulge } = segment;
  let [x0, y0] = [Math.min(from.x, to.x), Math.min(from.y, to.y)];
  let [x1, y1] = [Math.max(from.x, to.x), Math.max(from.y, to.y)];
  if (bulge === 0) return { x0, y0, x1, y1 };
  const { center, radius } = roundOf(segment);
  const onArc = (x: number, y: number) =>
    isBeyondChord(segment, { x: center.x + x * radius, y: center.y + y * radius });
  if (onArc(-1, 0)) x0 = Math.min(x0, center.x - radius);
  if (onArc(1, 0)) x1 = Math.max(x1, center.x + radius);
  if (onArc(0, -1)) y0 = Math.min(y0, center.y - radius);
  if (onArc(0, 1)) y1 = Math.max(y1, center.y + radius);
  return { x0, y0, x1, y1 };
}

/** A point of the full circle is on the arc when it lies on the arc's side of the chord. */
function isBeyondChord({ from, to, bulge }: CutSegment, point: CutPoint): boolean {
  const side = (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x);
  return bulge > 0 ? side < 0 : side > 0;
}

/** The box around the circle. */
export function circleBox(x: number, y: number, radius: number): CutBox {
  return { x0: x - radius, y0: y - radius, x1: x + radius, y1: y + radius };
}

/** An ARC entity as a segment, counter-clockwise; null where it runs full circle. */
export function arcSegment({ x, y, radius, start, end }: Extract<DxfEntity, { kind: "arc" }>): CutSegment | null {
  const sweep = (((end - start) % 360) + 360) % 360;
  if (sweep === 0) return null;
  const at = (degrees: number) => {
    const angle = (degrees * Math.PI) / 180;
    return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
  };
  return { from: at(start), to: at(end), bulge: Math.tan((sweep * Math.PI) / 720) };
}

/** The segments of a polyline; a closed one ends with the way back to its first vertex. */
export function polylineSegments(vertices: readonly DxfVertex[], closed: boolean): readonly CutSegment[] {
  const segments: CutSegment[] = [];
  for (let index = 0; index < vertices.length; index++) {
    const from = vertices[index];
    const to = vertices[index + 1] ?? (closed ? vertices[0] : undefined);
    if (from !== undefined && to !== undefined) segments.push({ from, to, bulge: from.bulge });
  }
  return segments;
}

/** True extents of entities, arcs included. */
export function coverEntities(entities: readonly DxfEntity[]): CutBox {
  const around = { ...EMPTY_BOX };
  for (const entity of entities) coverEntity(entity, around);
  return around;
}

/** A box that grows: a file has thousands of segments, and a box each would cost more than to measure them. */
type GrowingBox = { -readonly [Side in keyof CutBox]: CutBox[Side] };

function coverEntity(entity: DxfEntity, into: GrowingBox): void {
  switch (entity.kind) {
    case "circle":
      coverBox(circleBox(entity.x, entity.y, entity.radius), into);
      break;
    case "line":
      coverPoint(entity.from, into);
      coverPoint(entity.to, into);
      break;
    case "arc": {
      const segment = arcSegment(entity);
      coverBox(segment === null ? circleBox(entity.x, entity.y, entity.radius) : segmentBox(segment), into);
      break;
    }
    case "polyline":
      coverPolyline(entity.vertices, entity.closed, into);
      break;
  }
}

/** Vertices tell all but what arcs reach beyond them; a single one that is not closed draws nothing. */
function coverPolyline(vertices: readonly DxfVertex[], closed: boolean, into: GrowingBox): void {
  for (let index = 0; index < vertices.length; index++) {
    const from = vertices[index];
    const to = vertices[index + 1] ?? (closed ? vertices[0] : undefined);
    if (from === undefined || to === undefined) continue;
    coverPoint(from, into);
    coverPoint(to, into);
    if (from.bulge !== 0) coverBox(segmentBox({ from, to, bulge: from.bulge }), into);
  }
}

function coverPoint({ x, y }: CutPoint, into: GrowingBox): void {
  into.x0 = Math.min(into.x0, x);
  into.y0 = Math.min(into.y0, y);
  into.x1 = Math.max(into.x1, x);
  into.y1 = Math.max(into.y1, y);
}

function coverBox(box: CutBox, into: GrowingBox): void {
  coverPoint({ x: box.x0, y: box.y0 }, into);
  coverPoint({ x: box.x1, y: box.y1 }, into);
}
