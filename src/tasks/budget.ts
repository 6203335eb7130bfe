/** The error budget of a job: whether each base plate drops on, worst case and probability. */
import type { BaseBudget } from "../budget/index.js";
import { reckonBudget, worstBudgetsFirst } from "../budget/index.js";
import type { BudgetForm } from "../formats/budget-json.js";
import { budgetForm } from "../formats/budget-json.js";
import { placingHead } from "../summary/summarize.js";
import type { OpenedJob } from "./opened-job.js";

/** One budget a base, in the job's order; each is worked out when it is asked for, since trials take a while. */
export function* budgetBases({ job, bases }: Pick<OpenedJob, "job" | "bases">): Generator<BaseBudget> {
  for (const { base, rods } of bases) yield reckonBudget(job, base, rods);
}

/** The budgets of a job in machine form, worst first: what `budget --json` prints. */
export function budgetJob(opened: OpenedJob): BudgetForm {
  return budgetForm(placingHead(opened.job), worstBudgetsFirst([...budgetBases(opened)]));
}
