/** Cuts that could be a key, smallest first. Nothing here knows of holes: whether a cut has room is decided elsewhere. */
import type { Circle, CornerTreatment, Path, Point, Segment, Vertex } from "../../geometry/index.js";
import {
  extentOfPoints,
  line,
  millimetresBetween,
  onCircle,
  point,
  polygonOf,
  toLattice,
  treatCorner,
} from "../../geometry/index.js";
import { LEAST_SEEN } from "../../orientation/index.js";
import { greatestOf } from "../../units/extremes.js";
import type { Length, Unit } from "../../units/length.js";
import { inches, millimetres, NM_PER_MM } from "../../units/length.js";
import type { Keyed } from "../model.js";

/** A cut with the outline that it leaves. */
export interface KeyCut extends Omit<Keyed, "bare"> {
  readonly contour: Path;
}

/** Legs start here, at what is big enough to be seen or the next whole 5 mm (common practice), and grow in these steps. */
const LEAST: Readonly<Record<Unit, Length>> = { in: LEAST_SEEN, mm: millimetres(15) };
const STEP: Readonly<Record<Unit, Length>> = { in: inches(0.25), mm: millimetres(5) };
/** Legs tried for each edge of a corner; depths tried for a notch. */
const LEGS = 10;
const DEPTHS = 4;
/** A notch is this many times as wide as deep; its inside corner is at least this round. */
const WIDTH = 2;
const INSIDE_RADIUS = millimetres(3);
const SQUARE: CornerTreatment = { kind: "square" };

/** The corner that stands out farthest to +x +y, cut with unequal legs; a notched corner gets a larger, unequal notch. */
export function* cornerCuts(vertices: readonly Vertex[], unit: Unit, inside: Length): Generator<KeyCut> {
  const index = keyCorner(vertices);
  const vertex = vertices[index];
  if (vertex === undefined) return;
  const taken = legsTaken(vertices, index);
  const notched = vertex.corner.kind === "notch";
  for (const { x, y } of unequalLegs(taken, unit)) {
    const cut = notched
      ? notchedCorner(vertices, index, x, y, inside)
      : [{ at: vertex.at, corner: { kind: "chamfer", x, y } as const }];
    const contour = polygonOf(vertices.flatMap((each, i) => (i === index ? cut : [each])));
    yield { kind: notched ? "corner notch" : "corner cut", at: vertex.at, x, y, contour };
  }
}

/** Of the corners that stand out, the one farthest along the diagonal of the box around all. */
function keyCorner(vertices: readonly Vertex[]): number {
  const { x0, y0, x1, y1 } = extentOfPoints(vertices.map(({ at }) => at));
  const along = vertices.map(({ at }, i) =>
    standsOut(vertices, i) ? (at.x - x0) / (x1 - x0) + (at.y - y0) / (y1 - y0) : Number.NEGATIVE_INFINITY,
  );
  return along.indexOf(greatestOf(along));
}

function standsOut(vertices: readonly Vertex[], i: number): boolean {
  const { before, at, after } = neighbours(vertices, i);
  return (at.x - before.x) * (after.y - at.y) - (at.y - before.y) * (after.x - at.x) > 0;
}

function neighbours(vertices: readonly Vertex[], i: number) {
  const at = (vertices[i] as Vertex).at;
  const before = vertices.at(i - 1)?.at ?? at;
  const after = vertices[(i + 1) % vertices.length]?.at ?? at;
  return { before, at, after };
}

interface Legs {
  readonly x: Length;
  readonly y: Length;
}

/** What the corner's own treatment takes: x along the edge that runs nearer to the x axis. */
function legsTaken(vertices: readonly Vertex[], i: number): Legs {
  const { before, at, after } = neighbours(vertices, i);
  const { points } = treatCorner(at, before, after, (vertices[i] as Vertex).corner);
  const back = toLattice(millimetresBetween(at, points[0] ?? at));
  const ahead = toLattice(millimetresBetween(at, points.at(-1) ?? at));
  return isBackAlongX(vertices, i) ? { x: back, y: ahead } : { x: ahead, y: back };
}

function isBackAlongX(vertices: readonly Vertex[], i: number): boolean {
  const { before, at, after } = neighbours(vertices, i);
  const flat = (to: Point) => Math.abs(to.x - at.x) / millimetresBetween(at, to);
  return flat(before) >= flat(after);
}

/** Pairs of unequal legs that take at least what is taken already, by the area they cut off. */
function unequalLegs(taken: Legs, unit: Unit): readonly Legs[] {
  const lengths = (from: Length) => {
    const start = Math.max(LEAST[unit], Math.ceil(from / STEP[unit]) * STEP[unit]);
    return Array.from({ length: LEGS }, (_, k) => (start + k * STEP[unit]) as Length);
  };
  const pairs = lengths(taken.x).flatMap((x) => lengths(taken.y).map((y) => ({ x, y })));
  return pairs.filter(({ x, y }) => x !== y).sort((a, b) => a.x * a.y - b.x * b.y || b.x - a.x);
}

/** A rectangle out of the corner, its inside corner rounded. */
function notchedCorner(
  vertices: readonly Vertex[],
  i: number,
  x: Length,
  y: Length,
  inside: Length,
): readonly Vertex[] {
  const { before, at, after } = neighbours(vertices, i);
  const [back, ahead] = isBackAlongX(vertices, i) ? [x, y] : [y, x];
  const first = towards(at, before, back / NM_PER_MM);
  const last = towards(at, after, ahead / NM_PER_MM);
  const inner = point(first.x + last.x - at.x, first.y + last.y - at.y);
  return [square(first), { at: inner, corner: rounded(inside) }, square(last)];
}

