/** `rodplate compare OLD NEW`: what changed between two jobs or packages, and what must be cut again. */
import { existsSync, statSync } from "node:fs";
import { basename, resolve } from "node:path";
import type { Side } from "../compare/index.js";
import { compareSides, countRecuts, countRemade } from "../compare/index.js";
import type { Outcome } from "../diagnostics/finding.js";
import { hasErrors } from "../diagnostics/finding.js";
import { terminalLine } from "../diagnostics/printable.js";
import { writeCompareJson } from "../formats/compare-json.js";
import { writeCompareText } from "../formats/compare-text.js";
import { jobSide } from "../tasks/compare.js";
import type { Command } from "./arguments.js";
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
  const sides = [await readSide(old, shell), await readSide(fresh, shell)] as const;
  const [before, after] = sides;
  await showFindings(uniqueFindings(sides), json, shell);
  if (!before.ok || !after.ok) return 2;
  const comparison = compareSides(before.value, after.value);
  const [from, to] = [before.value.job.number, after.value.job.number];
  if (from !== to) await shell.err.write(terminalLine`warning: OLD is job ${from}, NEW is job ${to}\n`);
  const text = json
    ? writeCompareJson(comparison)
    : writeCompareText(comparison, { width: widthOf(shell), color: hasColor(shell) });
  await shell.out.write(text);
  return countRecuts(comparison) + countRemade(comparison) > 0 ? 1 : 0;
}

/** A fault of one file that both sides name is told once. */
function uniqueFindings(sides: readonly Outcome<Side>[]): Outcome<Side>["findings"] {
  const told = new Map(sides.flatMap(({ findings }) => findings).map((each) => [JSON.stringify(each), each]));
  return [...told.values()];
}

/** A folder, or the summary in it, is a package; any other file is a job. */
async function readSide(name: string, shell: Shell): Promise<Outcome<Side>> {
  const path = resolve(shell.currentFolder, name);
  const stat = attemptReading(() => statSync(path, { throwIfNoEntry: false }), name);
  if (!stat.ok) return stat;
  if (stat.value === undefined) return { ok: false, findings: [fileFault(name, "missing-file", missingWords(path))] };
  if (stat.value.isDirectory()) return packageSide(path, name);
  return basename(path) === SUMMARY ? packageSide(resolve(path, ".."), name) : openSide(name, shell);
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

async function openSide(name: string, shell: Shell): Promise<Outcome<Side>> {
  const opened = await openFile(name, shell);
  return opened.ok ? { ...opened, value: jobSide(name, opened.value, { startSha256 }) } : opened;
}
