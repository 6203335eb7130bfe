/** The rules of the whole job, run like those of a base. */
import type { JobContext, JobRule } from "./job-model.js";
import type { CheckRow } from "./model.js";
import { finishRows, judge } from "./run.js";

/** Rows in the order of the rules, then of their subjects. An answer to a row of the job names its subject. */
export function runJobRules(rules: readonly JobRule[], context: JobContext): readonly CheckRow[] {
  const rows = rules.flatMap((rule) => {
    const [clause, edition] = [rule.clause(context), rule.edition(context)];
    return rule.check(context).map((result) => judge(rule, result, clause, edition));
  });
  return finishRows(rows, context.job, null);
}
