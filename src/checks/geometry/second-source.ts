/** The holes of the base plate's second source laid on the rods of the base. */

import type { Point } from "../../geometry/index.js";
import { pointAt } from "../../geometry/index.js";
import type { BasePlate, SecondSourceHole } from "../../job/model/job.js";
import { greatestOf, leastOf } from "../../units/extremes.js";
import { millimetres, NM_PER_MM, nanometres } from "../../units/length.js";
import type { RodHole } from "../rods.js";

/**
 * How far a hole of a file may be off: half a thousandth of an inch, the rounding of a drawing in inches to three decimals.
 * Holes that are listed in the job are exact.
 */
export const FILE_ROUNDING = nanometres(12_700);

/** A round hole of another size than any of the rods' and farther than this from every rod is none for a rod: grout, lifting. */
const REACH_MM = 25.4;

/** A hole of the second source in the base's own axes. */
export interface PlacedHole extends SecondSourceHole {
  /** BP1, BP2, ... in the order of the second source. */
  readonly tag: string;
  readonly center: Point;
}

/** A second source laid on the base. */
export interface PlacedSource {
  readonly holes: readonly PlacedHole[];
  /** Tags of holes that are none for a rod. */
  readonly leftOut: readonly string[];
  /** What would make a file agree that does not: a turn or a mirror; "" where nothing would. */
  readonly remedy: string;
}

/** The second source in the base's axes; one whose origin may be anywhere is shifted to where most holes lie on rods. */
export function placeSource(
  holes: readonly SecondSourceHole[],
  { patternOrigin }: BasePlate,
  rods: readonly RodHole[],
): PlacedSource {
  const drawn = holes.map((hole, index) => ({ ...hole, tag: `BP${index + 1}`, center: pointAt(hole.at.x, hole.at.y) }));
  if (patternOrigin === "as listed") return { holes: drawn, leftOut: [], remedy: "" };
  const sized = drawn.filter((hole) => hasSizeOf(hole, rods));
  const used = sized.length > 0 ? sized : drawn;
  const centers = used.map(({ center }) => center);
  const still: Shift = { by: { x: 0, y: 0 }, on: rods.length };
  const shift = patternOrigin === "any" ? bestShift(centers, rods) : still;
  const placed = drawn.map((hole) => ({ ...hole, center: moved(hole.center, shift.by) }));
  const isForRod = (hole: PlacedHole) =>
    hasSizeOf(hole, rods) || rods.some(({ center }) => between(hole.center, center) <= REACH_MM);
  return {
    holes: placed.filter(isForRod),
    leftOut: placed.filter((hole) => !isForRod(hole)).map(({ tag }) => tag),
    remedy: shift.on === rods.length ? "" : remedyOf(used, rods, shift.on),
  };
}

function hasSizeOf({ diameter }: SecondSourceHole, rods: readonly RodHole[]): boolean {
  if (diameter.kind === "missing") return true;
  return rods.some(({ group: { baseHole } }) => {
    return baseHole.kind === "missing" || Math.abs(baseHole.value - diameter.value) <= FILE_ROUNDING;
  });
}

interface Shift {
  readonly by: Point;
  /** Rods that have a hole on them. */
  readonly on: number;
}

/** The shift that lays holes on more than half of the rods; else the middle of the holes on the middle of the rods. */
function bestShift(holes: readonly Point[], rods: readonly RodHole[]): Shift {
  const centers = rods.map(({ center }) => center);
  const middle = between2(middleOf(holes), middleOf(centers));
  const shifts = [middle, ...centers.slice(0, 3).flatMap((rod) => holes.map((hole) => between2(hole, rod)))];
  let best: Shift = { by: middle, on: -1 };
  for (const by of shifts) {
    const pairs = onRods(holes, centers, by);
    if (pairs.length > best.on) best = { by: refined(by, pairs), on: pairs.length };
  }
  return 2 * best.on > rods.length ? best : { by: middle, on: best.on };
}

function onRods(holes: readonly Point[], rods: readonly Point[], by: Point): readonly (readonly [Point, Point])[] {
  const limit = (4 * FILE_ROUNDING) / NM_PER_MM;
  return rods.flatMap((rod) => {
    const hole = holes.map((point) => moved(point, by)).find((point) => between(point, rod) <= limit);
    return hole === undefined ? [] : [[hole, rod] as const];
  });
}

/** The rounding of one hole is not laid on the others. */
function refined(by: Point, pairs: readonly (readonly [Point, Point])[]): Point {
  if (pairs.length === 0) return by;
  const mean = (of: (pair: readonly [Point, Point]) => number) =>
    pairs.reduce((sum, pair) => sum + of(pair), 0) / pairs.length;
  return {
    x: snapped(by.x + mean(([hole, rod]) => rod.x - hole.x)),
    y: snapped(by.y + mean(([hole, rod]) => rod.y - hole.y)),
  };
}

function snapped(value: number): number {
  return millimetres(value) / NM_PER_MM;
}

function between2(from: Point, to: Point): Point {
  return { x: to.x - from.x, y: to.y - from.y };
}

function moved({ x, y }: Point, by: Point): Point {
  return { x: snapped(x + by.x), y: snapped(y + by.y) };
}

function between(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

function middleOf(points: readonly Point[]): Point {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const middle = (values: readonly number[]) => (leastOf(values) + greatestOf(values)) / 2;
  return points.length === 0 ? { x: 0, y: 0 } : { x: middle(xs), y: middle(ys) };
}

const WAYS: readonly (readonly [words: string, turn: (point: Point) => Point])[] = [
  ["turned by 90 degrees", ({ x, y }) => ({ x: -y, y: x })],
  ["turned by 180 degrees", ({ x, y }) => ({ x: -x, y: -y })],
  ["turned by 270 degrees", ({ x, y }) => ({ x: y, y: -x })],
  ["mirrored left to right", ({ x, y }) => ({ x: -x, y })],
  ["mirrored top to bottom", ({ x, y }) => ({ x, y: -y })],
  ["mirrored and turned by 90 degrees", ({ x, y }) => ({ x: y, y: x })],
  ["mirrored and turned by 270 degrees", ({ x, y }) => ({ x: -y, y: -x })],
];

function remedyOf(holes: readonly PlacedHole[], rods: readonly RodHole[], on: number): string {
  for (const [words, turn] of WAYS) {
    const turned = bestShift(
      holes.map(({ center }) => turn(center)),
      rods,
    );
    if (turned.on > on && turned.on === rods.length) return `; the holes would agree ${words}`;
  }
  return "";
}
