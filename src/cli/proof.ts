/** `rodplate proof FILE... [--against JOB]`: says what is wrong with cut files, and which plate of the job each is. */
import { statSync } from "node:fs";
import { resolve } from "node:path";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { formatFinding } from "../diagnostics/finding.js";
import { writeProofText } from "../formats/proof-text.js";
import { type Against, againstJob, isStop, type ProvedFile, proveFile, refuseLargeFile } from "../proof/index.js";
import type { Command } from "./arguments.js";
import { attemptReading, readBytes } from "./file-system.js";
import { showFindings } from "./findings.js";
import { openFile } from "./open.js";
import { startProgress } from "./progress.js";
import type { ExitCode, Shell } from "./shell.js";
import { hasColor } from "./shell.js";

/** Ends with 0 where no file has a finding that stops it, 1 where one has, 2 where a file or the job cannot be read. */
export async function runProof(command: Extract<Command, { kind: "proof" }>, shell: Shell): Promise<ExitCode> {
  const { json } = command;
  const against = command.against === null ? null : await loadAgainst(command.against, shell);
  if (against !== null) await showFindings(against.findings, json, shell);
  if (against !== null && !against.ok) return 2;
  const progress = startProgress(shell, "proved");
  const proved: ProvedFile[] = [];
  const faults: Finding[] = [];
  for (const path of command.files) {
    const file = proveOne(path, against?.value ?? null, shell);
    if (file.ok) proved.push(file.value);
    for (const fault of file.findings) faults.push(fault);
    await progress.show(proved.length, command.files.length);
  }
  await progress.end();
  for (const fault of faults) await shell.err.write(`${formatFinding(fault)}\n`);
  if (json) await shell.out.write(`${JSON.stringify({ files: proved }, null, 2)}\n`);
  else if (proved.length > 0) await shell.out.write(writeProofText(proved, { color: hasColor(shell) }));
  if (faults.length > 0) return 2;
  return proved.some(({ findings }) => findings.some(isStop)) ? 1 : 0;
}

async function loadAgainst(name: string, shell: Shell): Promise<Outcome<Against>> {
  const opened = await openFile(name, shell);
  return opened.ok ? { ...opened, value: againstJob(opened.value) } : opened;
}

/** One file after the other, so that only one is held in memory; a file that is too large is not opened. */
function proveOne(path: string, against: Against | null, shell: Shell): Outcome<ProvedFile> {
  const whole = resolve(shell.currentFolder, path);
  const size = attemptReading(() => statSync(whole).size, path);
  if (!size.ok) return size;
  const refused = refuseLargeFile(size.value, path);
  if (refused !== null) return { ok: true, value: refused, findings: [] };
  const bytes = readBytes(whole, path);
  return bytes.ok ? { ok: true, value: proveFile(bytes.value, path, against), findings: [] } : bytes;
}
