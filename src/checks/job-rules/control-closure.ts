import type { Unit } from "../../units/index.js";
import { NM_PER_INCH, NM_PER_MM, roundSymmetric } from "../../units/index.js";
import type { ControlTie } from "../control-ties.js";
import { controlTies, grossTwice, judgeControl, noControl, takesPart } from "../control-ties.js";
import { PLAN } from "../geometry/placed.js";
import type { JobContext, JobRule } from "../job-model.js";
import type { RuleResult } from "../model.js";
import { notApplicable } from "../results.js";
import { suspectRatio } from "../slips.js";
import { wordsIn } from "../words.js";

/** The distance between two control points on the site and on the plan: wrong units, scale or points show here. */
export const controlClosure: JobRule<"control-closure"> = {
  id: "control-closure",
  plainName: "control points, closure",
  title:
    "distance between two control points on the site less that on the plan x scale factor <= the job's site.tolerance, and a tenth of it in any case; the files in site coordinates are then held",
  severity: "stop",
  measured: "the misclosure between two control points",
  takes: [],
  clause: () => "site.tolerance",
  edition: () => "job",
  check(context) {
    const { plan } = context;
    if (plan === null) return [];
    const ties = controlTies(context);
    if (ties.length < 2 || plan.transform === null) return [notApplicable(PLAN, noControl(context))];
    return pairsOf(ties).map(([a, b]) => judge(context, a, b));
  },
};

const ALL_PAIRS = 6;

/** Every pair of a few; of many, each with the next and the last with the first. */
function pairsOf(ties: readonly ControlTie[]): readonly (readonly [ControlTie, ControlTie])[] {
  if (ties.length <= ALL_PAIRS) return ties.flatMap((a, i) => ties.slice(i + 1).map((b) => [a, b] as const));
  return ties.map((a, i) => [a, ties[(i + 1) % ties.length] ?? a] as const);
}

function judge(context: JobContext, a: ControlTie, b: ControlTie): RuleResult {
  const { job, plan } = context;
  const say = wordsIn(job.unit);
  const factor = plan?.transform?.scaleFactor ?? 1;
  const onSite = Math.hypot(a.point.northing - b.point.northing, a.point.easting - b.point.easting);
  const onPlan = Math.hypot(a.plan.x - b.plan.x, a.plan.y - b.plan.y);
  const off = Math.abs(roundSymmetric(onSite - onPlan * factor));
  const ratio = (onSite / (onPlan * factor)).toFixed(6);
  const note = `${say.length(off)} ${job.unit} over ${spanText(onPlan, job.unit)}; site / plan = ${ratio}${suspicion(onSite / onPlan)}`;
  const subject = `${a.point.name} - ${b.point.name}`;
  const severity = [a, b].every(({ point }) => takesPart(context, point.name)) ? "stop" : "advise";
  return judgeControl(plan, { subject, off, note, gross: grossTwice(onPlan, factor), severity });
}

/** Feet beside inches, metres beside millimetres. */
function spanText(nm: number, unit: Unit): string {
  return unit === "in" ? `${(nm / NM_PER_INCH / 12).toFixed(3)} ft` : `${(nm / NM_PER_MM / 1000).toFixed(3)} m`;
}

function suspicion(ratio: number): string {
  const words = suspectRatio(ratio);
  return words === "" ? "" : `: ${words}`;
}
