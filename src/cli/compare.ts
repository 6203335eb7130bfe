/** `rodplate compare OLD NEW`: what changed between two jobs or packages, and what must be cut again. */
import { existsSync, statSync } from "node:fs";
import { basename, resolve } from "node:path";
import { buildInParts } from "../build.js";
import type { Side, TemplateState } from "../compare/index.js";
import { compareSides, countRecuts, makeTemplateState, shapeFileOf } from "../compare/index.js";
import type { Outcome } from "../diagnostics/finding.js";
import { hasErrors } from "../diagnostics/finding.js";
import { writeCompareJson } from "../formats/compare-json.js";
import { writeCompareText } from "../formats/compare-text.js";
import { summarizeJob } from "../summary.js";
import type { Command } from "./arguments.js";
import { attemptReading } from "./file-system.js";
import { fileFault, showFindings } from "./findings.js";
import { loadInputs } from "./load.js";
import { SUMMARY } from "./package-target.js";
import { readPackage } from "./read-package.js";
import { startSha256 } from "./sha256.js";
import type { ExitCode, Shell } from "./shell.js";
import { hasColor, readVersion, todayOf, widthOf } from "./shell.js";

/** Faults of both sides are told together. 1: something that is cut already must be cut again. */
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
  if (from !== to) await shell.err.write(`warning: OLD is job ${from}, NEW is job ${to}\n`);
  const text = json
    ? writeCompareJson(comparison)
    : writeCompareText(comparison, { width: widthOf(shell), color: hasColor(shell) });
  await shell.out.write(text);
  return countRecuts(comparison) > 0 ? 1 : 0;
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
  if (stat.value.isDirectory()) return readPackage(path, name);
  return basename(path) === SUMMARY ? readPackage(resolve(path, ".."), name) : buildSide(name, shell);
}

/** A `make` that was killed leaves the earlier package beside its folder. */
function missingWords(path: string): string {
  const old = `.${basename(path)}.old`;
  const rest = existsSync(resolve(path, "..", old)) ? `; an interrupted make left an earlier one in ${old}` : "";
  return `there is no such job file or package${rest}`;
}

/** A job's templates as `make` would hand them out; held ones are made as well, to be compared. */
async function buildSide(name: string, shell: Shell): Promise<Outcome<Side>> {
  const inputs = await loadInputs(name, shell);
  if (!inputs.ok) return inputs;
  const built = buildInParts(inputs.value, {
    ...{ date: todayOf(shell), version: readVersion(), document: null, includeHeld: true, startSha256 },
    outputs: ["cut-joined", "cut-r12", "drill-list"],
  });
  const { job, findings } = built;
  if (job === null || hasErrors(findings)) return { ok: false, findings };
  const templates: TemplateState[] = [];
  for (const { summary, files, held } of built.bases) {
    const cutFile = files.find(({ path }) => path === shapeFileOf(summary)?.path);
    templates.push(makeTemplateState(summary, job.unit, !held, cutFile?.bytes ?? null));
  }
  return { ok: true, value: { name, source: "job", job: summarizeJob(job), templates }, findings };
}
