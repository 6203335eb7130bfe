/** `rodplate make JOB --out DIR`: the whole package into DIR, or nothing. */
import { join, relative } from "node:path";
import { counted } from "../checks/words.js";
import type { Outcome } from "../diagnostics/finding.js";
import { terminalLine } from "../diagnostics/printable.js";
import type { Part } from "../tasks/growing-files.js";
import type { OpenedJob } from "../tasks/open.js";
import { makePackageInParts } from "../tasks/package.js";
import type { Command } from "./arguments.js";
import { chunksOf } from "./file-system.js";
import { showFindings } from "./findings.js";
import { openFile } from "./open.js";
import type { PackageFolder } from "./package-folder.js";
import { withPackageFolder } from "./package-folder.js";
import { SUMMARY } from "./package-target.js";
import type { PackageWriter } from "./package-writer.js";
import { startProgress } from "./progress.js";
import type { Report } from "./report.js";
import { startReport } from "./report.js";
import { startSha256 } from "./sha256.js";
import type { ExitCode, Shell } from "./shell.js";
import { readVersion } from "./shell.js";

type MakeCommand = Extract<Command, { kind: "make" }>;

/** What is wrong with DIR or the disk is the user's to put right: exit code 2, and DIR is as it was. */
export async function runMake(command: MakeCommand, shell: Shell): Promise<ExitCode> {
  const made = await withPackageFolder(command.out, shell.currentFolder, (folder) => makeInto(folder, command, shell));
  if (made.ok) return made.value;
  await showFindings(made.findings, command.json, shell);
  return 2;
}

async function makeInto(dir: PackageFolder, command: MakeCommand, shell: Shell): Promise<Outcome<ExitCode>> {
  const opened = await openFile(command.job, shell);
  await showFindings(opened.findings, command.json, shell);
  if (!opened.ok) return { ok: true, value: 2, findings: [] };
  const report = await dir.write((writer) => writeFiles(command, writer, opened.value, shell));
  if (!report.ok) return report;
  await showResult(command, dir, report.value, shell);
  return { ok: true, value: report.value.isHeld ? 1 : 0, findings: [] };
}

async function writeFiles(
  { all, includeHeld }: MakeCommand,
  writer: PackageWriter,
  opened: OpenedJob,
  shell: Shell,
): Promise<Report> {
  const { newDocument } = await import("./svg-document.js");
  const made = makePackageInParts(opened, {
    ...{ version: readVersion(), document: newDocument(), includeHeld, startSha256 },
  });
  const report = startReport(opened.job, shell, { all, onlyFailing: !all });
  const progress = startProgress(shell, "made");
  const append = (parts: readonly Part[]): void => {
    for (const { path, bytes } of parts) writer.append(path, bytes);
  };
  append(made.head);
  report.addFiles(made.head.length);
  let done = 0;
  for (const base of made.bases) {
    for (const { path, bytes } of base.files) writer.add(path, bytes);
    append(base.parts);
    report.add(base);
    done += 1;
    await progress.show(done, opened.job.bases.length);
    await nextTurn();
    if (writer.isStopped) break;
  }
  await progress.end();
  if (writer.isStopped) return report;
  for (const { path, bytes } of made.documents) {
    writer.add(path, bytes);
    report.addFiles(1);
    await nextTurn();
  }
  const rest = made.rest();
  report.addJob(rest);
  append(rest.parts);
  return report;
}

/** Lets signals and output through. */
const nextTurn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

async function showResult({ json }: MakeCommand, target: PackageFolder, report: Report, shell: Shell): Promise<void> {
  const from = relative(shell.currentFolder, target.folder);
  const shown = from.startsWith("..") ? target.folder : from;
  if (json) for (const chunk of chunksOf(join(target.folder, SUMMARY))) await shell.out.write(chunk);
  else {
    for (const text of report.texts()) await shell.out.write(text);
    const sheets = join(shown, "*", "*_sheet.svg");
    await shell.out.write(terminalLine`Package: ${shown} (${counted(report.files, "file")}); sheets: ${sheets}\n`);
  }
  if (shell.out.refusal !== null)
    await shell.err.write(terminalLine`the package was written: it is whole in ${shown}\n`);
}
