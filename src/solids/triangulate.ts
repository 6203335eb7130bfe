/** What lies between rings, in triangles: constrained Delaunay by exact predicates. */
import Constrainautor from "@kninnug/constrainautor";
import Delaunator from "delaunator";
import type { Ring, Triangle } from "./model.js";

/**
 * Counter-clockwise triangles between rings, which have what they bound at their left; corners are numbered through all rings
 * in order. Every corner and no other is used, so that none lies on an edge of a triangle. Taken at single precision, as it
 * is written, so that no triangle turns over by rounding. null where rings meet, or lie where they bound nothing.
 */
export function triangulate(rings: readonly Ring[]): readonly Triangle[] | null {
  const points = rings.flat();
  const coordinates = Float64Array.from(points.flatMap(({ x, y }) => [Math.fround(x), Math.fround(y)]));
  if (hasTwins(coordinates)) return null;
  const next = nextCorners(rings);
  const whole = constrained(coordinates, next);
  if (whole === null) return null;
  const triangles = insideOf(whole, next);
  const count = points.length + 2 * (rings.length - 1) - 2;
  return triangles.length === count ? triangles : null;
}

function hasTwins(coordinates: Float64Array): boolean {
  const seen = new Map<number, Set<number>>();
  for (let i = 0; i < coordinates.length; i += 2) {
    const [x = 0, y = 0] = [coordinates[i], coordinates[i + 1]];
    const column = seen.get(x) ?? new Set();
    if (column.has(y)) return true;
    seen.set(x, column.add(y));
  }
  return false;
}

/** Of each corner the one that follows it on its ring. */
export function nextCorners(rings: readonly Ring[]): readonly number[] {
  const next: number[] = [];
  for (const { length } of rings) {
    const first = next.length;
    for (let i = 1; i < length; i += 1) next.push(first + i);
    if (length > 0) next.push(first);
  }
  return next;
}

/** Half-edges of triangles, three each: where each starts, and its other half, -1 at the edge of all. */
interface Mesh {
  readonly triangles: Uint32Array;
  readonly halfedges: Int32Array;
}

/** null where edges cross, or pass through a corner: the library says so by an exception. */
function constrained(coordinates: Float64Array, next: readonly number[]): Mesh | null {
  const mesh = new Delaunator(coordinates);
  try {
    new Constrainautor(mesh).constrainAll(next.map((to, from) => [from, to]));
  } catch {
    return null;
  }
  return mesh;
}

/** Delaunator's triangles run clockwise where y is up: those with an edge of a ring backwards lie at its left, and so on inward. */
function insideOf({ triangles, halfedges }: Mesh, next: readonly number[]): readonly Triangle[] {
  const startOf = (edge: number) => triangles[edge] ?? 0;
  const endOf = (edge: number) => startOf(edge % 3 === 2 ? edge - 2 : edge + 1);
  const isInside = new Uint8Array(triangles.length / 3);
  const open: number[] = [];
  const enter = (triangle: number) => {
    if (isInside[triangle] === 1) return;
    isInside[triangle] = 1;
    open.push(triangle);
  };
  for (let edge = 0; edge < triangles.length; edge += 1)
    if (next[endOf(edge)] === startOf(edge)) enter(Math.floor(edge / 3));
  for (let triangle = open.pop(); triangle !== undefined; triangle = open.pop())
    for (let edge = 3 * triangle; edge < 3 * triangle + 3; edge += 1) {
      const other = halfedges[edge] ?? -1;
      const isRing = next[endOf(edge)] === startOf(edge) || next[startOf(edge)] === endOf(edge);
      if (other >= 0 && !isRing) enter(Math.floor(other / 3));
    }
  const inside: Triangle[] = [];
  for (let edge = 0; edge < triangles.length; edge += 3)
    if (isInside[edge / 3] === 1) inside.push([startOf(edge + 2), startOf(edge + 1), startOf(edge)]);
  return inside;
}
