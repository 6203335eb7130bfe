import { toLattice } from "../../geometry/index.js";
import type { GroupPlacingRow } from "../../standards/index.js";
import { findGroupPlacing } from "../../standards/index.js";
import { nanometres } from "../../units/index.js";
import type { ColumnLine } from "../geometry/column-lines.js";
import { columnLines } from "../geometry/column-lines.js";
import { PLAN, placedBases } from "../geometry/placed.js";
import type { JobContext, JobRule } from "../job-model.js";
import type { RuleResult } from "../model.js";
import { notApplicable, notChecked } from "../results.js";
import { counted, wordsIn } from "../words.js";

/** What the errors of a column line's groups may add up to as placed: for the survey; the plan itself cannot be off. */
export const lineAccumulation: JobRule<"line-accumulation"> = {
  id: "line-accumulation",
  plainName: "error along column line",
  title: "error accumulated along a column line as placed, by the placing edition: what the survey is judged by",
  severity: "ask",
  measured: "the error accumulated along a column line",
  takes: [],
  clause: ({ job }) => {
    const found = findGroupPlacing(job.editions.placing, "accumulated along a column line");
    return found.found ? found.clause : "accumulation along a column line";
  },
  edition: ({ job }) => job.editions.placing,
  check(context) {
    if (placedBases(context).length === 0) return [];
    const { placing } = context.job.editions;
    const found = findGroupPlacing(placing, "accumulated along a column line");
    if (!found.found) return [notApplicable(PLAN, `${placing} has no accumulation along a column line here`)];
    const lines = columnLines(context);
    if (lines.length === 0) return [notApplicable(PLAN, "no line has two groups")];
    return lines.map((line) => awaitSurvey(context, line, found.row));
  },
};

function awaitSurvey({ job }: JobContext, { name, bases, spacings }: ColumnLine, row: GroupPlacingRow): RuleResult {
  const say = wordsIn(job.unit);
  const length = toLattice(spacings.reduce((sum, spacing) => sum + spacing, 0));
  const allowed = allowedAlong(length, row);
  const note = `${counted(bases.length, "group")} along ${say.length(length)} ${job.unit}: at most ${say.length(allowed)} may add up as placed; not checked until the rods are surveyed`;
  return notChecked(`line ${name}`, note);
}

/** So much for each length of line, never more than the total. Rounded down to 1 nm. */
export function allowedAlong(length: number, { tolerance, growth }: GroupPlacingRow): number {
  if (growth === null) return tolerance;
  return nanometres(Math.min(tolerance, Math.floor((length / growth.per) * growth.tolerance)));
}
