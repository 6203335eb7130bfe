/** Control points that are known on the plan and on the site. */
import type { ControlPoint, Offset } from "../job/index.js";
import type { JobContext } from "./job-model.js";

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

/** Why a rule about control points has nothing to hold. */
export function noControl({ plan }: JobContext): string {
  return plan?.transform === null
    ? "the job asks for no site coordinates"
    : "the way to the site is given by an origin and a bearing, without control points on the plan";
}
