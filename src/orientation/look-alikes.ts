/**
 * Marks whose templates could be taken for one another. Patterns that agree exactly, whichever way they are turned or turned
 * over, are gathered first; of the others only those are laid over each other whose rods lie at nearly the same distances
 * from the working point, which no turn changes. So neither pairs of marks nor pairs of rods are all tried.
 */
import type { Move, Point } from "../geometry/index.js";
import { toLattice, twiceToLattice } from "../geometry/index.js";
import type { OutlinedBase, PlacedRod } from "../rods/index.js";
import type { Length } from "../units/index.js";
import { NM_PER_MM } from "../units/length.js";
import type { Places } from "./bottleneck.js";
import { leastLargest, placesOf } from "./bottleneck.js";
import type { WayMove } from "./model.js";
import { sameTemplate } from "./same-template.js";
import { patternWays, pitchText } from "./ways.js";

/** Marks whose patterns agree exactly. `differs`: what of their templates does not, empty when one would do for all. */
export interface SameTemplates {
  readonly marks: readonly string[];
  /** How the later ones are laid on the first: "as it is", "turned 90". */
  readonly how: string;
  readonly differs: readonly string[];
}

/** Two sets of marks whose patterns nearly agree. */
export interface LookAlike {
  readonly marks: readonly [readonly string[], readonly string[]];
  /** Twice the largest rod error when a template of the first is set for the second, nanometres. */
  readonly errorTwice: number;
  /** Which way round the error is that small: "as it is", "turned 90", "face down". */
  readonly how: string;
}

/** A pattern and all marks that have it. */
interface Shared {
  readonly first: OutlinedBase;
  readonly members: readonly OutlinedBase[];
  readonly groups: readonly SizeGroup[];
  /** Pitches of its bolt circles. */
  readonly pitches: string;
}

/** Rods of one diameter with their distances from the working point, ascending. */
interface SizeGroup {
  readonly size: number;
  readonly places: Places;
  readonly radii: readonly number[];
}

/** Patterns that agree, and pairs whose largest rod error is below `limit`, each in the order of the marks. */
export function findLookAlikes(
  made: readonly OutlinedBase[],
  limit: Length,
): { readonly same: readonly SameTemplates[]; readonly near: readonly LookAlike[] } {
  const shared = sharePatterns(made);
  const same = shared.flatMap(({ members }) => sameTemplates(members));
  const near = nearPairs(shared, limit / NM_PER_MM).filter(({ errorTwice }) => errorTwice < 2 * limit);
  return { same, near };
}

function sharePatterns(made: readonly OutlinedBase[]): readonly Shared[] {
  const byPattern = new Map<string, OutlinedBase[]>();
  const canonical = new Map<string, string>();
  for (const each of made) {
    const typed = patternKey(each.rods, AS_IT_IS);
    const key = canonical.get(typed) ?? canonicalKey(each.rods);
    canonical.set(typed, key);
    const known = byPattern.get(key);
    if (known === undefined) byPattern.set(key, [each]);
    else known.push(each);
  }
  return [...byPattern.values()].flatMap((members) => {
    const [first] = members;
    return first === undefined
      ? []
      : [{ first, members, groups: sizeGroups(first.rods), pitches: pitchText(first.base) }];
  });
}

/** The same text for patterns that agree under a quarter turn or a turn-over: the least of the eight. */
function canonicalKey(rods: readonly PlacedRod[]): string {
  return EIGHT.map((image) => patternKey(rods, image)).sort()[0] ?? "";
}

type Image = (x: number, y: number) => Point;

function patternKey(rods: readonly PlacedRod[], image: Image): string {
  return rods
    .map(({ center, group }) => {
      const { x, y } = image(toLattice(center.x), toLattice(center.y));
      return `${group.rod.diameter}:${x + 0},${y + 0}`;
    })
    .sort()
    .join(";");
}

const AS_IT_IS: Image = (x, y) => ({ x, y });

const EIGHT: readonly Image[] = [
  AS_IT_IS,
  (x, y) => ({ x: -y, y: x }),
  (x, y) => ({ x: -x, y: -y }),
  (x, y) => ({ x: y, y: -x }),
  (x, y) => ({ x: -x, y }),
  (x, y) => ({ x: -y, y: -x }),
  (x, y) => ({ x, y: -y }),
  (x, y) => ({ x: y, y: x }),
];

