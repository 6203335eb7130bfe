import type { SiteTransform } from "../../plan/index.js";
import { roundSymmetric } from "../../units/index.js";
import { noControl } from "../control-ties.js";
import { PLAN } from "../geometry/placed.js";
import type { JobContext, JobRule } from "../job-model.js";
import type { RuleResult } from "../model.js";
import { compare, notApplicable, notChecked } from "../results.js";
import { wordsIn } from "../words.js";

/** What is left at each control point after the plan is laid on the site as well as it fits. */
export const controlResidual: JobRule<"control-residual"> = {
  id: "control-residual",
  title: "distance of a control point as given from where the plan puts it <= the job's site.tolerance",
  severity: "advise",
  measured: "the residual of a control point",
  clause: () => "site.tolerance",
  edition: () => "job",
  check(context) {
    const { plan } = context;
    if (plan === null) return [];
    const residuals = plan.transform?.residuals ?? [];
    if (residuals.length === 0) return [notApplicable(PLAN, noControl(context))];
    return residuals.map((residual) => judge(context, residual));
  },
};

function judge({ job, plan }: JobContext, { name, dn, de }: SiteTransform["residuals"][number]): RuleResult {
  const say = wordsIn(job.unit);
  const residual = roundSymmetric(Math.hypot(dn, de));
  const note = `residual ${say.length(residual)} ${job.unit}: ${say.length(dn)} north, ${say.length(de)} east, as given less as computed`;
  const tolerance = plan?.spec.controlTolerance;
  if (tolerance?.kind !== "given")
    return notChecked(name, `${note}; ${tolerance?.why ?? ""} (${tolerance?.key ?? ""})`);
  return compare(name, 2 * residual, "<=", 2 * tolerance.value, note);
}
