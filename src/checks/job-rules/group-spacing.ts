import { toLattice } from "../../geometry/index.js";
import { findGroupPlacing } from "../../standards/index.js";
import { greatestOf, leastOf } from "../../units/extremes.js";
import type { ColumnLine } from "../geometry/column-lines.js";
import { columnLines } from "../geometry/column-lines.js";
import { PLAN, placedBases } from "../geometry/placed.js";
import type { JobContext, JobRule } from "../job-model.js";
import type { RuleResult } from "../model.js";
import { notApplicable, notChecked } from "../results.js";
import { counted, wordsIn } from "../words.js";

/** What adjacent group centres may be off as placed: for the survey; the plan itself cannot be off. */
export const groupSpacing: JobRule<"group-spacing"> = {
  id: "group-spacing",
  plainName: "spacing of groups",
  title: "adjacent group centres as placed, by the placing edition: what the survey is judged by",
  severity: "ask",
  measured: "the distance between adjacent group centres",
  takes: [],
  clause: ({ job }) => {
    const found = findGroupPlacing(job.editions.placing, "adjacent groups");
    return found.found ? found.clause : "adjacent group centres";
  },
  edition: ({ job }) => job.editions.placing,
  check(context) {
    if (placedBases(context).length === 0) return [];
    const { placing } = context.job.editions;
    const found = findGroupPlacing(placing, "adjacent groups");
    if (!found.found) return [notApplicable(PLAN, `${placing} has no tolerance of adjacent group centres here`)];
    const lines = columnLines(context);
    if (lines.length === 0) return [notApplicable(PLAN, "no line has two groups")];
    return lines.map((line) => awaitSurvey(context, line, found.row.tolerance));
  },
};

function awaitSurvey({ job }: JobContext, { name, spacings }: ColumnLine, tolerance: number): RuleResult {
  const say = wordsIn(job.unit);
  const [least, most] = [leastOf(spacings), greatestOf(spacings)].map((mm) => say.length(toLattice(mm)));
  const range = least === most ? least : `${least} to ${most}`;
  const note = `${counted(spacings.length, "spacing")} of ${range} ${job.unit}, each within ${say.length(tolerance)} as placed: not checked until the rods are surveyed`;
  return notChecked(`line ${name}`, note);
}