function sizeGroups(rods: readonly PlacedRod[]): readonly SizeGroup[] {
  const bySize = new Map<number, Point[]>();
  for (const { center, group } of rods) {
    const { diameter } = group.rod;
    bySize.set(diameter, [...(bySize.get(diameter) ?? []), center]);
  }
  return [...bySize]
    .sort(([a], [b]) => a - b)
    .map(([size, points]) => ({ size, places: placesOf(points), radii: points.map(radiusOf).sort((a, b) => a - b) }));
}

function radiusOf({ x, y }: Point): number {
  return Math.sqrt(x * x + y * y);
}

/** Marks of one pattern, gathered by which templates are the same; each later set is held against the first. */
function sameTemplates(members: readonly OutlinedBase[]): readonly SameTemplates[] {
  const [first, ...others] = members;
  if (first === undefined || others.length === 0) return [];
  const byText = new Map<string, { how: string; differs: readonly string[]; marks: string[] }>();
  for (const other of others) {
    const { how, differs } = sameTemplate(first, other);
    const text = `${how}|${differs.join()}`;
    const known = byText.get(text);
    if (known === undefined) byText.set(text, { how, differs, marks: [other.base.mark] });
    else known.marks.push(other.base.mark);
  }
  return [...byText.values()].map(({ how, differs, marks }) => ({ how, differs, marks: [first.base.mark, ...marks] }));
}

/** Within patterns of the same sizes and counts: a window over the largest distance, then all distances, then the rods. */
function nearPairs(shared: readonly Shared[], limit: number): readonly LookAlike[] {
  const found: { readonly at: number; readonly near: LookAlike }[] = [];
  const waysOf = rememberWays();
  for (const bucket of buckets(shared)) {
    const sorted = bucket.map((index) => ({ index, shared: shared[index] as Shared })).sort(byFirstRadius);
    sorted.forEach((a, i) => {
      for (let j = i + 1; j < sorted.length; j++) {
        const b = sorted[j] as (typeof sorted)[number];
        if (firstRadius(b.shared) - firstRadius(a.shared) >= limit) break;
        const [earlier, later] = a.index < b.index ? [a, b] : [b, a];
        const near = layOver(earlier.shared, later.shared, waysOf, limit);
        if (near !== null) found.push({ at: earlier.index * shared.length + later.index, near });
      }
    });
  }
  return found.sort((a, b) => a.at - b.at).map(({ near }) => near);
}

type WaysOf = (a: Shared, b: Shared) => readonly WayMove[];

/** Ways of laying one pattern over another, worked out once for all pairs with the same bolt circles. */
function rememberWays(): WaysOf {
  const known = new Map<string, readonly WayMove[]>();
  return (a, b) => {
    const key = `${a.pitches};${b.pitches}`;
    const found = known.get(key) ?? patternWays([a.first.base, b.first.base]);
    known.set(key, found);
    return found;
  };
}

function buckets(shared: readonly Shared[]): readonly (readonly number[])[] {
  const byCounts = new Map<string, number[]>();
  shared.forEach(({ groups }, index) => {
    const key = groups.map(({ size, radii }) => `${size}x${radii.length}`).join(";");
    byCounts.set(key, [...(byCounts.get(key) ?? []), index]);
  });
  return [...byCounts.values()];
}

function firstRadius({ groups }: Shared): number {
  return groups[0]?.radii.at(-1) ?? 0;
}

function byFirstRadius(a: { readonly shared: Shared }, b: { readonly shared: Shared }): number {
  return firstRadius(a.shared) - firstRadius(b.shared);
}

/** The way in which the first pattern comes nearest to the second; null where none comes within the limit. */
function layOver(a: Shared, b: Shared, waysOf: WaysOf, limit: number): LookAlike | null {
  const apart = a.groups.some(({ radii }, g) =>
    radii.some((radius, i) => Math.abs(radius - (b.groups[g]?.radii[i] ?? Infinity)) >= limit),
  );
  if (apart) return null;
  let [best, how]: [number, string] = [limit, ""];
  for (const { words, move } of waysOf(a, b)) {
    const worst = largestError(a.groups, b.groups, move, best);
    if (worst < best) [best, how] = [worst, words];
  }
  if (best === limit) return null;
  const marks = [a, b].map(({ members }) => members.map(({ base }) => base.mark)) as [string[], string[]];
  return { marks, errorTwice: twiceToLattice(best), how };
}

function largestError(from: readonly SizeGroup[], to: readonly SizeGroup[], move: Move, limit: number): number {
  let worst = 0;
  for (const [g, { places }] of from.entries()) {
    const other = to[g];
    const found = other === undefined ? null : leastLargest(places.points.map(move.apply), other.places, limit);
    if (found === null) return Infinity;
    worst = Math.max(worst, found);
  }
  return worst;
}
