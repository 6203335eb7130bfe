/** Points that two segments share. Positions are in millimetres, off the lattice in general. */
import { magnitude, millimetresBetween, vectorBetween } from "./point.js";
import type { Arc } from "./segment.js";
import { arcOf, meetsAngle } from "./segment.js";
import type { Point, Segment, Vector } from "./vocabulary.js";

/** Where two segments cross or touch; the ends of the shared stretch where they overlap. */
export function crossings(a: Segment, b: Segment): readonly Point[] {
  if (a.bulge === 0 && b.bulge === 0) return lineCrossings(a, b);
  if (a.bulge === 0) return lineArcCrossings(a, arcOf(b));
  if (b.bulge === 0) return lineArcCrossings(b, arcOf(a));
  return arcCrossings(arcOf(a), arcOf(b), [a.from, a.to], [b.from, b.to]);
}

function lineCrossings(a: Segment, b: Segment): readonly Point[] {
  const u = vectorBetween(a.from, a.to);
  const v = vectorBetween(b.from, b.to);
  const w = vectorBetween(a.from, b.from);
  const denominator = u.dx * v.dy - u.dy * v.dx;
  if (Math.abs(denominator) <= 1e-12 * magnitude(u) * magnitude(v)) return parallelCrossings(a, b, u);
  const s = (w.dx * v.dy - w.dy * v.dx) / denominator;
  const t = (w.dx * u.dy - w.dy * u.dx) / denominator;
  return within(s) && within(t) ? [{ x: a.from.x + s * u.dx, y: a.from.y + s * u.dy }] : [];
}

function parallelCrossings(a: Segment, b: Segment, u: Vector): readonly Point[] {
  const length = magnitude(u);
  const off = ({ x, y }: Point) => Math.abs((x - a.from.x) * u.dy - (y - a.from.y) * u.dx) / length;
  if (off(b.from) > 1e-9) return [];
  const place = ({ x, y }: Point) => ((x - a.from.x) * u.dx + (y - a.from.y) * u.dy) / (length * length);
  const [first, last] = [place(b.from), place(b.to)].sort((p, q) => p - q);
  const from = Math.max(0, first ?? 0);
  const to = Math.min(1, last ?? 0);
  const at = (s: number) => ({ x: a.from.x + s * u.dx, y: a.from.y + s * u.dy });
  return from > to ? [] : from === to ? [at(from)] : [at(from), at(to)];
}

function within(fraction: number): boolean {
  return fraction >= -1e-14 && fraction <= 1 + 1e-14;
}

function lineArcCrossings({ from, to }: Segment, arc: Arc): readonly Point[] {
  const { center, radius } = arc;
  const length = millimetresBetween(from, to);
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const foot = (center.x - from.x) * ux + (center.y - from.y) * uy;
  const off = (center.x - from.x) * uy - (center.y - from.y) * ux;
  const square = radius * radius - off * off;
  if (square < 0) return [];
  const half = Math.sqrt(square);
  return (half === 0 ? [foot] : [foot - half, foot + half])
    .filter((along) => along >= 0 && along <= length)
    .map((along) => ({ x: from.x + along * ux, y: from.y + along * uy }))
    .filter((at) => onSweep(arc, at));
}

function arcCrossings(a: Arc, b: Arc, endsOfA: readonly Point[], endsOfB: readonly Point[]): readonly Point[] {
  const apart = millimetresBetween(a.center, b.center);
  if (apart < 1e-9) return sharedStretch(a, b, endsOfA, endsOfB);
  const along = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart);
  const square = a.radius * a.radius - along * along;
  if (square < 0) return [];
  const half = Math.sqrt(square);
  const [ux, uy] = [(b.center.x - a.center.x) / apart, (b.center.y - a.center.y) / apart];
  return (half === 0 ? [0] : [-half, half])
    .map((side) => ({ x: a.center.x + along * ux - side * uy, y: a.center.y + along * uy + side * ux }))
    .filter((at) => onSweep(a, at) && onSweep(b, at));
}

function sharedStretch(a: Arc, b: Arc, endsOfA: readonly Point[], endsOfB: readonly Point[]): readonly Point[] {
  if (Math.abs(a.radius - b.radius) > 1e-9) return [];
  return [...endsOfA.filter((at) => onSweep(b, at)), ...endsOfB.filter((at) => onSweep(a, at))];
}

function onSweep(arc: Arc, at: Point): boolean {
  return meetsAngle(arc, Math.atan2(at.y - arc.center.y, at.x - arc.center.x));
}
