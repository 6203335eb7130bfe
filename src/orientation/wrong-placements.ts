/** Every wrong way round of a template: what it does to the rods, whether the outline shows it, whether the base plate tells. */
import type { Contour, Point } from "../geometry/index.js";
import { millimetresBetween, twiceToLattice } from "../geometry/index.js";
import type { Base } from "../job/model/job.js";
import type { PlacedRod } from "../rods/index.js";
import { assignNearest, placesOf } from "./bottleneck.js";
import { dropOn, inPlace } from "./drop-on.js";
import type { Way, WayMove, WrongPlacement } from "./model.js";
import { outlineDifference } from "./outline-difference.js";
import { rodKind } from "./rod-kind.js";
import { wrongWays } from "./ways.js";

/** Twice the distance, in nanometres, that roundings to the lattice make of nothing where a way is not exact: 0.1 um. */
const ROUNDING = 200;

/** What a wrong way round does to the rods, whatever the outline. */
export interface MovedRods extends Omit<WrongPlacement, "outlineTwice"> {
  readonly way: WayMove;
}

/** Every wrong way round of a base's template with this outline, in a fixed order. */
export function wrongPlacements(base: Base, rods: readonly PlacedRod[], outline: Contour): readonly WrongPlacement[] {
  return judgeOutline(movedRods(base, rods, outline), outline);
}

/** Every wrong way round with what it does to the rods; the outline decides which ways there are. */
export function movedRods(base: Base, rods: readonly PlacedRod[], outline: Contour): readonly MovedRods[] {
  const known = new Map<string, Omit<MovedRods, "way">>();
  return wrongWays(base, outline).map((way) => {
    const moved = rods.map(({ center }) => way.move.apply(center));
    const key = keyOf(rods, moved);
    const found = known.get(key) ?? judgeRods(rods, moved, way);
    known.set(key, found);
    return { way, ...found };
  });
}

/** The same wrong ways, held against an outline. */
export function judgeOutline(moved: readonly MovedRods[], outline: Contour): readonly WrongPlacement[] {
  return moved.map(({ way: { move, ...way }, ...each }) => {
    return { ...each, way, outlineTwice: rounded(outlineDifference(outline, move), way) };
  });
}

function rounded(twice: number, { exact }: Way): number {
  return !exact && twice <= ROUNDING ? 0 : twice;
}

/** Ways that set the same rods, to 0.1 um, are judged once. */
function keyOf(rods: readonly PlacedRod[], moved: readonly Point[]): string {
  return moved
    .map(({ x, y }, i) => `${rods[i]?.group.letter} ${Math.round(x * 1e4) + 0} ${Math.round(y * 1e4) + 0}`)
    .sort()
    .join(";");
}

function judgeRods(rods: readonly PlacedRod[], moved: readonly Point[], way: Way): Omit<MovedRods, "way"> {
  const errorTwice = rounded(twiceToLattice(errorWithin(rods, moved, ({ group }) => rodKind(group))), way);
  const holes = (rod: PlacedRod) => String(rod.group.hole.value);
  const sameHoles = errorTwice === 0 || rounded(twiceToLattice(errorWithin(rods, moved, holes)), way) === 0;
  return {
    errorTwice,
    sameHoles,
    swapped: errorTwice === 0 ? [] : swaps(rods, moved),
    dropsOn: errorTwice === 0 ? inPlace(rods) : dropOn(rods, moved),
  };
}

/** Largest distance from a moved rod to the place of one of its own kind, in the best assignment; millimetres. */
function errorWithin(rods: readonly PlacedRod[], moved: readonly Point[], kindOf: (rod: PlacedRod) => string): number {
  const kinds = new Map<string, number[]>();
  for (const [i, rod] of rods.entries()) kinds.set(kindOf(rod), [...(kinds.get(kindOf(rod)) ?? []), i]);
  const errors = [...kinds.values()].map((members) => {
    const from = members.map((i) => moved[i] as Point);
    const to = members.map((i) => (rods[i] as PlacedRod).center);
    return assignNearest(from, placesOf(to))?.worst ?? Infinity;
  });
  return Math.max(...errors);
}

/** Rods that stand where one of another kind belongs: nearer to it than to any of their own kind. */
function swaps(rods: readonly PlacedRod[], moved: readonly Point[]): readonly string[] {
  if (new Set(rods.map(({ group }) => rodKind(group))).size < 2) return [];
  const partners = assignNearest(moved, placesOf(rods.map(({ center }) => center)))?.partners;
  return rods.flatMap((rod, i) => {
    const other = rods[partners?.[i] ?? i];
    if (other === undefined || rodKind(other.group) === rodKind(rod.group)) return [];
    const own = rods.filter(({ group }) => rodKind(group) === rodKind(rod.group)).map(({ center }) => center);
    const at = moved[i] as Point;
    const nearest = Math.min(...own.map((center) => millimetresBetween(at, center)));
    return millimetresBetween(at, other.center) < nearest ? [`${rod.tag} at ${other.tag}`] : [];
  });
}
