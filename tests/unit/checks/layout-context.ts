/** Contexts of the job's rules: bases go through the real pattern, plate and site stages. */
import type { CheckRow, JobContext, JobRule } from "../../../src/checks/index.js";
import { runJobRules } from "../../../src/checks/job-run.js";
import type { Base, Job } from "../../../src/job/model/job.js";
import type { PlanSpec } from "../../../src/job/model/plan.js";
import { placeRods } from "../../../src/rods/index.js";
import { makePlateOutline } from "../../../src/template/index.js";
import type { Length } from "../../../src/units/index.js";
import { inches, nanometres } from "../../../src/units/index.js";
import { baseFixture } from "../../fixture.js";
import { placementAt, planJob } from "../../setting-out-plan.js";

/** The context of a job with that site. */
export function layoutContext(
  site: Partial<PlanSpec> = {},
  bases: readonly Base[] = [baseFixture()],
  changes: Partial<Job> = {},
): JobContext {
  const { job, plan } = planJob(site, bases);
  const outlined = job.bases.map((base) => {
    const rods = placeRods(base);
    const outline = rods.ok ? makePlateOutline(job, base, rods.value) : rods;
    if (!rods.ok || !outline.ok) throw new Error(outline.findings.map(({ message }) => message).join("; "));
    return { base, rods: rods.value, outline: outline.value };
  });
  return { job: { ...job, ...changes }, plan, bases: outlined };
}

/** The rows of one rule of the job. */
export function jobRowsOf(rule: JobRule, ...context: Parameters<typeof layoutContext>): readonly CheckRow[] {
  return runJobRules([rule], layoutContext(...context));
}

/** Two bases B1 on the crossing A-1, the second off it by `x` nanometres and turned. */
export function twoApart(x: number, turn = 0): Partial<PlanSpec> {
  const offset = { x: nanometres(x), y: nanometres(0) };
  return { placements: [placementAt(["A", "1"]), placementAt(["A", "1"], { offset, turn })] };
}

/** The limit less 1 nm, the limit, the limit and 1 nm, with what the rule says. */
export const around = (limit: Length, below: "pass" | "fail", above: "pass" | "fail") =>
  [
    [limit - 1, below],
    [limit, "pass"],
    [limit + 1, above],
  ] as const;

export const at = inches;
