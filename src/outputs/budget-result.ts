/** What the files of a budget are written from. */
import type { BaseBudget } from "../budget/index.js";
import type { Job } from "../job/model/job.js";

/** Budgets worst first. */
export interface BudgetResult {
  readonly job: Job;
  readonly budgets: readonly BaseBudget[];
}
