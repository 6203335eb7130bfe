/** `rodplate make JOB --out DIR`: the whole package into DIR, or nothing. */
import { join, relative } from "node:path";
import type { PartwiseBuild } from "../build.js";
import { buildInParts } from "../build.js";
import { counted } from "../checks/words.js";
import type { Outcome } from "../diagnostics/finding.js";
import type { Job } from "../job/model/job.js";
import type { Command } from "./arguments.js";
import { chunksOf } from "./file-system.js";
import { showFindings } from "./findings.js";
import { loadInputs } from "./load.js";
import type { PackageFolder } from "./package-folder.js";
import { withPackageFolder } from "./package-folder.js";
import { SUMMARY } from "./package-target.js";
import type { PackageWriter } from "./package-writer.js";
import { startProgress } from "./progress.js";
import type { Report } from "./report.js";
import { startReport } from "./report.js";
import { startSha256 } from "./sha256.js";
import type { ExitCode, Shell } from "./shell.js";
import { readVersion, todayOf } from "./shell.js";
import { newDocument } from "./svg-document.js";

type MakeCommand = Extract<Command, { kind: "make" }>;

/** What is wrong with DIR or the disk is the user's to put right: exit code 2, and DIR is as it was. */
export async function runMake(command: MakeCommand, shell: Shell): Promise<ExitCode> {
  const made = await withPackageFolder(command.out, shell.currentFolder, (folder) => makeInto(folder, command, shell));
  if (made.ok) return made.value;
  await showFindings(made.findings, command.json, shell);
  return 2;
}

async function makeInto(dir: PackageFolder, command: MakeCommand, shell: Shell): Promise<Outcome<ExitCode>> {
  const built = await readAndBuild(command, shell);
  if (built === null) return { ok: true, value: 2, findings: [] };
  const report = await dir.write((writer) => writeBases(command, writer, built, shell));
  if (!report.ok) return report;
  await showResult(command, dir, report.value, shell);
  return { ok: true, value: report.value.held > 0 ? 1 : 0, findings: [] };
}

type GoodBuild = PartwiseBuild & { readonly job: Job };

async function readAndBuild({ job, json, includeHeld }: MakeCommand, shell: Shell): Promise<GoodBuild | null> {
  const inputs = await loadInputs(job, shell);
  if (!inputs.ok) {
    await showFindings(inputs.findings, json, shell);
    return null;
  }
  const options = { date: todayOf(shell), version: readVersion(), document: newDocument(), includeHeld, startSha256 };
  const built = buildInParts(inputs.value, options);
  await showFindings(built.findings, json, shell);
  return built.job === null ? null : { ...built, job: built.job };
}

async function writeBases(
  { all }: MakeCommand,
  writer: PackageWriter,
  built: GoodBuild,
  shell: Shell,
): Promise<Report> {
  const report = startReport(built.job, shell, { all, onlyFailing: !all });
  const progress = startProgress(shell, "made");
  const append = (parts: PartwiseBuild["head"]): void => {
    for (const { path, bytes } of parts) writer.append(path, bytes);
  };
  append(built.head);
  let done = 0;
  for (const { parts, ...base } of built.bases) {
    for (const { path, bytes } of base.files) writer.add(path, bytes);
    append(parts);
    report.add(base);
    done += 1;
    await progress.show(done, built.job.bases.length);
    await nextTurn();
    if (writer.isStopped) break;
  }
  await progress.end();
  if (writer.isStopped) return report;
  for (const { path, bytes } of built.documents) {
    writer.add(path, bytes);
    report.addDocument();
    await nextTurn();
  }
  const end = built.tail();
  report.addJob(end);
  append(end.parts);
  return report;
}

/** Lets signals and output through. */
const nextTurn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

async function showResult({ json }: MakeCommand, target: PackageFolder, report: Report, shell: Shell): Promise<void> {
  if (json) {
    for (const chunk of chunksOf(join(target.folder, SUMMARY))) await shell.out.write(chunk);
    return;
  }
  for (const text of report.texts()) await shell.out.write(text);
  const from = relative(shell.currentFolder, target.folder);
  const shown = from.startsWith("..") ? target.folder : from;
  await shell.out.write(
    `Package: ${shown} (${counted(report.files + 3, "file")}); sheets: ${join(shown, "*", "*_sheet.svg")}\n`,
  );
}
