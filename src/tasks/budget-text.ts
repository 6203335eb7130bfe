/** An error budget as text: worst case and probability base by base, cautions. */
import type { BaseBudget } from "../budget/index.js";
import { BUDGET_CAUTIONS } from "../budget/index.js";
import { counted } from "../checks/words.js";
import type { Printable } from "../diagnostics/printable.js";
import { joinPrintable, terminalLine } from "../diagnostics/printable.js";
import { writeBudgetBase, writeBudgetTable } from "../formats/budget-text.js";
import { writeTextList } from "../formats/ledger-text.js";
import type { Job } from "../job/model/job.js";
import type { ResultTextOptions } from "./survey-text.js";

/** The whole of it, worst first as they are given. */
export function writeBudgetText(
  job: Job,
  budgets: readonly BaseBudget[],
  { out, width, color }: Omit<ResultTextOptions, "all">,
): Printable {
  const options = { unit: job.unit, width, color, all: false };
  const reckoned = budgets.filter((budget) => budget.kind === "reckoned");
  const absent = budgets.length - reckoned.length;
  const asked = reckoned.filter(({ target }) => target !== null);
  const short = asked.filter(({ target }) => target?.met === false);
  const targets = asked.length === 0 ? "no target named" : `${counted(short.length, "base")} below the target`;
  const heading = `Job ${job.number}  ${job.title}`.trimEnd();
  return joinPrintable([
    terminalLine`${heading}\n`,
    terminalLine`revision ${job.revision}, ${job.status}; placing ${job.editions.placing}. Does the base plate drop on?\n\n`,
    writeBudgetTable(budgets, options),
    ...reckoned.map((budget) => writeBudgetBase(budget, options)),
    writeTextList("Cautions", BUDGET_CAUTIONS, options),
    terminalLine`${counted(budgets.length, "base")}, ${absent} not checked; ${targets}. Engineer to decide.\n`,
    ...(out === null ? [] : [terminalLine`Tables and sheets: ${out}\n`]),
  ]);
}
