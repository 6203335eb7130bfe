/** The error budget of the open job: worst case and probability that each base plate drops on. */
import { askedForm, type BaseBudget, BUDGET_CAUTIONS, worstBudgetsFirst } from "../../budget/index.js";
import { counted } from "../../checks/words.js";
import { printable } from "../../diagnostics/printable.js";
import { writeBudgetJson } from "../../formats/budget-json.js";
import { BUDGET_HEADINGS, budgetCells, budgetLines } from "../../formats/budget-text.js";
import { budgetOutputs } from "../../outputs/index.js";
import { placingHead } from "../../summary/summarize.js";
import { budgetBases } from "../../tasks/budget.js";
import { writeBudgetText } from "../../tasks/budget-text.js";
import { answerFile, resultFiles } from "./answer-file.js";
import { answerRow, type RowState } from "./answer-table.js";
import { causesOf, openedJob, refusedBy } from "./refusing.js";
import type { TaskWork } from "./task-model.js";

/** Tells each base as it is reckoned. */
export const reckonJob: TaskWork<"budget"> = async ({ files, date }, tell) => {
  const opened = await openedJob(files, date);
  if (!opened.ok) throw refusedBy(opened.findings);
  const { job, bases } = opened.value;
  const reckoned: BaseBudget[] = [];
  for (const budget of budgetBases(opened.value)) {
    reckoned.push(budget);
    tell({ done: reckoned.length, of: bases.length, what: `base ${budget.mark}` });
  }
  const budgets = worstBudgetsFirst(reckoned);
  const written = await resultFiles(budgetOutputs, { job, budgets }, (what) =>
    tell({ done: bases.length, of: bases.length, what }),
  );
  return {
    sentence: sentenceOf(budgets),
    rests: `Placing ${job.editions.placing}. The same job gives the same figures. Engineer to decide.`,
    bases: { heads: BUDGET_HEADINGS, figures: [1, 2, 3, 4, 5], rows: budgets.map(rowOf) },
    each: budgets.map((budget) => ({
      name: printable(budget.mark),
      state: stateOf(budget),
      lines: (budget.kind === "reckoned" ? budgetLines(budget) : budget.why).map(printable),
    })),
    cautions: BUDGET_CAUTIONS,
    said: causesOf(opened.findings),
    text: writeBudgetText(job, budgets, { width: 100, color: false, out: null }),
    files: [
      ...written,
      answerFile("budget.json", "The whole budget in machine form", writeBudgetJson(placingHead(job), budgets)),
    ],
  };
};

function stateOf(budget: BaseBudget): RowState {
  if (budget.kind === "not-checked") return "asked";
  if (budget.target?.met === false) return "held";
  return askedForm(budget.worst, budget.spec.plate).holds ? "clear" : "asked";
}

const rowOf = (budget: BaseBudget) => answerRow(stateOf(budget), budgetCells(budget));

function sentenceOf(budgets: readonly BaseBudget[]): string {
  const all = counted(budgets.length, "base plate");
  const reckoned = budgets.filter((budget) => budget.kind === "reckoned");
  const short = reckoned.filter(({ target }) => target?.met === false).length;
  const certain = reckoned.filter(({ worst, spec }) => askedForm(worst, spec.plate).holds).length;
  const absent = budgets.length - reckoned.length;
  const rest = absent === 0 ? "" : ` Of ${absent} it cannot be reckoned.`;
  if (short > 0) return `${short} of ${all} ${short === 1 ? "is" : "are"} below the probability asked for.${rest}`;
  if (certain === budgets.length) return `Every base plate drops on, even in the worst case.`;
  return `${certain} of ${all} ${certain === 1 ? "drops" : "drop"} on even in the worst case; for the others see how often.${rest}`;
}
