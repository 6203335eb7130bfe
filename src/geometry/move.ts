/** Moves: shifts, turns and mirrors. Every resulting point is snapped once; quarter turns and mirrors are exact. */
import { path } from "./contour.js";
import { point, samePoint } from "./point.js";
import { reversed } from "./segment.js";
import { turnOf } from "./turn.js";
import type { Circle, Contour, Point, Segment, Vector } from "./vocabulary.js";

/** A rigid move as a function of points. `mirrors` tells whether it changes left and right. */
export interface Move {
  readonly mirrors: boolean;
  apply(at: Point): Point;
}

/** Shifts by a displacement in millimetres. */
export function shift({ dx, dy }: Vector): Move {
  return { mirrors: false, apply: ({ x, y }) => point(x + dx, y + dy) };
}

/** Turns counter-clockwise by degrees about a point, by default the working point. */
export function turn(degrees: number, about: Point = { x: 0, y: 0 }): Move {
  const { cos, sin } = turnOf(degrees);
  return {
    mirrors: false,
    apply: ({ x, y }) => {
      const [dx, dy] = [x - about.x, y - about.y];
      return point(about.x + dx * cos - dy * sin, about.y + dx * sin + dy * cos);
    },
  };
}

/** Mirrors in an axis through the working point: `x` changes the sign of y, `y` the sign of x. */
export function mirror(axis: "x" | "y"): Move {
  return { mirrors: true, apply: ({ x, y }) => (axis === "x" ? { x, y: -y + 0 } : { x: -x + 0, y }) };
}

/** One move after another, the first given first. */
export function moveInTurn(...moves: readonly Move[]): Move {
  return {
    mirrors: moves.filter(({ mirrors }) => mirrors).length % 2 === 1,
    apply: (at) => moves.reduce((moved, { apply }) => apply(moved), at),
  };
}

/** A moved contour; a mirrored path is turned round so that it stays counter-clockwise. */
export function moveContour(contour: Contour, move: Move): Contour {
  if (contour.kind === "circle") return moveCircle(contour, move);
  let joint: { readonly at: Point; readonly moved: Point } | null = null;
  const moved = contour.segments.map(({ from, to, bulge }) => {
    const start = joint !== null && samePoint(joint.at, from) ? joint.moved : move.apply(from);
    const end = move.apply(to);
    joint = { at: to, moved: end };
    return { from: start, to: end, bulge: move.mirrors ? -bulge + 0 : bulge };
  });
  return path(move.mirrors ? moved.map(reversed).reverse() : moved);
}

function moveCircle({ center, diameter }: Circle, move: Move): Circle {
  return { kind: "circle", center: move.apply(center), diameter };
}

/** True where two contours are the same line: same circle, or same chain of points from whichever joint it starts. */
export function sameContour(a: Contour, b: Contour): boolean {
  if (a.kind === "circle") return b.kind === "circle" && samePoint(a.center, b.center) && a.diameter === b.diameter;
  return b.kind === "path" && sameChain(a.segments, b.segments);
}

function sameChain(a: readonly Segment[], b: readonly Segment[]): boolean {
  const [first] = a;
  if (first === undefined || a.length !== b.length) return a.length === b.length;
  const start = b.findIndex((piece) => samePiece(first, piece));
  return start >= 0 && a.every((piece, i) => samePiece(piece, b[(start + i) % b.length]));
}

/** By start and bulge, the latter to 1e-9, since a mirrored arc's is computed afresh. */
function samePiece(a: Segment, b: Segment | undefined): boolean {
  return b !== undefined && samePoint(a.from, b.from) && Math.round(a.bulge * 1e9) === Math.round(b.bulge * 1e9);
}
