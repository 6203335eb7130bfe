/** The anchor-rod plan for other programs. */
import { writePlanDxf } from "../formats/plan-dxf.js";
import type { JobOutput } from "./model.js";
import { PLAN, planStem } from "./plan.js";

/** At true scale, in plan coordinates; nothing is cut by it. */
export const planDxf: JobOutput<"plan-dxf"> = {
  scope: "job",
  kind: "plan-dxf",
  role: "document",
  title: "Anchor-rod plan for other programs: R2000 at true scale, plan coordinates, rods as CIRCLE; not a cut file",
  drawn: false,
  top: PLAN,
  named: "plan/anchor-rod-plan_rev-REVISION[_NOT-RELEASED].dxf",
  needs: "plan",
  write: ({ job, plan }) => [{ path: `${planStem(job)}.dxf`, bytes: writePlanDxf(plan, job.unit) }],
};
