/** The error budget of a job: whether each base plate drops on, worst case and probability. */
import type { BaseBudget } from "../budget/index.js";
import { reckonBudget } from "../budget/index.js";
import type { OpenedJob } from "./open.js";

/** One budget a base, in the job's order; each is worked out when it is asked for, since trials take a while. */
export function* budgetJob({ job, bases }: Pick<OpenedJob, "job" | "bases">): Generator<BaseBudget> {
  for (const { base, rods } of bases) yield reckonBudget(job, base, rods);
}
