/** `rodplate proof FILE... [--against JOB]`: says what is wrong with cut files, and which plate of the job each is. */
import { statSync } from "node:fs";
import { resolve } from "node:path";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { formatFinding } from "../diagnostics/finding.js";
import { joinPrintable, terminalLine } from "../diagnostics/printable.js";
import { writeProofJson } from "../formats/proof-json.js";
import { writeProofText } from "../formats/proof-text.js";
import {
  type Against,
  againstJob,
  isStop,
  type ProvedFile,
  type ProvedPackage,
  refuseLargeFile,
} from "../proof/index.js";
import { type FileToProve, isNotAsChecked, proveBytes } from "../tasks/prove-package.js";
import type { Command } from "./arguments.js";
import { attemptReading, readBytes } from "./file-system.js";
import { showFindings } from "./findings.js";
import { openFile } from "./open.js";
import { startProgress } from "./progress.js";
import { lookIntoFolder } from "./proof-folder.js";
import type { ExitCode, Shell } from "./shell.js";
import { hasColor, widthOf } from "./shell.js";

/**
 * Ends with 0 where nothing stops a file, 1 where a finding does, a file of a package is not the one that was checked or a
 * signature is void, 2 where a file or the job cannot be read.
 */
export async function runProof(command: Extract<Command, { kind: "proof" }>, shell: Shell): Promise<ExitCode> {
  const { json } = command;
  const against = command.against === null ? null : await loadAgainst(command.against, shell);
  if (against !== null) await showFindings(against.findings, json, shell);
  if (against !== null && !against.ok) return 2;
  const { files, packages, faults } = findFiles(command.files, shell);
  const progress = startProgress(shell, "proved");
  const proved: ProvedFile[] = [];
  for (const each of files) {
    const file = proveOne(each, against?.value ?? null, shell);
    if (file.ok) proved.push(file.value);
    for (const fault of file.findings) faults.push(fault);
    await progress.show(proved.length, files.length);
  }
  await progress.end();
  for (const fault of faults) await shell.err.write(joinPrintable([formatFinding(fault), terminalLine`\n`]));
  if (json) await shell.out.write(writeProofJson(proved, packages));
  else if (proved.length + packages.length > 0)
    await shell.out.write(writeProofText(proved, packages, { width: widthOf(shell), color: hasColor(shell) }));
  if (faults.length > 0) return 2;
  return proved.some(({ findings }) => findings.some(isStop)) || packages.some(isNotAsChecked) ? 1 : 0;
}

interface FilesToProve {
  readonly files: readonly FileToProve[];
  readonly packages: readonly ProvedPackage[];
  readonly faults: Finding[];
}

/** A folder stands for the files in it. */
function findFiles(names: readonly string[], { currentFolder }: Shell): FilesToProve {
  const [files, packages, faults]: [FileToProve[], ProvedPackage[], Finding[]] = [[], [], []];
  for (const name of names) {
    const path = resolve(currentFolder, name);
    const isFolder = attemptReading(() => statSync(path).isDirectory(), name);
    const looked = isFolder.ok && isFolder.value ? lookIntoFolder(path, name) : null;
    if (looked === null) files.push({ path: name, listed: null });
    else {
      for (const fault of looked.findings) faults.push(fault);
      for (const each of looked.ok ? looked.value.files : []) files.push(each);
      for (const each of looked.ok ? looked.value.packages : []) packages.push(each);
    }
  }
  return { files, packages, faults };
}

async function loadAgainst(name: string, shell: Shell): Promise<Outcome<Against>> {
  const opened = await openFile(name, shell);
  return opened.ok ? { ...opened, value: againstJob(opened.value) } : opened;
}

/** One file after the other, so that only one is held in memory; a file that is too large is not opened. */
export function proveOne({ path, listed }: FileToProve, against: Against | null, shell: Shell): Outcome<ProvedFile> {
  const whole = resolve(shell.currentFolder, path);
  const size = attemptReading(() => statSync(whole).size, path);
  if (!size.ok) return size;
  const refused = refuseLargeFile(size.value, path);
  if (refused !== null) return { ok: true, value: refused, findings: [] };
  const bytes = readBytes(whole, path);
  if (!bytes.ok) return bytes;
  return { ok: true, value: proveBytes({ path, listed }, bytes.value, against), findings: [] };
}
