/** Lines of shells as a draughtsman draws them: edges always, and where a round surface turns away from who looks. */
import type { LiveShell } from "../../tasks/live/solid.js";

/** Ends of each line, and the corners beside it: its contour shows where both lie on one side of it as it is seen. */
export interface Lines {
  readonly from: Float32Array;
  readonly to: Float32Array;
  readonly left: Float32Array;
  readonly right: Float32Array;
  /** 1: only as a contour; 0: always. */
  readonly round: Float32Array;
}

/** Faces that meet at less than this are one round surface. */
const SHARP = Math.cos((30 * Math.PI) / 180);
/** Faces that are one flat surface, but for rounding. */
const FLAT = 1 - 1e-6;

interface Edge {
  readonly from: number;
  readonly to: number;
  readonly opposite: number;
  readonly normal: readonly [number, number, number];
}

/** A line that is always drawn. */
export type Stroke = readonly [from: readonly [number, number, number], to: readonly [number, number, number]];

/** Of all shells, and strokes beside them. */
export function linesOf(shells: readonly LiveShell[], strokes: readonly Stroke[]): Lines {
  const into: { from: number[]; to: number[]; left: number[]; right: number[]; round: number[] } = {
    from: [],
    to: [],
    left: [],
    right: [],
    round: [],
  };
  for (const { corners, triangles } of shells) {
    const at = (corner: number): Float32Array => corners.subarray(3 * corner, 3 * corner + 3);
    for (const [one, other] of pairsOf(corners, triangles)) {
      const cosine = one.normal.reduce((sum, each, i) => sum + each * (other.normal[i] ?? 0), 0);
      if (cosine > FLAT) continue;
      append(into.from, at(one.from));
      append(into.to, at(one.to));
      append(into.left, at(one.opposite));
      append(into.right, at(other.opposite));
      into.round.push(cosine > SHARP ? 1 : 0);
    }
  }
  for (const [from, to] of strokes) {
    for (const each of [into.from, into.left, into.right]) append(each, from);
    append(into.to, to);
    into.round.push(0);
  }
  return {
    from: Float32Array.from(into.from),
    to: Float32Array.from(into.to),
    left: Float32Array.from(into.left),
    right: Float32Array.from(into.right),
    round: Float32Array.from(into.round),
  };
}

function append(list: number[], values: Iterable<number>): void {
  for (const value of values) list.push(value);
}

/** The two sides of each edge: a shell is closed, so that each has two. */
function pairsOf(corners: Float32Array, triangles: Uint32Array): readonly (readonly [Edge, Edge])[] {
  const waiting = new Map<number, Edge>();
  const pairs: (readonly [Edge, Edge])[] = [];
  const count = corners.length / 3;
  for (let first = 0; first < triangles.length; first += 3) {
    const [a = 0, b = 0, c = 0] = triangles.subarray(first, first + 3);
    const normal = normalOf(corners, a, b, c);
    for (const [from, to, opposite] of [
      [a, b, c],
      [b, c, a],
      [c, a, b],
    ] as const) {
      const edge = { from, to, opposite, normal };
      const other = waiting.get(to * count + from);
      if (other === undefined) waiting.set(from * count + to, edge);
      else pairs.push([other, edge]);
    }
  }
  return pairs;
}

/** Of length 1, outward. */
export function normalOf(corners: Float32Array, a: number, b: number, c: number): readonly [number, number, number] {
  const part = (corner: number, axis: number): number => corners[3 * corner + axis] ?? 0;
  const [ux, uy, uz] = [part(b, 0) - part(a, 0), part(b, 1) - part(a, 1), part(b, 2) - part(a, 2)];
  const [vx, vy, vz] = [part(c, 0) - part(a, 0), part(c, 1) - part(a, 1), part(c, 2) - part(a, 2)];
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const length = Math.hypot(x, y, z) || 1;
  return [x / length, y / length, z / length];
}
