/** `rodplate make JOB --out DIR`: the whole package into DIR, or nothing. */
import { existsSync, mkdirSync } from "node:fs";
import { join, relative } from "node:path";
import { counted } from "../checks/words.js";
import type { Part } from "../tasks/growing-files.js";
import type { OpenedJob } from "../tasks/open.js";
import { makePackageInParts } from "../tasks/package.js";
import type { Command } from "./arguments.js";
import { fileFault, showFindings } from "./findings.js";
import { openFile } from "./open.js";
import { lockTarget } from "./package-lock.js";
import type { PackageTarget } from "./package-target.js";
import { chunksOf, PackageFault, SUMMARY, targetOf } from "./package-target.js";
import type { PackageWriter } from "./package-writer.js";
import { repairPackage, startPackage } from "./package-writer.js";
import { startProgress } from "./progress.js";
import type { Report } from "./report.js";
import { startReport } from "./report.js";
import { startSha256 } from "./sha256.js";
import type { ExitCode, Shell } from "./shell.js";
import { readVersion } from "./shell.js";

type MakeCommand = Extract<Command, { kind: "make" }>;

/** What is wrong with DIR or the disk is the user's to put right: exit code 2, and DIR is as it was. */
export async function runMake(command: MakeCommand, shell: Shell): Promise<ExitCode> {
  try {
    return await makeLocked(command, shell);
  } catch (error) {
    const message = messageOf(error);
    if (message === null) throw error;
    await showFindings([fileFault(command.out, "package-folder", message)], command.json, shell);
    return 2;
  }
}

function messageOf(error: unknown): string | null {
  if (error instanceof PackageFault) return error.message;
  if (!(error instanceof Error) || !("syscall" in error)) return null;
  return `the package could not be written: ${systemWords(error)}`;
}

const SYSTEM_WORDS: Readonly<Record<string, string>> = {
  EACCES: "no permission",
  EPERM: "not permitted",
  EROFS: "the file system is read-only",
  ENOSPC: "the disk is full",
  EDQUOT: "the disk quota is used up",
  ENOTDIR: "a part of the path is a file, not a folder",
  ENAMETOOLONG: "a name is too long for this file system",
  EXDEV: "the folder is a mount point and cannot be renamed",
  EBUSY: "the folder is in use or a mount point and cannot be renamed",
  EMFILE: "too many open files",
};

function systemWords(error: Error): string {
  const { code, path, message }: NodeJS.ErrnoException = error;
  const words = SYSTEM_WORDS[code ?? ""];
  return words === undefined ? message : `${words}${path === undefined ? "" : ` (${path})`}`;
}

async function makeLocked(command: MakeCommand, shell: Shell): Promise<ExitCode> {
  const target = targetOf(command.out, shell.currentFolder);
  let unlock = existsSync(target.parent) ? lockTarget(target) : null;
  try {
    repairPackage(target);
    const opened = await openFile(command.job, shell);
    await showFindings(opened.findings, command.json, shell);
    if (!opened.ok) return 2;
    mkdirSync(target.parent, { recursive: true });
    unlock ??= lockTarget(target);
    const report = await writePackage(command, target, opened.value, shell);
    await showResult(command, target, report, shell);
    return report.held > 0 ? 1 : 0;
  } finally {
    unlock?.();
  }
}

async function writePackage(
  command: MakeCommand,
  target: PackageTarget,
  opened: OpenedJob,
  shell: Shell,
): Promise<Report> {
  const writer = startPackage(target);
  const giveUp = (): void => {
    writer.discard();
    process.exit(130);
  };
  process.once("SIGINT", giveUp);
  try {
    const report = await writeFiles(command, writer, opened, shell);
    writer.finish();
    return report;
  } catch (error) {
    writer.discard();
    throw error;
  } finally {
    process.off("SIGINT", giveUp);
  }
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
  }
  await progress.end();
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

async function showResult({ json }: MakeCommand, target: PackageTarget, report: Report, shell: Shell): Promise<void> {
  if (json) {
    for (const chunk of chunksOf(join(target.folder, SUMMARY))) await shell.out.write(chunk);
    return;
  }
  for (const text of report.texts()) await shell.out.write(text);
  const from = relative(shell.currentFolder, target.folder);
  const shown = from.startsWith("..") ? target.folder : from;
  await shell.out.write(
    `Package: ${shown} (${counted(report.files, "file")}); sheets: ${join(shown, "*", "*_sheet.svg")}\n`,
  );
}
