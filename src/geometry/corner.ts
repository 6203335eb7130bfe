/** Corner treatments: what happens to one corner of a polygon. */
import type { Length } from "../units/length.js";
import { NM_PER_MM } from "../units/length.js";
import { cross, dot, magnitude, point, toLattice, vectorBetween } from "./point.js";
import { QUARTER_BULGE } from "./segment.js";
import type { Point, Vector } from "./vocabulary.js";

/**
 * `chamfer` and `notch`: `x` is the leg along that of the two edges which runs nearer to the x axis, `y` the other.
 * A notch cuts a rectangle (a parallelogram where the corner is not square) out of the corner.
 */
export type CornerTreatment =
  | { readonly kind: "square" }
  | { readonly kind: "chamfer"; readonly x: Length; readonly y: Length }
  | { readonly kind: "round"; readonly radius: Length }
  | { readonly kind: "notch"; readonly x: Length; readonly y: Length };

/** The points that replace a corner, and the bulge of each piece between them. */
export interface TreatedCorner {
  readonly points: readonly Point[];
  readonly bulge: number;
}

/** An edge that is shorter than what its two corners take from it. */
export interface CornerFault {
  readonly from: Point;
  readonly to: Point;
  readonly has: Length;
  readonly needs: Length;
}

interface Corner {
  readonly at: Point;
  /** Unit vectors from the corner along its edges. */
  readonly back: Vector;
  readonly ahead: Vector;
  /** Sign of the turn: positive at corners that stand out of a counter-clockwise polygon. */
  readonly turn: number;
}

/** Treats the corner `at` between `before` and `after` of a counter-clockwise polygon. */
export function treatCorner(at: Point, before: Point, after: Point, treatment: CornerTreatment): TreatedCorner {
  const corner = cornerBetween(at, before, after);
  const { back, ahead } = legs(corner, treatment);
  const untreated = { points: [at], bulge: 0 };
  if (back === 0 && ahead === 0) return untreated;
  const first = along(at, corner.back, back);
  const last = along(at, corner.ahead, ahead);
  switch (treatment.kind) {
    case "square":
      return untreated;
    case "chamfer":
      return { points: [first, last], bulge: 0 };
    case "round":
      return { points: [first, last], bulge: bulgeOf(corner) };
    case "notch":
      return { points: [first, along(first, corner.ahead, ahead), last], bulge: 0 };
  }
}

/** Edges of the polygon through `points` that have not room for their corners. */
export function cornerFaults(points: readonly Point[], treatment: CornerTreatment): readonly CornerFault[] {
  const around = (i: number) => points.at(i % points.length) ?? { x: 0, y: 0 };
  const legsAt = (i: number) => legs(cornerBetween(around(i), around(i - 1), around(i + 1)), treatment);
  return points.flatMap((from, i) => {
    const to = around(i + 1);
    const has = toLattice(magnitude(vectorBetween(from, to)));
    const needs = toLattice(legsAt(i).ahead + legsAt(i + 1).back);
    return needs > has ? [{ from, to, has, needs }] : [];
  });
}

function cornerBetween(at: Point, before: Point, after: Point): Corner {
  const back = unit(vectorBetween(at, before));
  const ahead = unit(vectorBetween(at, after));
  return { at, back, ahead, turn: Math.sign(cross(ahead, back)) };
}

function unit(vector: Vector): Vector {
  const length = magnitude(vector) || 1;
  return { dx: vector.dx / length, dy: vector.dy / length };
}

function along(at: Point, direction: Vector, distance: number): Point {
  return point(at.x + direction.dx * distance, at.y + direction.dy * distance);
}

/** What the treatment takes from the edge behind and the edge ahead, in millimetres. */
function legs(corner: Corner, treatment: CornerTreatment): { readonly back: number; readonly ahead: number } {
  const { back, ahead, turn } = corner;
  const none = { back: 0, ahead: 0 };
  if (turn === 0 || treatment.kind === "square") return none;
  if (treatment.kind === "round") {
    const tangent = (treatment.radius / NM_PER_MM) * tangentFactor(corner);
    return { back: tangent, ahead: tangent };
  }
  if (turn < 0) return none;
  const [x, y] = [treatment.x / NM_PER_MM, treatment.y / NM_PER_MM];
  return Math.abs(back.dx) >= Math.abs(ahead.dx) ? { back: x, ahead: y } : { back: y, ahead: x };
}

/** Tangent length of a fillet over its radius: 1 / tan(angle / 2), exactly 1 at a right angle. */
function tangentFactor({ back, ahead }: Corner): number {
  const across = Math.abs(cross(back, ahead));
  return dot(back, ahead) === 0 ? 1 : across / (1 - dot(back, ahead));
}

function bulgeOf({ back, ahead, turn }: Corner): number {
  if (dot(back, ahead) === 0) return turn * QUARTER_BULGE;
  const angle = Math.atan2(Math.abs(cross(back, ahead)), dot(back, ahead));
  return turn * Math.tan((Math.PI - angle) / 4);
}
