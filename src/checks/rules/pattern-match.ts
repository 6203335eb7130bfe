import type { Point } from "../../geometry/index.js";
import type { SecondSourceHole } from "../../job/model.js";
import { pointOf, twiceBetween } from "../measure.js";
import type { CheckContext, Rule, Verdict } from "../model.js";
import type { RodHole } from "../rods.js";
import { rodHoles } from "../rods.js";
import { compare, compareCounts, lacking, notChecked } from "../verdict.js";
import { wordsIn } from "../words.js";

/** Every hole of the base plate, as a second source gives it, against the template's nearest, and the other way round. */
export const patternMatch: Rule = {
  id: "pattern-match",
  title: "holes of the base plate from a second source = rods of the template, both ways, in number, place and size",
  severity: "stop",
  measured: "the pattern of the base plate's second source",
  clause: () => "every hole at its rod, both ways",
  edition: () => "geometry",
  check(context) {
    const { pattern } = context.base.basePlate;
    if (pattern.kind === "missing") return [lacking("plate", [pattern])];
    return matched(context, pattern.value.map(placed), rodHoles(context));
  },
};

interface Placed extends SecondSourceHole {
  /** BP1, BP2, ... in the order of the second source. */
  readonly tag: string;
  readonly center: Point;
}

function placed(hole: SecondSourceHole, index: number): Placed {
  return { ...hole, tag: `BP${index + 1}`, center: pointOf(hole.at) };
}

function matched(context: CheckContext, holes: readonly Placed[], rods: readonly RodHole[]): readonly Verdict[] {
  const count = compareCounts(
    "plate",
    holes.length,
    "=",
    rods.length,
    `${holes.length} holes in the second source, ${rods.length} rods`,
  );
  if (holes.length === 0) return [count];
  return [
    count,
    ...rods.map((rod) => distanceRow(context, rod, nearestOf(rod, holes))),
    ...holes.map((hole) => distanceRow(context, hole, nearestOf(hole, rods))),
    ...holes.map((hole) => sizeRow(context, hole, nearestOf(hole, rods).found)),
  ];
}

interface Spot {
  readonly tag: string;
  readonly center: Point;
}

interface Found<T> {
  readonly found: T;
  readonly twice: number;
}

/** The first of the nearest; the list is not empty. */
function nearestOf<T extends Spot>(spot: Spot, others: readonly T[]): Found<T> {
  return others
    .map((found): Found<T> => ({ found, twice: twiceBetween(spot.center, found.center) }))
    .reduce((least, other) => (other.twice < least.twice ? other : least));
}

function distanceRow({ job }: CheckContext, spot: Spot, { found, twice }: Found<Spot>): Verdict {
  const say = wordsIn(job.unit);
  const note = twice === 0 ? `${spot.tag} and ${found.tag} agree` : `nearest is ${found.tag}, ${say.full(twice)} away`;
  return compare(spot.tag, twice, "=", 0, note);
}

const SIZE_CLAUSE = "hole size of the second source = base-plate hole";

function sizeRow({ job }: CheckContext, hole: Placed, { tag, group }: RodHole): Verdict {
  const own = { clause: SIZE_CLAUSE };
  if (hole.diameter.kind === "missing")
    return notChecked(hole.tag, "the second source gives no size for this hole", own);
  if (group.baseHole.kind === "missing") return lacking(hole.tag, [group.baseHole], own);
  const [size, asked] = [hole.diameter.value, group.baseHole.value];
  const say = wordsIn(job.unit);
  return compare(
    hole.tag,
    2 * size,
    "=",
    2 * asked,
    `hole ${say.length(size)}, at rod ${tag} ${say.length(asked)}`,
    own,
  );
}
