/**
 * The ways in which a template can be laid down: by its centre lines (four quarter turns, face up and face down, about the
 * working point), by the pitch of a bolt circle, and by its own edges wherever these look right. Face down is turned over
 * left to right: x changes its sign; the turn follows, counter-clockwise.
 */
import type { Contour, Move, Point, Turn } from "../geometry/index.js";
import { point, turnOf } from "../geometry/index.js";
import type { Base, CircleStart } from "../job/model/job.js";
import { boltCircleOf } from "../patterns/index.js";
import type { WayMove } from "./model.js";
import type { Isometry } from "./outline-symmetry.js";
import { outlineSymmetries } from "./outline-symmetry.js";

const ORIGIN: Point = { x: 0, y: 0 };

/** Every way but the right one; each is listed once. */
export function wrongWays(base: Base, outline: Contour): readonly WayMove[] {
  return distinct([...QUARTERS, ...pitchWays(base), ...edgeWays(outline)]);
}

/** Every way of laying down the rods of these bases, the right one first: quarter turns and turns of bolt circles. */
export function patternWays(bases: readonly Base[]): readonly WayMove[] {
  const pitched = bases.flatMap(pitchWays);
  return pitched.length === 0 ? RIGHT_AND_QUARTERS : [RIGHT, ...distinct([...QUARTERS, ...pitched])];
}

/** The same text for bases with the same `patternWays`: the pitches of their bolt circles. */
export function pitchText({ groups }: Base): string {
  const circles = groups.flatMap(({ pattern }) => boltCircleOf(pattern) ?? []);
  return circles.map(({ count, start }) => `${count} ${mirrorTurn(start)}`).join();
}

/**
 * Face down, an angle a becomes 180 - a + turn: a rod at s stays where the turn is 2 s - 180, in degrees. The pattern is
 * symmetric about x or y whichever of them a named start is of: s is 0 or 90.
 */
function mirrorTurn(start: CircleStart): number {
  if (start.kind === "degrees") return 2 * start.degrees - 180;
  return start.axis === "y" ? 0 : -180;
}

/** The right way round. */
export const RIGHT: WayMove = { ...wayOf(false, 0, turnOf(0), true), words: "as it is" };

/** The seven quarter turns and turn-overs about the working point that are not the right way round. */
export const QUARTERS: readonly WayMove[] = [false, true].flatMap((faceDown) =>
  [0, 90, 180, 270].flatMap((degrees) =>
    degrees === 0 && !faceDown ? [] : [wayOf(faceDown, degrees, turnOf(degrees), true)],
  ),
);

const RIGHT_AND_QUARTERS: readonly WayMove[] = [RIGHT, ...QUARTERS];

/** Every way of laying a bolt circle onto itself: turns by whole pitches, and mirrors in the axes through its rods. */
function pitchWays({ groups }: Base): readonly WayMove[] {
  return groups.flatMap(({ pattern }) => {
    const circle = boltCircleOf(pattern);
    if (circle === null) return [];
    const { count, start } = circle;
    const pitches = Array.from({ length: count }, (_, k) => 360 * k);
    const mirrored = mirrorTurn(start);
    return [
      ...pitches.slice(1).map((turn) => pitchWay(false, turn, count)),
      ...pitches.map((turn) => pitchWay(true, turn + mirrored * count, count)),
    ];
  });
}

function pitchWay(faceDown: boolean, numerator: number, count: number): WayMove {
  const degrees = (((numerator / count) % 360) + 360) % 360;
  return wayOf(faceDown, degrees, turnOf(numerator, count), false);
}

/** Symmetries of the outline itself: laid down by its edges, the template looks right. */
function edgeWays(outline: Contour): readonly WayMove[] {
  if (outline.kind === "path") return outlineSymmetries(outline).filter(isNotRight).map(byEdges);
  const { center } = outline;
  return center.x === 0 && center.y === 0 ? [] : QUARTERS.map((way) => about(center, way));
}

function isNotRight({ mirrored, cos, x, y }: Isometry): boolean {
  return mirrored || cos < 1 - 1e-9 || Math.abs(x) > 1e-5 || Math.abs(y) > 1e-5;
}

function wayOf(faceDown: boolean, degrees: number, { cos, sin }: Turn, exact: boolean): WayMove {
  return { words: wordsOf(faceDown, degrees), faceDown, degrees, exact, move: moveOf(faceDown, cos, sin, 0, 0) };
}

function wordsOf(faceDown: boolean, degrees: number): string {
  const turned = `turned ${Math.round(degrees * 100) / 100}`;
  if (!faceDown) return turned;
  return degrees === 0 ? "face down" : `face down and ${turned}`;
}

function about(center: Point, way: WayMove): WayMove {
  const { x, y } = way.move.apply(center);
  const shifted = (at: Point) => {
    const moved = way.move.apply(at);
    return point(moved.x + center.x - x, moved.y + center.y - y);
  };
  return { ...way, words: `${way.words} by its edges`, exact: false, move: { ...way.move, apply: shifted } };
}

function byEdges({ mirrored, cos, sin, x, y }: Isometry): WayMove {
  const degrees = ((Math.atan2(sin, cos) * 180) / Math.PI + 360) % 360;
  const rounded = Math.round(degrees * 100) / 100;
  const words = wordsOf(mirrored, rounded === 360 ? 0 : rounded);
  return {
    words: `${words} by its edges`,
    faceDown: mirrored,
    degrees,
    exact: false,
    move: moveOf(mirrored, cos, sin, x, y),
  };
}

/** x' = R(turn) (-x or x, y) + shift. */
function moveOf(mirrors: boolean, cos: number, sin: number, dx: number, dy: number): Move {
  return {
    mirrors,
    apply: (at) => {
      const x = mirrors ? -at.x : at.x;
      return point(cos * x - sin * at.y + dx, sin * x + cos * at.y + dy);
    },
  };
}

/** The one that tells most ways apart first. */
const PROBES: readonly Point[] = [{ x: 1000, y: 0 }, { x: 0, y: 1000 }, ORIGIN];

/** Ways that move three points alike, within rounding, are one: the first of them is kept. */
function distinct(ways: readonly WayMove[]): readonly WayMove[] {
  const seen: (readonly number[])[] = [];
  return ways.filter(({ move }) => {
    const images = PROBES.flatMap((at) => {
      const { x, y } = move.apply(at);
      return [Math.round(x * 1e4), Math.round(y * 1e4)];
    });
    if (seen.some((other) => sameNumbers(other, images))) return false;
    seen.push(images);
    return true;
  });
}

function sameNumbers(a: readonly number[], b: readonly number[]): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}
