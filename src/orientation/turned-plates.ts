/**
 * Every way in which a base plate drops on turned over rods that stand right: its holes over other rods than their own. By
 * quarters, by the pitches of bolt circles, and by whatever turn lays the pattern on itself within the clearances.
 */

import type { FitHole } from "../fit/index.js";
import { fitPlate } from "../fit/index.js";
import type { Point } from "../geometry/index.js";
import { millimetresBetween, turnOf, twiceToLattice } from "../geometry/index.js";
import type { Base } from "../job/model/job.js";
import { boltCircleOf } from "../patterns/index.js";
import type { PlacedRod } from "../rods/index.js";
import { greatestOf, leastOf } from "../units/extremes.js";
import type { Edges } from "./bottleneck.js";
import { assignEdges, edgesWithin, placesOf } from "./bottleneck.js";
import { clearanceAt } from "./drop-on.js";

/** A position in which the turned plate drops on: p goes to R p + shift, seen from above. */
export interface TurnedPlate {
  /** Counter-clockwise, above 0 and below 360. */
  readonly degrees: number;
  readonly cos: number;
  readonly sin: number;
  /** Millimetres. */
  readonly shift: Point;
}

/**
 * Turned plates in the order of their turn; `any` for a single rod, on which a plate turns freely. Base-plate holes are given.
 * Of the positions with the same holes over the same rods, one with `pin` (the column's middle) in its place goes first.
 */
export function turnedPlates(base: Base, rods: readonly PlacedRod[], pin: Point): readonly TurnedPlate[] | "any" {
  if (rods.length < 2) return "any";
  const over = overRods(rods, pin);
  const found = new Map<string, TurnedPlate>();
  for (const turn of plainTurns(base)) keep(found, atTurn(over, turn));
  for (const degrees of likelyTurns(over)) {
    if (isNear([...found.values(), RIGHT], degrees)) continue;
    for (const partners of assignmentsNear(over, degrees)) {
      if (!found.has(partners.join())) keep(found, turnedFit(over, partners, degrees));
    }
  }
  return [...found.values()].sort((a, b) => a.degrees - b.degrees);
}

/** The rods with what every look at them needs, in millimetres. */
interface OverRods {
  readonly rods: readonly PlacedRod[];
  readonly centers: readonly Point[];
  readonly middle: Point;
  readonly pin: Point;
  /** How far the middle of the holes may lie from the middle of the rods: the largest clearance. */
  readonly play: number;
  /** The rod farthest from the middle. */
  readonly far: Point;
  readonly radius: number;
  /** True where a rod may be nearest to another's hole within the clearances. */
  readonly isTight: boolean;
}

function overRods(rods: readonly PlacedRod[], pin: Point): OverRods {
  const centers = rods.map(({ center }) => center);
  const mean = (axis: "x" | "y") => centers.reduce((sum, at) => sum + at[axis], 0) / centers.length;
  const middle = { x: mean("x"), y: mean("y") };
  const holes = rods.map((_, j) => greatestOf(rods.map((_each, i) => clearanceAt(rods, i, j))));
  const play = greatestOf(holes, 0);
  const far = centers.reduce((most, at) => {
    return millimetresBetween(at, middle) > millimetresBetween(most, middle) ? at : most;
  });
  const nearest = leastOf(centers.flatMap((a, i) => centers.slice(i + 1).map((b) => millimetresBetween(a, b))));
  return {
    rods,
    centers,
    middle,
    pin,
    play,
    far,
    radius: millimetresBetween(far, middle),
    isTight: nearest < 8 * play,
  };
}

/** Which hole stands over which rod: of rod i the hole of rod `partners[i]`; and where the plate then lies. */
interface Pose extends TurnedPlate {
  readonly partners: readonly number[];
}

const RIGHT: Pick<TurnedPlate, "degrees"> = { degrees: 0 };

function keep(found: Map<string, TurnedPlate>, pose: Pose | null): void {
  if (pose === null || pose.partners.every((hole, rod) => hole === rod)) return;
  const key = pose.partners.join();
  const { degrees, cos, sin, shift } = pose;
  if (!found.has(key)) found.set(key, { degrees, cos, sin, shift });
}

/** A turn by a fraction of a degree that is exact. */
interface ExactTurn {
  readonly numerator: number;
  readonly denominator: number;
}

/** Quarters first, then pitches: what a person would call the turn by. */
function plainTurns({ groups }: Base): readonly ExactTurn[] {
  const counts = groups.flatMap(({ pattern }) => boltCircleOf(pattern)?.count ?? []);
  const by = (count: number) =>
    Array.from({ length: count - 1 }, (_, k): ExactTurn => ({ numerator: 360 * (k + 1), denominator: count }));
  return [...by(4), ...counts.flatMap(by)];
}

/** The plate at exactly this turn: turned about the pin, else shifted to where it is best. */
function atTurn(over: OverRods, { numerator, denominator }: ExactTurn): Pose | null {
  const { rods, centers, middle, pin } = over;
  const degrees = numerator / denominator;
  const { cos, sin } = turnOf(numerator, denominator);
  const pinned = shiftFor(pin, cos, sin);
  const direct = assignedTo(over, turnedBy(centers, cos, sin, pinned));
  if (direct !== null && direct.worst <= 0) return { partners: direct.partners, degrees, cos, sin, shift: pinned };
  const partners = assignedTo(over, turnedBy(centers, cos, sin, shiftFor(middle, cos, sin)))?.partners;
  if (partners === undefined) return null;
  const [holes, places] = pairsOf(rods, partners, turnedBy(centers, cos, sin, NO_SHIFT));
  const { value, tx, ty } = fitPlate(holes, places, { maxTurn: 0 });
  return twiceToLattice(value) > 0 ? null : { partners, degrees, cos, sin, shift: { x: tx, y: ty } };
}

