/** The budgets of a job, a line a base. */
import { writeBudgetCsv } from "../formats/budget-csv.js";
import type { BudgetResult } from "./budget-result.js";
import type { ResultOutput } from "./model.js";
import { textFile } from "./text-file.js";

/** Worst first, as the terminal shows them. */
export const budgetCsv: ResultOutput<BudgetResult, "budget-csv"> = {
  scope: "budget",
  kind: "budget-csv",
  role: "table",
  title: "Budget of every base: worst case, root of the sum of squares, probability that the plate drops on",
  drawn: false,
  named: "budget.csv",
  write: ({ budgets }) => [textFile("budget.csv", writeBudgetCsv(budgets))],
};
