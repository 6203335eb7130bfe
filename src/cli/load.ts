/** Opens the job file and the files that it names. */
import { existsSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import type { RequestedFile } from "../job/index.js";
import { readJob, readJobFile } from "../job/index.js";
import type { InputFile, Inputs } from "../readers/inputs.js";
import { vocabulary } from "../tasks/open.js";
import { openRequested } from "../tasks/open-requested.js";
import { readBytes, readBytesIfThere } from "./file-system.js";
import { fileFault } from "./findings.js";
import { foreignPathOffence } from "./foreign-path.js";
import { SUMMARY } from "./package-contents.js";
import type { Shell } from "./shell.js";
import { INSTALLED, todayOf } from "./shell.js";

/** The job file, parsed, and the files that it names. Files that are not there are left for the job's reader to tell, with their place in the job. */
export async function loadInputs(job: string, shell: Shell): Promise<Outcome<Inputs>> {
  const path = resolve(shell.currentFolder, job);
  const offence = packageOffence(path, job);
  if (offence !== null) return { ok: false, findings: [offence] };
  const content = readBytes(path, job);
  if (!content.ok) return content;
  const jobFile = readJobFile(content.value, job);
  const files = new Map<string, InputFile>([[job, jobFile]]);
  const findings: Finding[] = [];
  for (const request of jobFile.requests) {
    const folder = request.relativeTo === "packaged" ? INSTALLED : dirname(path);
    const content = readRequested(request, resolve(folder, request.name), job);
    for (const finding of content.findings) findings.push(finding);
    if (content.ok && content.value !== null)
      files.set(request.key ?? request.name, await openRequested(content.value, request));
  }
  const inputs: Inputs = { job, files };
  if (findings.length === 0) return { ok: true, value: inputs, findings };
  const others = readJob(inputs, { date: todayOf(shell), vocabulary }).findings;
  const isNews = ({ code }: Finding): boolean => code !== "missing-file" && code !== "unknown-shop";
  return { ok: false, findings: [...findings, ...others.filter(isNews)] };
}

/** A package is no job: what else may be wanted of it is named. */
function packageOffence(path: string, name: string): Finding | null {
  const isSummary = basename(path) === SUMMARY;
  const folder = isSummary ? dirname(name) : name;
  if (!existsSync(isSummary ? path : join(path, SUMMARY))) return null;
  const message = "is a package, and no job; allowed is the job file that it was made of";
  const hint = `whether its files are those that were checked: rodplate proof ${folder}; what a job changes of it: rodplate compare ${folder} JOB`;
  return { ...fileFault(name, "package-not-job", message), hint };
}

/** What the job has no business with is not even looked for. */
function readRequested(request: RequestedFile, path: string, job: string): Outcome<Uint8Array | null> {
  const offence = foreignPathOffence(request.name, path);
  if (offence === null) return readBytesIfThere(path, request.name);
  const finding: Finding = {
    ...fileFault(job, "foreign-path", `"${request.name}" ${offence}`),
    at: request.at ?? { file: job },
  };
  return { ok: false, findings: [finding] };
}
