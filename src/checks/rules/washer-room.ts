import type { Contour } from "../../geometry/index.js";
import { acrossCorners, twiceDistanceBetweenPoints } from "../../geometry/index.js";
import type { Washer } from "../../job/model/job.js";
import { columnContour, twiceOutside } from "../geometry/measure.js";
import { governingPairs } from "../geometry/pairs.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { compare, known, lacking, notApplicable } from "../results.js";
import type { RodHole } from "../rods.js";
import { holeAndWasher, rodHoles, washerText, widestWasher } from "../rods.js";
import type { Words } from "../words.js";
import { wordsIn } from "../words.js";

/** Washers on the base plate clear each other and the column, each moved by the radial play of its hole. */
export const washerRoom: Rule<"washer-room"> = {
  id: "washer-room",
  title: "spacing of two rods >= (W1 + W2)/2 + ((H1 - d1) + (H2 - d2))/2, and washers clear of the column",
  severity: "ask",
  measured: "the room for the washers on the base plate",
  clause: () => "(W1 + W2)/2 + ((H1 - d1) + (H2 - d2))/2 <= s",
  edition: () => "geometry",
  check(context) {
    const rods = rodHoles(context);
    const washered = rods.flatMap(withWasher);
    return [...lackingRows(rods), ...pairRows(context, rods, washered), ...columnRows(context, washered)];
  },
};

interface Washered extends RodHole {
  readonly washer: Washer;
  /** Play H - d in the base plate's hole. */
  readonly basePlay: number;
}

function withWasher(rod: RodHole): Washered[] {
  const needs = known(holeAndWasher(rod.group));
  if (!needs.all) return [];
  const { hole, washer } = needs.values;
  return [{ ...rod, washer: widestWasher(washer), basePlay: hole - rod.diameter }];
}

function lackingRows(rods: readonly RodHole[]): readonly RuleResult[] {
  return rods.flatMap(({ tag, group }) => {
    const needs = known(holeAndWasher(group));
    return needs.all ? [] : [lacking(tag, needs.missing)];
  });
}

function pairRows(
  { job }: CheckContext,
  rods: readonly RodHole[],
  washered: readonly Washered[],
): readonly RuleResult[] {
  if (rods.length < 2) return [notApplicable("plate", "one rod has no neighbour")];
  const say = wordsIn(job.unit);
  const limit = (a: Washered, b: Washered) => a.washer.size + b.washer.size + a.basePlay + b.basePlay;
  const pairs = governingPairs(washered, (a, b) => twiceDistanceBetweenPoints(a.center, b.center) - limit(a, b));
  return pairs.map(({ first: a, second: b }) => {
    const washers = `washers (${say.length(a.washer.size)} + ${say.length(b.washer.size)}) / 2`;
    const note = `${washers} + play (${say.length(a.basePlay)} + ${say.length(b.basePlay)}) / 2`;
    return compare(`${a.tag}-${b.tag}`, twiceDistanceBetweenPoints(a.center, b.center), ">=", limit(a, b), note);
  });
}

const COLUMN_CLAUSE = "W/2 + (H - d)/2 <= distance to flange and web";

function columnRows({ job, base }: CheckContext, washered: readonly Washered[]): readonly RuleResult[] {
  if (base.column.kind === "missing") return [lacking("column", [base.column], { clause: COLUMN_CLAUSE })];
  const column = columnContour(base.column.value);
  return washered.map((rod) => besideColumn(rod, column, wordsIn(job.unit)));
}

function besideColumn({ tag, washer, basePlay, center }: Washered, column: Contour, say: Words): RuleResult {
  const twice = twiceOutside(center, column);
  const inside = twice < 0 ? "; the rod stands within the column's outline" : "";
  const note =
    `${washerText(washer, say.length)} / 2 + play ${say.length(basePlay)} / 2 against ${say.twice(twice)} ` +
    `to the column, fillets and welds not taken${corner(washer, basePlay, twice, say)}${inside}`;
  return compare(`${tag}-column`, twice, ">=", washer.size + basePlay, note, { clause: COLUMN_CLAUSE });
}

function corner(washer: Washer, play: number, distance: number, say: Words): string {
  if (washer.shape === "round") return "";
  const reach = acrossCorners(washer.size) + play;
  return `; turned, its corner reaches ${say.twice(reach)}${reach > distance ? " and meets the column" : ""}`;
}
