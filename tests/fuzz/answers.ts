/** Runs an input the whole way, as the shell would, and says how it ended. */
import { existsSync, readFileSync } from "node:fs";
import { newLeanDocument } from "../../src/formats/lean-document.js";
import type { Finding, OpenedJob, Outcome } from "../../src/index.js";
import { formatFinding, makePackage, openJob, openWorkbook, readJobFile } from "../../src/index.js";
import type { InputFile, Inputs } from "../../src/readers/inputs.js";
import { type Ending, WrongResult } from "./model.js";

/** Files of a case by name; the job is `job.yaml`. */
export type Files = ReadonlyMap<string, string | Uint8Array>;

/** The files that the job names, among those of the case or of the program's own. */
export async function inputsOf(files: Files): Promise<Outcome<Inputs>> {
  const job = readJobFile(files.get("job.yaml") ?? "", "job.yaml");
  const read = new Map<string, InputFile>([["job.yaml", job]]);
  for (const { name, key, sheet, relativeTo } of job.requests) {
    const content = relativeTo === "packaged" ? packaged(name) : files.get(name);
    if (content === undefined) continue;
    if (!name.endsWith(".xlsx") || typeof content === "string") read.set(key ?? name, content);
    else {
      const table = await openWorkbook(content, name, sheet);
      if (!table.ok) return table;
      read.set(key ?? name, table.value);
    }
  }
  return { ok: true, value: { job: "job.yaml", files: read }, findings: [] };
}

const kept = new Map<string, string | undefined>();

function packaged(name: string): string | undefined {
  const isShop = /^templates\/shops\/[a-z-]+\.yaml$/.test(name) && existsSync(name);
  if (!kept.has(name)) kept.set(name, isShop ? readFileSync(name, "utf8") : undefined);
  return kept.get(name);
}

/** The job opened. A refusal must say why. */
export async function openCase(files: Files): Promise<OpenedJob | null> {
  const inputs = await inputsOf(files);
  const opened = inputs.ok ? openJob(inputs.value, { date: "2026-11-24" }) : inputs;
  return opened.ok ? opened.value : refused(opened.findings);
}

/** Words of the language and of libraries, which no user typed. */
const INSIDE = /TypeError|RangeError|Cannot read prop|is not a function|is not iterable|call stack|\[object Object\]/;

/** Null; every finding must read as a sentence that names its place. */
export function refused(findings: readonly Finding[]): null {
  if (findings.length === 0) throw new WrongResult("refused without a finding");
  for (const finding of findings) {
    if (INSIDE.test(finding.message))
      throw new WrongResult(`a message from inside: ${formatFinding(finding).slice(0, 300)}`);
  }
  return null;
}

/** Opens, checks and makes a job; drawings where they are asked for, since they take most of the time. */
export async function answerJob(files: Files, drawings: boolean): Promise<Ending> {
  const opened = await openCase(files);
  if (opened === null) return "fault";
  return packageOf(opened, drawings).held > 0 ? "held" : "ok";
}

/** Files of a package by path, and how many bases are held. */
export function packageOf(opened: OpenedJob, drawings: boolean) {
  const made = makePackage(opened, {
    ...{ version: "fuzz", document: drawings ? newLeanDocument() : null },
    ...(drawings ? {} : { outputs: WITHOUT_DRAWINGS }),
  });
  const files = new Map<string, Uint8Array>();
  let held = 0;
  for (const base of made.bases) {
    if (base.held) held += 1;
    for (const { path, bytes } of base.files) files.set(path, bytes);
  }
  const end = made.finish();
  for (const { path, bytes } of end.files) files.set(path, bytes);
  return { files, held, summary: end.summary };
}

const WITHOUT_DRAWINGS = [
  ...(["cut-joined", "cut-r12", "drill-list", "setting-out-csv", "setting-out-bare-csv"] as const),
  ...(["check-distances-csv", "plan-dxf", "ledger", "questions", "summary"] as const),
];
