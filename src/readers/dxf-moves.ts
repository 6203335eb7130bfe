/** Moves, turns, mirrors and scales entities, as inserted blocks and extrusion directions do. */
import type { DxfEntity, DxfVertex } from "./dxf-model.js";

/** x' = a x + c y + e, y' = b x + d y + f. */
export interface DxfMove {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

/** From the object coordinates of an entity drawn from below to the world's. */
export const MIRROR_X: DxfMove = { a: -1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** First `inner`, then `outer`. */
export function combineMoves(outer: DxfMove, inner: DxfMove): DxfMove {
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e: outer.a * inner.e + outer.c * inner.f + outer.e,
    f: outer.b * inner.e + outer.d * inner.f + outer.f,
  };
}

/** The entity moved; null where the move makes an ellipse of an arc. */
export function moveEntity(entity: DxfEntity, move: DxfMove): DxfEntity | null {
  switch (entity.kind) {
    case "line":
      return { ...entity, from: movePoint(entity.from, move), to: movePoint(entity.to, move) };
    case "circle": {
      if (!keepsCircles(move)) return null;
      return { ...entity, ...moveCenter(entity, move), radius: entity.radius * scaleOf(move) };
    }
    case "arc":
      return keepsCircles(move) ? moveArc(entity, move) : null;
    case "polyline": {
      const isCurved = entity.vertices.some(({ bulge }) => bulge !== 0);
      if (isCurved && !keepsCircles(move)) return null;
      return { ...entity, vertices: entity.vertices.map((vertex) => movePoint(vertex, move)) };
    }
  }
}

/** An arc keeps running counter-clockwise: a mirror exchanges its ends. */
function moveArc(arc: Extract<DxfEntity, { kind: "arc" }>, move: DxfMove): DxfEntity {
  const turn = (Math.atan2(move.b, move.a) * 180) / Math.PI;
  const [start, end] = isMirror(move) ? [turn - arc.end, turn - arc.start] : [turn + arc.start, turn + arc.end];
  return { ...arc, ...moveCenter(arc, move), radius: arc.radius * scaleOf(move), start, end };
}

function moveCenter({ x, y }: { readonly x: number; readonly y: number }, { a, b, c, d, e, f }: DxfMove) {
  return { x: a * x + c * y + e, y: b * x + d * y + f };
}

function movePoint(vertex: DxfVertex, move: DxfMove): DxfVertex {
  return { ...moveCenter(vertex, move), bulge: isMirror(move) ? -vertex.bulge || 0 : vertex.bulge };
}

function determinant({ a, b, c, d }: DxfMove): number {
  return a * d - b * c;
}

function isMirror(move: DxfMove): boolean {
  return determinant(move) < 0;
}

function scaleOf(move: DxfMove): number {
  return Math.sqrt(Math.abs(determinant(move)));
}

/** Equal scales along both axes, to nine digits, and square axes. */
function keepsCircles({ a, b, c, d }: DxfMove): boolean {
  const [first, second, skew] = [a * a + b * b, c * c + d * d, a * c + b * d];
  const least = 1e-9 * Math.max(first, second);
  return first > 0 && Math.abs(first - second) <= least && Math.abs(skew) <= least;
}
