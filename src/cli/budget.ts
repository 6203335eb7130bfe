/** `rodplate budget JOB`: worst case and probability that each base plate drops on. */
import { resolve } from "node:path";
import type { BaseBudget } from "../budget/index.js";
import { BUDGET_CAUTIONS, reckonBudget, worstBudgetsFirst } from "../budget/index.js";
import { counted } from "../checks/words.js";
import type { Outcome } from "../diagnostics/finding.js";
import { writeBudgetCsv, writeBudgetRodsCsv } from "../formats/budget-csv.js";
import { writeBudgetJson } from "../formats/budget-json.js";
import { writeBudgetBase, writeBudgetTable } from "../formats/budget-text.js";
import { writeTextList } from "../formats/ledger-text.js";
import { writeSheetSvg } from "../formats/sheet-svg.js";
import { readJob } from "../job/index.js";
import type { Job } from "../job/model/job.js";
import type { BaseWithRods } from "../rods/index.js";
import { placeRods } from "../rods/index.js";
import { drawBudgetSheet } from "../sheets/budget-sheet.js";
import type { Command } from "./arguments.js";
import { showFindings } from "./findings.js";
import { type NamedText, targetFaults, writeFolder } from "./folder-writer.js";
import { loadInputs } from "./load.js";
import { startProgress } from "./progress.js";
import type { ExitCode, Shell } from "./shell.js";
import { hasColor, readVersion, todayOf, widthOf } from "./shell.js";
import { newDocument } from "./svg-document.js";

/** Code of findings about the folder to write into. */
const FOLDER = "budget-folder";

type BudgetCommand = Extract<Command, { kind: "budget" }>;

/** 0 whatever comes out, since it is the engineer who decides; 2 when the input is at fault. */
export async function runBudget(command: BudgetCommand, shell: Shell): Promise<ExitCode> {
  const { json, out } = command;
  const job = await readWhole(command, shell);
  const findings = [
    ...job.findings,
    ...(out === null ? [] : targetFaults(resolve(shell.currentFolder, out), out, FOLDER)),
  ];
  await showFindings(findings, json, shell);
  if (!job.ok || findings.some(({ severity }) => severity === "error")) return 2;
  const budgets = worstBudgetsFirst(await reckonAll(job.value, shell));
  if (out !== null) {
    const fault = writeFolder(resolve(shell.currentFolder, out), filesOf(job.value.job, budgets), out, FOLDER);
    if (fault !== null) {
      await showFindings([fault], json, shell);
      return 2;
    }
  }
  await shell.out.write(
    json ? writeBudgetJson(headOf(job.value.job), budgets) : textOf(job.value.job, budgets, command, shell),
  );
  return 0;
}

interface LaidOut {
  readonly job: Job;
  readonly bases: readonly BaseWithRods[];
}

async function readWhole({ job: name }: BudgetCommand, shell: Shell): Promise<Outcome<LaidOut>> {
  const inputs = await loadInputs(name, shell);
  if (!inputs.ok) return inputs;
  const job = readJob(inputs.value, { date: todayOf(shell) });
  if (!job.ok) return job;
  const placed = job.value.bases.map((base) => ({ base, rods: placeRods(base) }));
  const findings = [...job.findings, ...placed.flatMap(({ rods }) => rods.findings)];
  const bases = placed.flatMap(({ base, rods }) => (rods.ok ? [{ base, rods: rods.value }] : []));
  if (bases.length < placed.length) return { ok: false, findings };
  return { ok: true, value: { job: job.value, bases }, findings };
}

async function reckonAll({ job, bases }: LaidOut, shell: Shell): Promise<readonly BaseBudget[]> {
  const progress = startProgress(shell, "reckoned");
  const budgets: BaseBudget[] = [];
  for (const [i, { base, rods }] of bases.entries()) {
    budgets.push(reckonBudget(job, base, rods));
    await progress.show(i + 1, bases.length);
  }
  await progress.end();
  return budgets;
}

const headOf = ({ number, revision, status, unit, editions }: Job) => ({
  number,
  revision,
  status,
  unit,
  placing: editions.placing,
});

function textOf(job: Job, budgets: readonly BaseBudget[], { out }: BudgetCommand, shell: Shell): string {
  const options = { unit: job.unit, width: widthOf(shell), color: hasColor(shell), all: false };
  const reckoned = budgets.filter((budget) => budget.kind === "reckoned");
  const absent = budgets.length - reckoned.length;
  const asked = reckoned.filter(({ target }) => target !== null);
  const short = asked.filter(({ target }) => target?.met === false);
  const targets = asked.length === 0 ? "no target named" : `${counted(short.length, "base")} below the target`;
  return [
    `Job ${job.number}  ${job.title}`.trimEnd(),
    `\nrevision ${job.revision}, ${job.status}; placing ${job.editions.placing}. Does the base plate drop on?\n\n`,
    writeBudgetTable(budgets, options),
    ...reckoned.map((budget) => writeBudgetBase(budget, options)),
    writeTextList("Cautions", BUDGET_CAUTIONS, options),
    `${counted(budgets.length, "base")}, ${absent} not checked; ${targets}. Engineer to decide.\n`,
    ...(out === null ? [] : [`Tables and sheets: ${out}\n`]),
  ].join("");
}

function* filesOf(job: Job, budgets: readonly BaseBudget[]): Generator<NamedText> {
  yield { path: "budget.csv", text: writeBudgetCsv(budgets) };
  yield { path: "budget-rods.csv", text: writeBudgetRodsCsv(budgets) };
  const document = newDocument();
  for (const budget of budgets) {
    if (budget.kind !== "reckoned") continue;
    const scene = drawBudgetSheet({ job, budget, version: readVersion() });
    yield { path: `${budget.mark}_budget.svg`, text: writeSheetSvg(scene, document) };
  }
}
