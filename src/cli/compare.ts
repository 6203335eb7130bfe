/** `rodplate compare OLD NEW`: what changed between two jobs or packages, and what must be cut again. */
import { existsSync, statSync } from "node:fs";
import { basename, resolve } from "node:path";
import type { Side } from "../compare/index.js";
import { compareSides, countRecuts, countRemade } from "../compare/index.js";
import type { Outcome } from "../diagnostics/finding.js";
import { hasErrors } from "../diagnostics/finding.js";
import { uniqueFindings } from "../diagnostics/gather.js";
import { terminalLine } from "../diagnostics/printable.js";
import { jobSide, startJobState, type TakeJob } from "../tasks/compare.js";
import { writeComparison, writeComparisonJson } from "../tasks/comparison-text.js";
import { numberQuestions } from "../tasks/number-questions.js";
import { judgeForNew } from "../tasks/signed-state.js";
import type { Command } from "./arguments.js";
import { packageState, signedPackage } from "./compare-signed.js";
import { findEarlierRegister } from "./earlier-register.js";
import { attemptReading } from "./file-system.js";
import { fileFault, showFindings } from "./findings.js";
import { openFile } from "./open.js";
import { SUMMARY } from "./package-contents.js";
import { readPackage } from "./read-package.js";
import { startSha256 } from "./sha256.js";
import type { ExitCode, Shell } from "./shell.js";
import { hasColor, widthOf } from "./shell.js";

/** Faults of both sides are told together. 1: something that is cut or made already must be cut or made again. */
export async function runCompare(
  { old, fresh, json }: Extract<Command, { kind: "compare" }>,
  shell: Shell,
): Promise<ExitCode> {
  const signed = signedPackage(old, shell);
  const gathered = signed === null ? null : startJobState(startSha256);
  const sides = [
    await readSide(old, shell, { take: null, register: registerIn(fresh, shell) }),
    await readSide(fresh, shell, { take: gathered, register: registerIn(old, shell) }),
  ] as const;
  const [before, after] = sides;
  await showFindings(uniqueFindings(sides.flatMap(({ findings }) => findings)), json, shell);
  if (!before.ok || !after.ok) return 2;
  const comparison = compareSides(before.value, after.value);
  const [from, to] = [before.value.job.number, after.value.job.number];
  if (from !== to) await shell.err.write(terminalLine`warning: OLD is job ${from}, NEW is job ${to}\n`);
  const signatures =
    signed === null ? [] : judgeForNew(signed.records, signed.states, gathered?.state() ?? packageState(fresh, shell));
  const options = { width: widthOf(shell), color: hasColor(shell) };
  await shell.out.write(
    json ? writeComparisonJson(comparison, signatures) : writeComparison(comparison, signatures, options),
  );
  return countRecuts(comparison) + countRemade(comparison) > 0 ? 1 : 0;
}

/** A job beside a package answers and accepts by the numbers that this one gave; null of a job, and of a package that gave none. */
function registerIn(name: string, { currentFolder }: Shell): string | null {
  const path = resolve(currentFolder, name);
  const folder = basename(path) === SUMMARY ? resolve(path, "..") : path;
  const found = attemptReading(() => findEarlierRegister(folder), name);
  return found.ok ? (found.value?.content ?? null) : null;
}

/** How a side that is a job is opened. */
interface JobReading {
  readonly take: TakeJob | null;
  readonly register: string | null;
}

/** A folder, or the summary in it, is a package; any other file is a job. */
async function readSide(name: string, shell: Shell, reading: JobReading): Promise<Outcome<Side>> {
  const path = resolve(shell.currentFolder, name);
  const stat = attemptReading(() => statSync(path, { throwIfNoEntry: false }), name);
  if (!stat.ok) return stat;
  if (stat.value === undefined) return { ok: false, findings: [fileFault(name, "missing-file", missingWords(path))] };
  if (stat.value.isDirectory()) return packageSide(path, name);
  return basename(path) === SUMMARY ? packageSide(resolve(path, ".."), name) : openSide(name, shell, reading);
}

/** A package with a changed cut file is refused; one with changed papers or files of somebody's is compared, and they are named. */
function packageSide(folder: string, name: string): Outcome<Side> {
  const read = readPackage(folder, name);
  if (!read.ok) return read;
  const { side, faults } = read.value;
  return hasErrors(faults) ? { ok: false, findings: faults } : { ok: true, value: side, findings: faults };
}

/** A `make` that was killed leaves the earlier package beside its folder. */
function missingWords(path: string): string {
  const old = `.${basename(path)}.old`;
  const rest = existsSync(resolve(path, "..", old)) ? `; an interrupted make left an earlier one in ${old}` : "";
  return `there is no such job file or package${rest}`;
}

async function openSide(name: string, shell: Shell, { take, register }: JobReading): Promise<Outcome<Side>> {
  const opened = await openFile(name, shell, register ?? undefined);
  if (!opened.ok) return opened;
  const job = numberQuestions(opened.value);
  const value = jobSide(name, job, { startSha256, ...(take === null ? {} : { each: take.each }) });
  take?.end(job);
  return { ...opened, value };
}
