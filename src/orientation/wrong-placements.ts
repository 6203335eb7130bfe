/** Every wrong way round of a template: what it does to the rods, whether the outline shows it, whether the base plate tells. */
import type { Contour, Point } from "../geometry/index.js";
import { millimetresBetween, twiceToLattice } from "../geometry/index.js";
import type { Base } from "../job/model/job.js";
import type { PlacedRod } from "../rods/index.js";
import { greatestOf, leastOf } from "../units/extremes.js";
import type { Places } from "./bottleneck.js";
import { assignNearest, leastLargest, placesOf } from "./bottleneck.js";
import { dropOn, inPlace } from "./drop-on.js";
import type { Way, WayMove, WrongPlacement } from "./model.js";
import { outlineProbe } from "./outline-difference.js";
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
  const kinds = kindsOf(rods);
  const known: { readonly spots: readonly Spot[]; readonly judged: JudgedRods }[] = [];
  return wrongWays(base, outline).map((way) => {
    const moved = rods.map(({ center }) => way.move.apply(center));
    const spots = spotsOf(rods, moved);
    const same = known.find((each) => sameSpots(each.spots, spots));
    if (same !== undefined) return { way, ...same.judged };
    const judged = judgeRods(rods, moved, kinds, way);
    known.push({ spots, judged });
    return { way, ...judged };
  });
}

type JudgedRods = Omit<MovedRods, "way">;

/** The same wrong ways, held against an outline. */
export function judgeOutline(moved: readonly MovedRods[], outline: Contour): readonly WrongPlacement[] {
  const probe = outlineProbe(outline);
  return moved.map(({ way: { move, ...way }, ...each }) => {
    return { ...each, way, outlineTwice: rounded(probe.difference(move), way) };
  });
}

function rounded(twice: number, { exact }: Way): number {
  return !exact && twice <= ROUNDING ? 0 : twice;
}

/** Where a rod of a group stands, in tenths of a micrometre. */
interface Spot {
  readonly letter: string;
  readonly x: number;
  readonly y: number;
}

/** Ways that set the same rods, to 0.1 um, are judged once. */
function spotsOf(rods: readonly PlacedRod[], moved: readonly Point[]): readonly Spot[] {
  const spots = rods.map(({ group }, i): Spot => {
    const { x, y } = moved[i] as Point;
    return { letter: group.letter, x: Math.round(x * 1e4), y: Math.round(y * 1e4) };
  });
  return spots.sort(bySpot);
}

function bySpot(a: Spot, b: Spot): number {
  if (a.x !== b.x) return a.x - b.x;
  if (a.y !== b.y) return a.y - b.y;
  return a.letter < b.letter ? -1 : Number(a.letter > b.letter);
}

function sameSpots(a: readonly Spot[], b: readonly Spot[]): boolean {
  return a.every(({ letter, x, y }, i) => x === b[i]?.x && y === b[i].y && letter === b[i].letter);
}

/** Rods of one kind, which may stand for one another, and the places of all of them. */
interface Kind {
  readonly members: readonly number[];
  readonly places: Places;
}

function kindsOf(rods: readonly PlacedRod[]): readonly Kind[] {
  const kinds = new Map<string, number[]>();
  for (const [i, { group }] of rods.entries()) {
    const known = kinds.get(rodKind(group));
    if (known === undefined) kinds.set(rodKind(group), [i]);
    else known.push(i);
  }
  return [...kinds.values()].map((members) => {
    return { members, places: placesOf(members.map((i) => (rods[i] as PlacedRod).center)) };
  });
}

function judgeRods(rods: readonly PlacedRod[], moved: readonly Point[], kinds: readonly Kind[], way: Way): JudgedRods {
  const errorTwice = rounded(twiceToLattice(errorOf(moved, kinds)), way);
  return {
    errorTwice,
    swapped: errorTwice === 0 ? [] : swaps(rods, moved),
    dropsOn: errorTwice === 0 ? inPlace(rods) : dropOn(rods, moved),
  };
}

/** Largest distance from a moved rod to the place of one of its own kind, in the best assignment; millimetres. */
function errorOf(moved: readonly Point[], kinds: readonly Kind[]): number {
  const errors = kinds.map(({ members, places }) => {
    const from = members.map((i) => moved[i] as Point);
    return leastLargest(from, places) ?? Infinity;
  });
  return greatestOf(errors);
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
    const nearest = leastOf(own.map((center) => millimetresBetween(at, center)));
    return millimetresBetween(at, other.center) < nearest ? [`${rod.tag} at ${other.tag}`] : [];
  });
}