function square(at: Point): Vertex {
  return { at, corner: SQUARE };
}

function rounded(inside: Length): CornerTreatment {
  return { kind: "round", radius: Math.max(inside, INSIDE_RADIUS) as Length };
}

function towards(from: Point, to: Point, distance: number): Point {
  const share = distance / millimetresBetween(from, to);
  return point(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share);
}

/** A notch with one upright and one slanting flank in either edge of the key corner, the nearer to the corner the sooner. */
export function* edgeCuts(vertices: readonly Vertex[], unit: Unit, inside: Length): Generator<KeyCut> {
  const index = keyCorner(vertices);
  if (index < 0) return;
  for (const depth of depths(unit)) {
    const width = (WIDTH * depth) as Length;
    const steps = Math.floor(longestEdge(vertices, index) / (STEP[unit] / NM_PER_MM));
    for (let step = 1; step < steps; step++) {
      for (const side of ["ahead", "back"] as const) {
        const cut = notchedEdge(vertices, index, side, (step * STEP[unit]) / NM_PER_MM, depth, width, inside);
        if (cut !== null) yield cut;
      }
    }
  }
}

function depths(unit: Unit): readonly Length[] {
  return Array.from({ length: DEPTHS }, (_, k) => (LEAST[unit] + k * STEP[unit]) as Length);
}

function longestEdge(vertices: readonly Vertex[], i: number): number {
  const { before, at, after } = neighbours(vertices, i);
  return Math.max(millimetresBetween(at, before), millimetresBetween(at, after));
}

/** The upright flank stands `from` the key corner, the slanting one runs out away from it; null where the edge is too short. */
function notchedEdge(
  vertices: readonly Vertex[],
  i: number,
  side: "ahead" | "back",
  from: number,
  depth: Length,
  width: Length,
  inside: Length,
): KeyCut | null {
  const { before, at, after } = neighbours(vertices, i);
  const end = side === "ahead" ? after : before;
  if (from + width / NM_PER_MM > millimetresBetween(at, end)) return null;
  const upright = towards(at, end, from);
  const out = towards(at, end, from + width / NM_PER_MM);
  const [ux, uy] = [(end.x - at.x) / millimetresBetween(at, end), (end.y - at.y) / millimetresBetween(at, end)];
  const turned = side === "ahead" ? 1 : -1;
  const deep = depth / NM_PER_MM;
  const apex = point(upright.x - turned * uy * deep, upright.y + turned * ux * deep);
  const notch = [square(upright), { at: apex, corner: rounded(inside) }, square(out)];
  const contour = polygonOf(
    vertices.flatMap((each, k) => {
      if (k !== i) return [each];
      return side === "ahead" ? [each, ...notch] : [...notch.reverse(), each];
    }),
  );
  return { kind: "edge notch", at: upright, x: width, y: depth, contour };
}

/** Degrees from +x at which a rim is notched: the +x +y direction, then ever further to both sides. */
const AROUND: readonly number[] = Array.from(
  { length: 37 },
  (_, k) => 45 + (k % 2 === 0 ? 1 : -1) * Math.ceil(k / 2) * 5,
);

/** A notch in a round outline: its upright flank points to the centre, so that it looks different turned over. */
export function* rimCuts(rim: Circle, unit: Unit, inside: Length): Generator<KeyCut> {
  for (const depth of depths(unit)) {
    for (const degrees of AROUND) {
      const width = (WIDTH * depth) as Length;
      if (2 * (width + depth) < rim.diameter) yield notchedRim(rim, degrees, depth, width, inside);
    }
  }
}

/**
 * Joints on the rim are laid 2 nm outside it before they are snapped, so that no arc between them runs inside the true circle:
 * an edge distance that meets its limit exactly still does.
 */
const OUTSIDE = 2 / NM_PER_MM;

function notchedRim(rim: Circle, degrees: number, depth: Length, width: Length, inside: Length): KeyCut {
  const radius = rim.diameter / 2 / NM_PER_MM;
  const start = (degrees * Math.PI) / 180;
  const end = start + 2 * Math.asin(width / rim.diameter);
  const on = (angle: number, r = radius + OUTSIDE): Point => {
    const { x, y } = onCircle(rim.center, r, angle);
    return point(x, y);
  };
  const [upright, apex, out] = [on(start), on(start, radius - depth / NM_PER_MM), on(end)];
  const fillet = treatCorner(apex, upright, out, rounded(inside));
  const [first = apex, last = apex] = fillet.points;
  const notch: Segment[] = [line(upright, first), { from: first, to: last, bulge: fillet.bulge }, line(last, out)];
  const third = (start + 2 * Math.PI - end) / 3;
  const joints = [out, on(end + third), on(end + 2 * third), upright];
  const contour: Path = { kind: "path", segments: [...notch, ...arcsThrough(joints, rim.center)] };
  return { kind: "edge notch", at: upright, x: width, y: depth, contour };
}

/** Counter-clockwise arcs about a center through joints in order, each less than half a circle. */
function arcsThrough(joints: readonly Point[], center: Point): readonly Segment[] {
  const angleOf = ({ x, y }: Point) => Math.atan2(y - center.y, x - center.x);
  return joints.slice(1).map((to, i) => {
    const from = joints[i] as Point;
    const sweep = (angleOf(to) - angleOf(from) + 2 * Math.PI) % (2 * Math.PI);
    return { from, to, bulge: Math.tan(sweep / 4) };
  });
}
