/** Contours: circles, rectangles and polygons with treated corners. Paths come out counter-clockwise and closed exactly. */
import type { Length } from "../units/length.js";
import { NM_PER_MM, roundSymmetric } from "../units/length.js";
import type { CornerTreatment } from "./corner.js";
import { treatCorner } from "./corner.js";
import { pointInNanometres, samePoint } from "./point.js";
import { line } from "./segment.js";
import type { Circle, Contour, Path, Point, Region, Segment } from "./vocabulary.js";

/** A full circle. */
export function circle(center: Point, diameter: Length): Circle {
  return { kind: "circle", center, diameter };
}

/**
 * A rectangle about `center`, x along, y up. Where a side is an odd number of nanometres its half is rounded away from
 * zero, so that the rectangle stays symmetric about its center.
 */
export function rectangle(center: Point, x: Length, y: Length, corner: CornerTreatment = { kind: "square" }): Path {
  return polygon(rectanglePoints(center, x, y), corner);
}

/** The four corners of a rectangle, counter-clockwise from the lower left. */
export function rectanglePoints(center: Point, x: Length, y: Length): readonly Point[] {
  const [hx, hy] = [roundSymmetric(x / 2), roundSymmetric(y / 2)];
  const [cx, cy] = [center.x * NM_PER_MM, center.y * NM_PER_MM];
  return [
    pointInNanometres(cx - hx, cy - hy),
    pointInNanometres(cx + hx, cy - hy),
    pointInNanometres(cx + hx, cy + hy),
    pointInNanometres(cx - hx, cy + hy),
  ];
}

/** A rectangular opening with rounded corners; radius 0 leaves them square. */
export function roundedRectangle(center: Point, x: Length, y: Length, radius: Length): Path {
  return rectangle(center, x, y, radius === 0 ? { kind: "square" } : { kind: "round", radius });
}

/**
 * A polygon through `points`, given either way round. Rounding treats every corner; a chamfer or notch only the corners
 * that stand out. Whether the corners have room is `cornerFaults`' business, whether the path crosses itself `pathFaults`'.
 */
export function polygon(points: readonly Point[], corner: CornerTreatment = { kind: "square" }): Path {
  return polygonOf(points.map((at) => ({ at, corner })));
}

/** A corner of a polygon with a treatment of its own. */
export interface Vertex {
  readonly at: Point;
  readonly corner: CornerTreatment;
}

/** As `polygon`, each corner treated in its own way. */
export function polygonOf(vertices: readonly Vertex[]): Path {
  const around = signedPolygonArea(vertices.map(({ at }) => at)) < 0 ? [...vertices].reverse() : vertices;
  const pieces = around.map(({ at, corner }, i) =>
    treatCorner(at, around.at(i - 1)?.at ?? at, around[(i + 1) % around.length]?.at ?? at, corner),
  );
  return { kind: "path", segments: chain(pieces) };
}

function chain(pieces: readonly { readonly points: readonly Point[]; readonly bulge: number }[]): Segment[] {
  const vertices = pieces.flatMap(({ points, bulge }) =>
    points.map((at, i) => ({ at, bulge: i < points.length - 1 ? bulge : 0 })),
  );
  return vertices.flatMap(({ at, bulge }, i) => {
    const to = vertices[(i + 1) % vertices.length]?.at ?? at;
    return samePoint(at, to) ? [] : [{ from: at, to, bulge }];
  });
}

/** Shoelace area of the polygon through points: positive counter-clockwise, mm2. */
export function signedPolygonArea(points: readonly Point[]): number {
  const origin = points[0];
  if (origin === undefined) return 0;
  let twice = 0;
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length] ?? a;
    twice += (a.x - origin.x) * (b.y - origin.y) - (b.x - origin.x) * (a.y - origin.y);
  });
  return twice / 2;
}

/** A path through segments that already join; nothing is reordered or checked. */
export function path(segments: readonly Segment[]): Path {
  return { kind: "path", segments };
}

/** Material inside `outer` and outside every one of `inner`. */
export function region(outer: Contour, inner: readonly Contour[] = []): Region {
  return { outer, inner };
}

/** A contour as segments: a circle as its two halves, from +x. Their ends may lie half a nanometre off the lattice. */
export function segmentsOf(contour: Contour): readonly Segment[] {
  if (contour.kind === "path") return contour.segments;
  const radius = contour.diameter / 2 / NM_PER_MM;
  const { x, y } = contour.center;
  const [right, left] = [
    { x: x + radius, y },
    { x: x - radius, y },
  ];
  return [
    { from: right, to: left, bulge: 1 },
    { from: left, to: right, bulge: 1 },
  ];
}

/** Straight strokes through points, in order. */
export function polyline(points: readonly Point[]): readonly Segment[] {
  return points.slice(1).map((to, i) => line(points[i] ?? to, to));
}