const NO_SHIFT: Point = { x: 0, y: 0 };

/** The shift that leaves a point of the turned plate in its place. */
function shiftFor({ x, y }: Point, cos: number, sin: number): Point {
  return { x: x - (cos * x - sin * y), y: y - (sin * x + cos * y) };
}

function turnedBy(points: readonly Point[], cos: number, sin: number, shift: Point): readonly Point[] {
  return points.map(({ x, y }) => ({ x: cos * x - sin * y + shift.x, y: sin * x + cos * y + shift.y }));
}

/** Best assignment of rods to holes that lie there; `worst`: twice the largest distance less clearance, on the lattice. */
function assignedTo({ rods, centers, play }: OverRods, holes: readonly Point[]) {
  const places = placesOf(holes);
  const edges: Edges[] = [];
  for (const [i, at] of centers.entries()) {
    const { to, cost } = edgesWithin(at, places, MOST_OFF * play + 1e-6);
    if (to.length === 0) return null;
    edges.push({ to, cost: cost.map((each, k) => each - clearanceAt(rods, i, to[k] ?? i)) });
  }
  const found = assignEdges(edges);
  return found === null ? null : { partners: found.partners, worst: twiceToLattice(found.worst) };
}

/** Near a turn in which the plate drops on, a hole is off its rod by twice the play, and as much again by the turn. */
const MOST_OFF = 5;

/** Holes and rods as partners. */
function pairsOf(
  rods: readonly PlacedRod[],
  partners: readonly number[],
  holes: readonly Point[],
): [FitHole[], Point[]] {
  const fitted = partners.map((hole, rod) => {
    const { x, y } = holes[hole] as Point;
    return { x, y, clearance: clearanceAt(rods, rod, hole) };
  });
  return [fitted, rods.map(({ center }) => center)];
}

/**
 * Where the plate drops on, the middles of holes and rods are within `play` of each other; the farthest hole then lies within
 * twice that of a rod about as far out. Its directions are the turns to look near.
 */
function likelyTurns({ centers, middle, far, radius, play }: OverRods): readonly number[] {
  const own = Math.atan2(far.y - middle.y, far.x - middle.x);
  return centers
    .filter((at) => at !== far && Math.abs(millimetresBetween(at, middle) - radius) <= 2 * play + 1e-6)
    .map((at) => ((Math.atan2(at.y - middle.y, at.x - middle.x) - own) * 180) / Math.PI)
    .map((degrees) => (degrees + 360) % 360);
}

/** How far off a likely turn the plate may be turned, in radians. */
function turnPlay({ play, radius }: OverRods): number {
  return Math.min(Math.PI, 1.05 * Math.asin(Math.min(1, (2 * play) / radius)) + 1e-6);
}

const SAME_TURN = 1e-3;

function isNear(found: readonly Pick<TurnedPlate, "degrees">[], degrees: number): boolean {
  return found.some((each) => Math.abs(((each.degrees - degrees + 540) % 360) - 180) < SAME_TURN);
}

/** The assignments of rods to holes about a turn; of rods that stand near each other also a little to both sides of it. */
function assignmentsNear(over: OverRods, degrees: number): readonly (readonly number[])[] {
  const steps = over.isTight ? [0, -0.25, 0.25, -0.5, 0.5, -0.75, 0.75, -1, 1] : [0];
  const looks = steps.flatMap((step) => {
    const angle = (degrees * Math.PI) / 180 + step * turnPlay(over);
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const assigned = assignedTo(over, turnedBy(over.centers, cos, sin, shiftFor(over.middle, cos, sin)));
    return assigned === null ? [] : [assigned.partners];
  });
  return [...new Map(looks.map((partners) => [partners.join(), partners])).values()];
}

/** A position of a plate with this assignment near a turn, the pin in its place if it can be; null where it does not drop on. */
function turnedFit(over: OverRods, partners: readonly number[], degrees: number): Pose | null {
  const { rods, centers, pin } = over;
  const angle = (degrees * Math.PI) / 180;
  const turned = (points: readonly Point[]) => turnedBy(points, Math.cos(angle), Math.sin(angle), NO_SHIFT);
  const [holes, places] = pairsOf(rods, partners, turned(centers));
  const options = { maxTurn: turnPlay(over) };
  const free = fitPlate(holes, places, options);
  if (twiceToLattice(free.value) > 0) return null;
  const pins = turned([pin]).map(({ x, y }): FitHole => ({ x, y, clearance: 0 }));
  const pinned = fitPlate([...holes, ...pins], [...places, pin], options);
  const { theta, tx, ty } = twiceToLattice(pinned.value) > 0 ? free : pinned;
  return {
    partners,
    degrees: (((angle + theta) * 180) / Math.PI + 360) % 360,
    cos: Math.cos(angle + theta),
    sin: Math.sin(angle + theta),
    shift: { x: tx, y: ty },
  };
}
