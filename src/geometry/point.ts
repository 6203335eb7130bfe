/** Points on the 1 nm lattice, displacements between them, and turns that are exact where the true value is. */
import type { Length } from "../units/length.js";
import { NM_PER_MM, nanometres } from "../units/length.js";
import type { Point, Vector } from "./vocabulary.js";

/** Noise of double arithmetic, far below this fraction of a nanometre, is removed before a half is rounded. */
const NOISE = 1024;

/** Removes the noise of double arithmetic from a figure in nanometres: to 1/1024 nm. */
export function withoutNoise(nm: number): number {
  return Math.round(nm * NOISE) / NOISE + 0;
}

/** Millimetres to whole nanometres, half away from zero; mirrored figures stay mirrored. */
export function toLattice(mm: number): Length {
  return nanometres(withoutNoise(mm * NM_PER_MM));
}

/** Twice a distance in millimetres as a whole number of nanometres: rules compare doubled lengths. */
export function twiceToLattice(mm: number): number {
  return nanometres(withoutNoise(2 * mm * NM_PER_MM));
}

/** Millimetres to the nearest lattice position, in millimetres. */
export function snap(mm: number): number {
  return toLattice(mm) / NM_PER_MM;
}

/** The point at x, y in millimetres, snapped to the lattice. */
export function point(x: number, y: number): Point {
  return { x: snap(x), y: snap(y) };
}

/** The point at exact lengths x, y. */
export function pointAt(x: Length, y: Length): Point {
  return { x: x / NM_PER_MM, y: y / NM_PER_MM };
}

/** The point at x, y in nanometres, which may be fractions: snapped, half away from zero. */
export function pointInNanometres(x: number, y: number): Point {
  return pointAt(nanometres(withoutNoise(x)), nanometres(withoutNoise(y)));
}

/** The displacement from one point to another. */
export function vectorBetween(from: Point, to: Point): Vector {
  return { dx: to.x - from.x, dy: to.y - from.y };
}

/** Length of a displacement, in millimetres. */
export function magnitude(vector: Vector): number {
  return Math.sqrt(vector.dx * vector.dx + vector.dy * vector.dy);
}

/** Dot product. */
export function dot(a: Vector, b: Vector): number {
  return a.dx * b.dx + a.dy * b.dy;
}

/** Cross product: positive where b turns counter-clockwise from a. */
export function cross(a: Vector, b: Vector): number {
  return a.dx * b.dy - a.dy * b.dx;
}

/** Distance between two points in millimetres. */
export function millimetresBetween(a: Point, b: Point): number {
  return Math.sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));
}

/** Distance between two points, rounded to 1 nm half away from zero. */
export function distanceBetweenPoints(a: Point, b: Point): Length {
  return toLattice(millimetresBetween(a, b));
}

/** Twice the distance between two points in whole nanometres. */
export function twiceDistanceBetweenPoints(a: Point, b: Point): number {
  return twiceToLattice(millimetresBetween(a, b));
}

/** True where both are the same lattice point. */
export function samePoint(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}
