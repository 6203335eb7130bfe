import type { Point } from "../../geometry/index.js";
import { twiceDistanceBetweenPoints } from "../../geometry/index.js";
import { FILE_ROUNDING, type PlacedHole, type PlacedSource, placeSource } from "../geometry/second-source.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, compareCounts, lacking, notChecked } from "../results.js";
import type { RodHole } from "../rods.js";
import { rodHoles } from "../rods.js";
import { BASE_HOLE, SECOND_SOURCE } from "../takes.js";
import { wordsIn } from "../words.js";

/** Every hole of the base plate, as a second source gives it, against the template's nearest, and the other way round. */
export const patternMatch: Rule<"pattern-match"> = {
  id: "pattern-match",
  plainName: "rods against second source",
  title: "holes of the base plate from a second source = rods of the template, both ways, in number, place and size",
  severity: "stop",
  measured: "the pattern of the base plate's second source",
  takes: ["pattern", ...SECOND_SOURCE, ...BASE_HOLE],
  clause: () => "every hole at its rod, both ways",
  edition: () => "geometry",
  check(context) {
    const { pattern } = context.base.basePlate;
    if (pattern.kind === "missing") return [lacking("plate", [pattern])];
    const rods = rodHoles(context);
    return matched(context, placeSource(pattern.value, context.base.basePlate, rods), rods);
  },
};

function matched(context: CheckContext, source: PlacedSource, rods: readonly RodHole[]): readonly RuleResult[] {
  const { holes, leftOut, remedy } = source;
  const others = leftOut.length === 0 ? "" : `; ${leftOut.join(", ")} left out, of no rod's size and near no rod`;
  const note = `${holes.length} holes in the second source, ${rods.length} rods${others}${remedy}`;
  const count = compareCounts("plate", holes.length, "=", rods.length, note);
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
    .map((found): Found<T> => ({ found, twice: twiceDistanceBetweenPoints(spot.center, found.center) }))
    .reduce((least, other) => (other.twice < least.twice ? other : least));
}

const FILE_CLAUSE = "every hole at its rod, both ways, within the rounding of the file";

function distanceRow({ job, base }: CheckContext, spot: Spot, { found, twice }: Found<Spot>): RuleResult {
  const say = wordsIn(job.unit);
  if (base.basePlate.patternOrigin !== "as listed") {
    const note = `nearest is ${found.tag}, ${say.full(twice)} away`;
    return compare(spot.tag, twice, "<=", 2 * FILE_ROUNDING, note, { clause: FILE_CLAUSE });
  }
  const note = twice === 0 ? `${spot.tag} and ${found.tag} agree` : `nearest is ${found.tag}, ${say.full(twice)} away`;
  return compare(spot.tag, twice, "=", 0, note);
}

const SIZE_CLAUSE = "hole size of the second source = base-plate hole";

function sizeRow({ job, base }: CheckContext, hole: PlacedHole, { tag, group }: RodHole): RuleResult {
  const own = { clause: SIZE_CLAUSE };
  if (hole.diameter.kind === "missing")
    return notChecked(hole.tag, "the second source gives no size for this hole", own);
  if (group.baseHole.kind === "missing") return lacking(hole.tag, [group.baseHole], own);
  const [size, asked] = [hole.diameter.value, group.baseHole.value];
  const say = wordsIn(job.unit);
  if (base.basePlate.patternOrigin !== "as listed") {
    const note = `hole ${say.length(size)}, at rod ${tag} ${say.length(asked)}: the difference`;
    return compare(hole.tag, 2 * Math.abs(size - asked), "<=", 2 * FILE_ROUNDING, note, own);
  }
  return compare(
    hole.tag,
    2 * size,
    "=",
    2 * asked,
    `hole ${say.length(size)}, at rod ${tag} ${say.length(asked)}`,
    own,
  );
}
