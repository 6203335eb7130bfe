/** `rodplate budget JOB`: worst case and probability that each base plate drops on. */
import type { BaseBudget } from "../budget/index.js";
import { worstBudgetsFirst } from "../budget/index.js";
import { writeBudgetJson } from "../formats/budget-json.js";
import { budgetOutputs } from "../outputs/index.js";
import { placingHead } from "../summary/summarize.js";
import { budgetBases } from "../tasks/budget.js";
import { writeBudgetText } from "../tasks/budget-text.js";
import type { OpenedJob } from "../tasks/opened-job.js";
import type { Command } from "./arguments.js";
import { showFindings } from "./findings.js";
import { targetFaults } from "./folder-writer.js";
import { openFile } from "./open.js";
import { startProgress } from "./progress.js";
import { tellWritten, writeResult } from "./result-folder.js";
import type { ExitCode, Shell } from "./shell.js";
import { hasColor, widthOf } from "./shell.js";

/** Code of findings about the folder to write into. */
const FOLDER = "budget-folder";

type BudgetCommand = Extract<Command, { kind: "budget" }>;

/** 0 whatever comes out, since it is the engineer who decides; 2 when the input is at fault. */
export async function runBudget(command: BudgetCommand, shell: Shell): Promise<ExitCode> {
  const { json, out } = command;
  const opened = await openFile(command.job, shell);
  const target = out === null ? null : { out, code: FOLDER, currentFolder: shell.currentFolder };
  const refused = target === null ? [] : targetFaults(target);
  await showFindings([...opened.findings, ...refused], json, shell);
  if (!opened.ok || refused.length > 0) return 2;
  const { job } = opened.value;
  const budgets = worstBudgetsFirst(await reckonAll(opened.value, shell));
  if (target !== null) {
    const fault = await writeResult(budgetOutputs, { job, budgets }, target);
    if (fault !== null) {
      await showFindings([fault], json, shell);
      return 2;
    }
  }
  await shell.out.write(
    json
      ? writeBudgetJson(placingHead(job), budgets)
      : writeBudgetText(job, budgets, { out, width: widthOf(shell), color: hasColor(shell) }),
  );
  await tellWritten(out, shell);
  return 0;
}

async function reckonAll(opened: OpenedJob, shell: Shell): Promise<readonly BaseBudget[]> {
  const progress = startProgress(shell, "reckoned");
  const budgets: BaseBudget[] = [];
  for (const budget of budgetBases(opened)) {
    budgets.push(budget);
    await progress.show(budgets.length, opened.bases.length);
  }
  await progress.end();
  return budgets;
}
