/** Symmetries of shapes: of an outline by its corners and arcs, of a pattern by its rods. */
import type { Path, Point, Segment } from "../geometry/index.js";
import { millimetresBetween } from "../geometry/index.js";
import { greatestOf } from "../units/extremes.js";

/** x' = R (x or -x, y) + shift: mirrored left to right first, then turned, then shifted; millimetres. */
export interface Isometry {
  readonly mirrored: boolean;
  readonly cos: number;
  readonly sin: number;
  readonly x: number;
  readonly y: number;
}

/** Points this near are one: roundings to the lattice, grown over the length of a plate, in millimetres. */
const SAME_MM = 1e-4;
const SAME_BULGE = 1e-6;

/** Every isometry that maps a path onto itself, the identity first. Each takes its longest segment to one as long. */
export function outlineSymmetries(path: Path): readonly Isometry[] {
  const segments = longestFirst(path.segments);
  return [false, true].flatMap((mirrored) =>
    segments.flatMap((_, start) => {
      const found = alignedTo(segments, start, mirrored);
      return found === null ? [] : [found];
    }),
  );
}

function longestFirst(segments: readonly Segment[]): readonly Segment[] {
  const lengths = segments.map(({ from, to }) => millimetresBetween(from, to));
  const start = lengths.indexOf(greatestOf(lengths));
  return [...segments.slice(start), ...segments.slice(0, start)];
}

/** Order of a path's symmetry group: 1 when no way of laying it down but the right one looks right. */
export function outlineSymmetryOrder(path: Path): number {
  return outlineSymmetries(path).length;
}

function alignedTo(segments: readonly Segment[], start: number, mirrored: boolean): Isometry | null {
  const first = segments[0];
  const target = segments[start];
  if (first === undefined || target === undefined) return null;
  const goal = mirrored ? { from: target.to, to: target.from } : target;
  const move = isometryBetween(first, goal, mirrored);
  if (move === null) return null;
  const count = segments.length;
  const fits = segments.every((segment, i) => {
    const other = segments[(((mirrored ? start - i : start + i) % count) + count) % count];
    return other !== undefined && lands(move, segment, other);
  });
  return fits ? move : null;
}

function lands(move: Isometry, segment: Segment, other: Segment): boolean {
  const [from, to] = move.mirrored ? [other.to, other.from] : [other.from, other.to];
  return (
    Math.abs(segment.bulge - other.bulge) < SAME_BULGE &&
    millimetresBetween(applyIsometry(move, segment.from), from) < SAME_MM &&
    millimetresBetween(applyIsometry(move, segment.to), to) < SAME_MM
  );
}

interface Directed {
  readonly from: Point;
  readonly to: Point;
}

function isometryBetween(a: Directed, b: Directed, mirrored: boolean): Isometry | null {
  const [ax, ay] = [(a.to.x - a.from.x) * (mirrored ? -1 : 1), a.to.y - a.from.y];
  const [bx, by] = [b.to.x - b.from.x, b.to.y - b.from.y];
  const square = ax * ax + ay * ay;
  if (Math.abs(Math.sqrt(square) - Math.hypot(bx, by)) > SAME_MM) return null;
  const raw = { cos: (ax * bx + ay * by) / square, sin: (ax * by - ay * bx) / square };
  const size = Math.hypot(raw.cos, raw.sin);
  const turn = { mirrored, cos: raw.cos / size, sin: raw.sin / size };
  const at = applyIsometry({ ...turn, x: 0, y: 0 }, a.from);
  return { ...turn, x: b.from.x - at.x, y: b.from.y - at.y };
}

/** The image of a point, not snapped. */
export function applyIsometry({ mirrored, cos, sin, x, y }: Isometry, at: Point): Point {
  const ax = mirrored ? -at.x : at.x;
  return { x: cos * ax - sin * at.y + x, y: sin * ax + cos * at.y + y };
}
