/** Whether the base plate would drop on over rods that stand somewhere else. */
import type { FitHole } from "../fit/index.js";
import { fitPlate } from "../fit/index.js";
import type { Point } from "../geometry/index.js";
import { millimetresBetween, twiceToLattice } from "../geometry/index.js";
import type { Input, Missing } from "../job/model/job.js";
import type { PlacedRod } from "../rods/index.js";
import { greatestOf, leastOf } from "../units/extremes.js";
import type { Length } from "../units/index.js";
import { NM_PER_MM } from "../units/length.js";
import { assignBy, placesOf } from "./bottleneck.js";
import type { DropsOn } from "./model.js";

/**
 * The base plate's holes stand at the rods' right places; rod i stands at `standing[i]`. The erector may shift and turn the
 * plate; any rod may come up through any hole. Holes are tried in place, then shifted so that the middles agree.
 */
export function dropOn(rods: readonly PlacedRod[], standing: readonly Point[]): DropsOn {
  const missing = missingHoles(rods);
  if (missing.length > 0) return { kind: "not known", missing };
  const first = bestFit(rods, standing, { x: 0, y: 0 });
  const shift = between(rods, standing);
  if (shift.x === 0 && shift.y === 0) return first;
  const second = bestFit(rods, standing, shift);
  return second.twice < first.twice ? second : first;
}

/** Rods in their own places: the base plate drops on with its least clearance. */
export function inPlace(rods: readonly PlacedRod[]): DropsOn {
  const missing = missingHoles(rods);
  if (missing.length > 0) return { kind: "not known", missing };
  const least = leastOf(rods.map((_, i) => clearanceAt(rods, i, i)));
  return { kind: "known", twice: -twiceToLattice(least) + 0, shiftTwice: 0, theta: 0, shift: { x: 0, y: 0 } };
}

function missingHoles(rods: readonly PlacedRod[]): readonly Missing[] {
  return [...new Set(rods.flatMap(({ group }) => (group.baseHole.kind === "missing" ? [group.baseHole] : [])))];
}

type Known = Extract<DropsOn, { readonly kind: "known" }>;

function between(rods: readonly PlacedRod[], standing: readonly Point[]): Point {
  const sum = (points: readonly Point[], axis: "x" | "y") => points.reduce((total, at) => total + at[axis], 0);
  const centers = rods.map(({ center }) => center);
  const along = (axis: "x" | "y") => (sum(standing, axis) - sum(centers, axis)) / rods.length;
  return { x: along("x"), y: along("y") };
}

/** The fit of the best assignment there; where the plate does not drop on, assigned and fitted again as long as that helps. */
function bestFit(rods: readonly PlacedRod[], standing: readonly Point[], shift: Point): Known {
  let best = fitFrom(rods, standing, (at) => ({ x: at.x + shift.x, y: at.y + shift.y }));
  for (let round = roundsFor(rods.length); best.twice > 0 && round > 0; round--) {
    const { theta, shift: by } = best;
    const [cos, sin] = [Math.cos(theta), Math.sin(theta)];
    const next = fitFrom(rods, standing, ({ x, y }) => ({ x: cos * x - sin * y + by.x, y: sin * x + cos * y + by.y }));
    if (next.twice >= best.twice) return best;
    best = next;
  }
  return best;
}

/** Eight for up to 50 rods, fewer for more: each costs their square, and a plate of so many turned the wrong way is far from dropping on. */
function roundsFor(rods: number): number {
  return Math.min(8, Math.max(1, Math.floor(20_000 / (rods * rods))));
}

/** Each rod is given the hole that suits it where the plate lies `placed`; then the plate is moved to where it is best. */
function fitFrom(rods: readonly PlacedRod[], standing: readonly Point[], placed: (at: Point) => Point): Known {
  const slack = greatestOf(
    rods.map(({ group }) => halfOf(group.baseHole)),
    0,
  );
  const costOf = (i: number, to: number, distance: number) => distance - clearanceAt(rods, i, to);
  const places = placesOf(rods.map(({ center }) => placed(center)));
  const partners = assignBy(standing, places, slack, costOf)?.partners ?? [];
  const holes = standing.map((_, i): FitHole => {
    const j = partners[i] ?? i;
    const { x, y } = (rods[j] as PlacedRod).center;
    return { x, y, clearance: clearanceAt(rods, i, j) };
  });
  const { value, theta, tx, ty } = fitPlate(holes, standing);
  const held = greatestOf(holes.map((hole, i) => millimetresBetween(hole, standing[i] as Point) - hole.clearance));
  const stays = twiceToLattice(held) <= 0;
  return {
    kind: "known",
    twice: twiceToLattice(value),
    shiftTwice: stays ? 0 : twiceToLattice(Math.hypot(tx, ty)),
    theta: stays ? 0 : theta,
    shift: stays ? { x: 0, y: 0 } : { x: tx, y: ty },
  };
}

/** Half a hole in millimetres: more than the clearance of any rod in it. */
function halfOf(hole: Input<Length>): number {
  return hole.kind === "given" ? hole.value / 2 / NM_PER_MM : 0;
}

/** Radial clearance of rod i in the base plate's hole at place j, millimetres: (H - d) / 2. */
export function clearanceAt(rods: readonly PlacedRod[], i: number, j: number): number {
  const hole = (rods[j] as PlacedRod).group.baseHole;
  const length = hole.kind === "given" ? hole.value : (0 as Length);
  return (length - (rods[i] as PlacedRod).group.rod.diameter) / 2 / NM_PER_MM;
}
