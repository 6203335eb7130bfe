/**
 * The vocabulary of plane geometry. Coordinates are millimetre doubles on the 1 nm lattice (multiples of 1e-6 mm),
 * snapped once, when a point is made. x runs right, y up; angles are radians counter-clockwise from +x unless a name
 * says degrees. Arcs and circles stay what they are: nothing here is a polygon in disguise.
 */
import type { Length } from "../units/length.js";

/** A position, in millimetres on the 1 nm lattice. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A displacement, in millimetres. */
export interface Vector {
  readonly dx: number;
  readonly dy: number;
}

/**
 * A straight line (`bulge` 0) or a circular arc from `from` to `to`. bulge = tan(sweep / 4), positive when the arc
 * runs counter-clockwise: the convention of a lightweight polyline (published DXF reference, group code 42).
 */
export interface Segment {
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
}

/** A full circle. The diameter is exact: half of 1/64 in would leave the lattice. */
export interface Circle {
  readonly kind: "circle";
  readonly center: Point;
  readonly diameter: Length;
}

/** A closed chain: each segment starts at the very point where the one before it ends; counter-clockwise. */
export interface Path {
  readonly kind: "path";
  readonly segments: readonly Segment[];
}

/** A closed line: a circle, or a path of segments. */
export type Contour = Circle | Path;

/** Material: inside `outer` and outside every one of `inner`. */
export interface Region {
  readonly outer: Contour;
  readonly inner: readonly Contour[];
}

/** Axis-parallel box in millimetres, arcs included. */
export interface Extent {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}
