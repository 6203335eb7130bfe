/** The numbers of one fit, in arrays that are used again: both patterns about their means, since survey coordinates are large. */
import type { FitHole, FitRod } from "./model.js";

/** No hole. */
export const NONE = -1;

/** The arrays of one fit, `n` long: holes (p), rods (q), clearances, differences; used again for the next fit. */
export interface Workspace {
  readonly n: number;
  /** Holes and rods about their means. */
  readonly px: Float64Array;
  readonly py: Float64Array;
  readonly qx: Float64Array;
  readonly qy: Float64Array;
  readonly clearance: Float64Array;
  /** rod - R hole at the angle in hand. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  holeX: number;
  holeY: number;
  rodX: number;
  rodY: number;
  /** Size of the holes' pattern; and of holes and rods together: what tolerances are relative to. */
  holeScale: number;
  scale: number;
  /** The hole with the least clearance. */
  tightest: number;
}

/** Room for a pattern of these holes. */
export function workspaceFor(holes: readonly FitHole[]): Workspace {
  const n = holes.length;
  const all = new Float64Array(7 * n);
  const row = (i: number) => all.subarray(i * n, (i + 1) * n);
  const { x, y } = meanOf(holes);
  const work: Workspace = {
    n,
    px: row(0),
    py: row(1),
    qx: row(2),
    qy: row(3),
    clearance: row(4),
    x: row(5),
    y: row(6),
    holeX: x,
    holeY: y,
    rodX: 0,
    rodY: 0,
    holeScale: 0,
    scale: 0,
    tightest: 0,
  };
  for (let i = 0; i < n; i++) setHole(work, i, holes[i] as FitHole);
  return work;
}

function setHole(work: Workspace, i: number, { x, y, clearance }: FitHole): void {
  const dx = x - work.holeX;
  const dy = y - work.holeY;
  work.px[i] = dx;
  work.py[i] = dy;
  work.clearance[i] = clearance;
  work.holeScale = Math.max(work.holeScale, Math.abs(clearance), Math.sqrt(dx * dx + dy * dy));
  if (clearance < at(work.clearance, work.tightest)) work.tightest = i;
}

/** Takes the rods in, in the order of the holes. */
export function setRods(work: Workspace, rods: readonly FitRod[]): void {
  const mean = meanOf(rods);
  work.rodX = mean.x;
  work.rodY = mean.y;
  work.scale = work.holeScale;
  for (let i = 0; i < work.n; i++) {
    const { x, y } = rods[i] as FitRod;
    const dx = x - mean.x;
    const dy = y - mean.y;
    work.qx[i] = dx;
    work.qy[i] = dy;
    work.scale = Math.max(work.scale, Math.sqrt(dx * dx + dy * dy));
  }
}

function meanOf(points: readonly FitRod[]): { readonly x: number; readonly y: number } {
  let x = 0;
  let y = 0;
  for (const point of points) {
    x += point.x;
    y += point.y;
  }
  return { x: x / points.length, y: y / points.length };
}

/** An entry of an array that is known to be there. */
export function at(values: Float64Array, index: number): number {
  return values[index] as number;
}
