import type { Offset } from "../../job/index.js";
import type { SiteTransform } from "../../plan/index.js";
import { greatestOf, NM_PER_MM, roundSymmetric } from "../../units/index.js";
import type { ControlTie } from "../control-ties.js";
import { controlTies, grossTwice, judgeControl, noControl } from "../control-ties.js";
import { PLAN } from "../geometry/placed.js";
import type { JobContext, JobRule } from "../job-model.js";
import type { RuleResult } from "../model.js";
import { notApplicable } from "../results.js";
import { wordsIn } from "../words.js";

/** What is left at each control point after the plan is laid on the site as well as it fits. */
export const controlResidual: JobRule<"control-residual"> = {
  id: "control-residual",
  plainName: "control points, residual",
  title:
    "distance of a control point as given from where the plan puts it <= the job's site.tolerance, and a tenth of its distance to the others in any case; the files in site coordinates are then held",
  severity: "stop",
  measured: "the residual of a control point",
  takes: [],
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

function judge(context: JobContext, { name, dn, de }: SiteTransform["residuals"][number]): RuleResult {
  const { job, plan } = context;
  const say = wordsIn(job.unit);
  const residual = roundSymmetric(Math.hypot(dn, de));
  const gross = grossTwice(reachOf(context, name), plan?.transform?.scaleFactor ?? 1);
  const slip = 2 * residual > gross && isMirrored(context) ? MIRRORED : "";
  const note = `residual ${say.length(residual)} ${job.unit}: ${say.length(dn)} north, ${say.length(de)} east, as given less as computed${slip}`;
  return judgeControl(plan, { subject: name, off: residual, note, gross, severity: "stop" });
}

const MIRRORED = "; the points go round the other way than on the plan: are north and east swapped?";

/** Turn of a triangle of points, twice its area, left positive. */
function turnOf(a: Offset, b: Offset, c: Offset): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/** True where the first three points that make a triangle turn the other way on the site, by an area as large to a tenth. */
function isMirrored(context: JobContext): boolean {
  const [a, b, ...others] = controlTies(context);
  if (a === undefined || b === undefined) return false;
  const onSite = ({ point }: ControlTie) => ({ x: point.easting, y: point.northing });
  return others.some((c) => {
    const [plan, site] = [turnOf(a.plan, b.plan, c.plan), turnOf(onSite(a), onSite(b), onSite(c))];
    return plan !== 0 && Math.abs(site / plan + 1) < 0.1;
  });
}

/** The distance on the plan to the farthest other control point; of one alone the size of the plan. In nanometres. */
function reachOf(context: JobContext, name: string): number {
  const ties = controlTies(context);
  const own = ties.find(({ point }) => point.name === name);
  const away = ties.map(({ plan }) => (own === undefined ? 0 : Math.hypot(plan.x - own.plan.x, plan.y - own.plan.y)));
  const farthest = greatestOf(away, 0);
  const extent = context.plan?.extent;
  if (farthest > 0 || extent === undefined) return farthest;
  return Math.hypot(extent.x1 - extent.x0, extent.y1 - extent.y0) * NM_PER_MM;
}
