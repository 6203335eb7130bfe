/** Lines that are broken off at holes they have nothing to do with. */
import type { Hole } from "../template/model.js";
import { at } from "./items.js";
import { holeSpan, onPaper, type View } from "./plan-shapes.js";
import type { PaperPoint } from "./scene.js";

type Share = readonly [number, number];
type Stretch = readonly [PaperPoint, PaperPoint];

/** The stretches of a straight line that keep `clear` (paper millimetres) from the edges of these holes. */
export function brokenAt(
  view: View,
  holes: readonly Hole[],
  from: PaperPoint,
  to: PaperPoint,
  clear: number,
): readonly Stretch[] {
  const inside = holes.flatMap((hole) => insideHole(view, hole, from, to, clear));
  return remaining(from, to, inside);
}

/** True where a straight line comes nearer than `clear` to the edge of one of these holes. */
export function passes(view: View, holes: readonly Hole[], from: PaperPoint, to: PaperPoint, clear: number): boolean {
  return holes.some((hole) => insideHole(view, hole, from, to, clear).length > 0);
}

/** True where a line that starts outside this hole runs through it. */
export function holeCrossed(view: View, hole: Hole, from: PaperPoint, to: PaperPoint): boolean {
  const [inside] = insideHole(view, hole, from, to, 0);
  return inside !== undefined && inside[0] > 0;
}

/** The stretches that keep `clear` from a point. */
export function brokenAtPoint(point: PaperPoint, from: PaperPoint, to: PaperPoint, clear: number): readonly Stretch[] {
  return remaining(from, to, insideCircle(point, clear, from, to));
}

function remaining(from: PaperPoint, to: PaperPoint, inside: readonly Share[]): readonly Stretch[] {
  const point = (t: number) => at(from.x + (to.x - from.x) * t, from.y + (to.y - from.y) * t);
  const stretches: Stretch[] = [];
  let start = 0;
  for (const [enter, leave] of [...inside, [1, 1] as const].sort((a, b) => a[0] - b[0])) {
    if (enter > start) stretches.push([point(start), point(enter)]);
    start = Math.max(start, leave);
  }
  return stretches;
}

function insideHole(view: View, hole: Hole, from: PaperPoint, to: PaperPoint, clear: number): readonly Share[] {
  const center = onPaper(view, hole.center);
  const span = holeSpan(hole);
  const [w, h] = [span.x * view.scale + clear, span.y * view.scale + clear];
  if (hole.shape.kind === "circle") return insideCircle(center, w, from, to);
  const x = between(from.x - center.x, to.x - center.x, w);
  const y = between(from.y - center.y, to.y - center.y, h);
  return x === null || y === null ? [] : proper([Math.max(x[0], y[0]), Math.min(x[1], y[1])]);
}

/** Where a coordinate that runs from `a` to `b` is within `reach` of zero; null where it never is. */
function between(a: number, b: number, reach: number): Share | null {
  if (Math.abs(b - a) < 1e-9) return Math.abs(a) < reach ? [0, 1] : null;
  const [t0, t1] = [(-reach - a) / (b - a), (reach - a) / (b - a)];
  return [Math.min(t0, t1), Math.max(t0, t1)];
}

function insideCircle(center: PaperPoint, radius: number, from: PaperPoint, to: PaperPoint): readonly Share[] {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const [fx, fy] = [from.x - center.x, from.y - center.y];
  const square = dx * dx + dy * dy;
  const middle = -(fx * dx + fy * dy) / square;
  const under = middle * middle - (fx * fx + fy * fy - radius * radius) / square;
  if (!(under > 0)) return [];
  return proper([middle - Math.sqrt(under), middle + Math.sqrt(under)]);
}

function proper([enter, leave]: Share): readonly Share[] {
  const [a, b] = [Math.max(0, enter), Math.min(1, leave)];
  return a < b ? [[a, b]] : [];
}
