/** The budgets of a job, a line a rod. */
import { writeBudgetRodsCsv } from "../formats/budget-csv.js";
import type { BudgetResult } from "./budget-result.js";
import type { ResultOutput } from "./model.js";
import { textFile } from "./text-file.js";

/** Clearance and errors of every rod. */
export const budgetRodsCsv: ResultOutput<BudgetResult, "budget-rods-csv"> = {
  scope: "budget",
  kind: "budget-rods-csv",
  role: "table",
  title: "The same, a line a rod, with each error that takes part",
  drawn: false,
  named: "budget-rods.csv",
  write: ({ budgets }) => [textFile("budget-rods.csv", writeBudgetRodsCsv(budgets))],
};
