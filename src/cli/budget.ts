/** `rodplate budget JOB`: worst case and probability that each base plate drops on. */
import type { BaseBudget } from "../budget/index.js";
import { BUDGET_CAUTIONS, worstBudgetsFirst } from "../budget/index.js";
import { counted } from "../checks/words.js";
import type { Printable } from "../diagnostics/printable.js";
import { joinPrintable, terminalLine } from "../diagnostics/printable.js";
import { writeBudgetJson } from "../formats/budget-json.js";
import { writeBudgetBase, writeBudgetTable } from "../formats/budget-text.js";
import { writeTextList } from "../formats/ledger-text.js";
import type { Job } from "../job/model/job.js";
import { budgetOutputs } from "../outputs/index.js";
import { placingHead } from "../summary/summarize.js";
import { budgetBases } from "../tasks/budget.js";
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
  await shell.out.write(json ? writeBudgetJson(placingHead(job), budgets) : textOf(job, budgets, command, shell));
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

function textOf(job: Job, budgets: readonly BaseBudget[], { out }: BudgetCommand, shell: Shell): Printable {
  const options = { unit: job.unit, width: widthOf(shell), color: hasColor(shell), all: false };
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
