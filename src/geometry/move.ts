/** Moves: shifts, turns and mirrors. Every resulting point is snapped once; quarter turns and mirrors are exact. */
import { path } from "./contour.js";
import { point } from "./point.js";
import { reversed } from "./segment.js";
import { turnOf } from "./turn.js";
import type { Circle, Contour, Point, Vector } from "./vocabulary.js";

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
  const moved = contour.segments.map(({ from, to, bulge }) => ({
    from: move.apply(from),
    to: move.apply(to),
    bulge: move.mirrors ? -bulge + 0 : bulge,
  }));
  return path(move.mirrors ? moved.map(reversed).reverse() : moved);
}

function moveCircle({ center, diameter }: Circle, move: Move): Circle {
  return { kind: "circle", center: move.apply(center), diameter };
}

/** True where two contours are the same line: same circle, or same chain of points from whichever joint it starts. */
export function sameContour(a: Contour, b: Contour): boolean {
  if (a.kind === "circle" || b.kind === "circle") {
    return a.kind === b.kind && chainKeys(a)[0] === chainKeys(b)[0];
  }
  const [first, second] = [chainKeys(a), chainKeys(b)];
  const start = second.indexOf(first[0] ?? "");
  if (first.length !== second.length || start < 0) return first.length === second.length && first.length === 0;
  return first.every((key, i) => key === second[(start + i) % second.length]);
}

/** One text a piece, equal for equal pieces; bulges to 1e-9, since a mirrored arc's is computed afresh. */
function chainKeys(contour: Contour): readonly string[] {
  if (contour.kind === "circle") return [`${contour.center.x} ${contour.center.y} ${contour.diameter}`];
  return contour.segments.map(({ from, bulge }) => `${from.x} ${from.y} ${Math.round(bulge * 1e9) + 0}`);
}
