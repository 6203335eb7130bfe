import type { PlacingRow } from "../../standards/index.js";
import { governingPairs } from "../geometry/pairs.js";
import type { CheckContext, Rule, RuleResult } from "../model.js";
import { PLACING_CLAUSE, placingOf } from "../placing.js";
import { compare, lacking, notApplicable } from "../results.js";
import type { RodHole } from "../rods.js";
import { rodHoles } from "../rods.js";
import { wordsIn } from "../words.js";

/**
 * The base plate's holes take rods that are off by the whole placing tolerance T. T is as-built: template play and cutting
 * error are part of it and are never added to it.
 */
export const placingClearance: Rule<"placing-clearance"> = {
  id: "placing-clearance",
  title: "radial clearance (H - d)/2 >= placing tolerance; by a spacing edition, the sum of two radial clearances",
  severity: "ask",
  measured: "the clearance of the rod in the base plate's hole",
  clause: () => PLACING_CLAUSE,
  edition: ({ job }) => job.editions.placing,
  check(context) {
    const rods = rodHoles(context).map((rod) => judged(context, rod));
    const judgeable = rods.filter((rod) => rod.kind === "judged");
    const others = rods.flatMap((rod) => (rod.kind === "judged" ? [] : [rod.result]));
    const positions = judgeable.filter(({ row }) => row.limits === "position").map((rod) => position(context, rod));
    const spacings = judgeable.filter(({ row }) => row.limits === "spacing");
    return [...others, ...positions, ...spacingRows(context, spacings)];
  },
};

interface Judged {
  readonly kind: "judged";
  readonly rod: RodHole;
  readonly row: PlacingRow;
  /** H - d: twice the radial clearance. */
  readonly clearance: number;
  readonly hole: number;
  readonly clause: string;
}

interface NotJudged {
  readonly kind: "not judged";
  readonly result: RuleResult;
}

function judged(context: CheckContext, rod: RodHole): Judged | NotJudged {
  const hole = rod.group.baseHole;
  if (hole.kind === "missing") return { kind: "not judged", result: lacking(rod.tag, [hole]) };
  const found = placingOf(context, rod);
  if (!found.found) return { kind: "not judged", result: found.result };
  const { row, clause } = found;
  return { kind: "judged", rod, row, clause, clearance: hole.value - rod.diameter, hole: hole.value };
}

function position({ job }: CheckContext, { rod, row, clause, clearance, hole }: Judged): RuleResult {
  const say = wordsIn(job.unit);
  const note = `(${say.length(hole)} - ${say.length(rod.diameter)}) / 2 against ${say.length(row.tolerance)}, ${row.item}`;
  return compare(rod.tag, clearance, ">=", 2 * row.tolerance, note, { clause });
}

/** Two rods may be off their spacing by the tolerance: the two radial clearances together take it up. */
function spacingRows({ job }: CheckContext, rods: readonly Judged[]): readonly RuleResult[] {
  if (rods.length === 1) return [notApplicable("plate", "the tolerance is on spacings, and there is one rod")];
  const say = wordsIn(job.unit);
  const limit = (a: Judged, b: Judged) => 2 * Math.max(a.row.tolerance, b.row.tolerance);
  return governingPairs(rods, (a, b) => a.clearance + b.clearance - limit(a, b)).map(({ first: a, second: b }) => {
    const sum = `(${say.length(a.hole)} - ${say.length(a.rod.diameter)}) / 2 + (${say.length(b.hole)} - ${say.length(b.rod.diameter)}) / 2`;
    const note = `${sum} against ${say.twice(limit(a, b))}, ${a.row.item}`;
    return compare(`${a.rod.tag}-${b.rod.tag}`, a.clearance + b.clearance, ">=", limit(a, b), note, {
      clause: a.clause,
    });
  });
}
