import type { CheckContext, Rule, RuleResult } from "../model.js";
import { PLACING_CLAUSE, placingOf } from "../placing.js";
import { compare } from "../results.js";
import type { RodHole } from "../rods.js";
import { isOverCastRods, notForSettingPlate, playOf, rodHoles } from "../rods.js";
import { HOLE } from "../takes.js";
import { percent, wordsIn } from "../words.js";

/** How far a rod can sit off in its hole, as a share of the placing tolerance of the named edition. */
export const rodPlay: Rule<"rod-play"> = {
  id: "rod-play",
  plainName: "play of rod in template",
  title: "radial play (h - d)/2, or the mean play of two rods, as a share of the placing tolerance",
  severity: "advise",
  measured: "the play of the rod in the template",
  takes: [...HOLE],
  clause: () => PLACING_CLAUSE,
  edition: ({ job }) => job.editions.placing,
  check(context) {
    if (isOverCastRods(context)) return [notForSettingPlate("plate")];
    const rods = rodHoles(context);
    return rods.map((rod) => play(context, rod, loosestOther(rod, rods)));
  },
};

/** The largest play among the other rods; null for a single rod. */
function loosestOther(rod: RodHole, rods: readonly RodHole[]): number | null {
  return rods.reduce<number | null>(
    (loosest, other) => (other === rod ? loosest : Math.max(loosest ?? playOf(other), playOf(other))),
    null,
  );
}

/** A position tolerance is held against the radial play, a spacing tolerance against the mean play of two rods. */
function play(context: CheckContext, rod: RodHole, other: number | null): RuleResult {
  const found = placingOf(context, rod);
  if (!found.found) return found.result;
  const own = playOf(rod);
  const pair = own + (other ?? own);
  const value = found.row.limits === "position" ? own : pair;
  const say = wordsIn(context.job.unit);
  const share = percent(value, 2 * found.row.tolerance);
  const two = other === null ? "" : `; two rods can come together or apart by ${say.twice(pair)}`;
  const note = `radial play ${say.twice(own)}: ${share} of the ${found.row.limits} tolerance ${say.length(found.row.tolerance)}${two}`;
  return compare(rod.tag, value, "<=", 2 * found.row.tolerance, note, { clause: found.clause });
}
