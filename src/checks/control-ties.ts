/** Control points that are known on the plan and on the site. */
import type { ControlPoint, Offset } from "../job/index.js";
import type { Severity } from "../job/model/job.js";
import type { Plan } from "../plan/model.js";
import type { JobContext } from "./job-model.js";
import type { RuleResult } from "./model.js";
import { compare, notChecked } from "./results.js";

/** A control point with its place on the plan. */
export interface ControlTie {
  readonly point: ControlPoint;
  readonly plan: Offset;
}

/** Control points with a place on the plan, in the order written. */
export function controlTies({ plan }: JobContext): readonly ControlTie[] {
  return (plan?.control ?? []).flatMap((point): ControlTie[] =>
    point.plan.kind === "given" ? [{ point, plan: point.plan.value }] : [],
  );
}

/**
 * Twice the largest misclosure over a distance on the plan that leaves site / plan between 0.9 and 1.1: what the surveyor's
 * scale factor itself may be. Beyond it the points are not the same points, whatever tolerance the job names.
 */
export function grossTwice(nmOnPlan: number, scaleFactor: number): number {
  return Math.floor((nmOnPlan * scaleFactor) / 5);
}

const GROSS = { clause: "a tenth of the distance, as the scale factor may be from 0.9 to 1.1", edition: "geometry" };

/** How far a control point is off, in nanometres, and what it is held against. */
interface ControlError {
  readonly subject: string;
  readonly off: number;
  readonly note: string;
  /** As `grossTwice`. */
  readonly gross: number;
  readonly severity: Severity;
}

/** By the job's tolerance, or by what is gross where that is less or where the job names none. */
export function judgeControl(plan: Plan | null, { subject, off, note, gross, severity }: ControlError): RuleResult {
  const tolerance = plan?.spec.controlTolerance;
  const stated = tolerance?.kind === "given" ? 2 * tolerance.value : Number.POSITIVE_INFINITY;
  if (stated <= gross) return compare(subject, 2 * off, "<=", stated, note, { severity });
  if (tolerance?.kind === "given" || 2 * off > gross)
    return compare(subject, 2 * off, "<=", gross, note, { severity, ...GROSS });
  const missing = tolerance === undefined ? [] : [tolerance.key];
  return notChecked(subject, `${note}; ${tolerance?.why ?? ""} (${tolerance?.key ?? ""})`, { severity, missing });
}

/** True for a control point that the way from plan to site is made from, or held against. */
export function takesPart({ plan }: JobContext, name: string): boolean {
  const transform = plan?.spec.transform;
  return transform?.kind === "points" ? transform.points.includes(name) : true;
}

/** Why a rule about control points has nothing to hold. */
export function noControl({ plan }: JobContext): string {
  return plan?.transform === null
    ? "the job asks for no site coordinates"
    : "the way to the site is given by an origin and a bearing, without control points on the plan";
}
