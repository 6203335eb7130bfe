/** The sheet that `read` is given: a spreadsheet, or the one that a job names. */
import { dirname, resolve } from "node:path";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import type { JobFile } from "../job/index.js";
import { readJobFile } from "../job/index.js";
import type { InputFile } from "../readers/inputs.js";
import type { SourceNode } from "../readers/source.js";
import { findNode } from "../readers/source.js";
import { spreadsheetKind } from "../readers/spreadsheet-kind.js";
import { readBytes } from "./file-system.js";
import { fileFault } from "./findings.js";
import { foreignPathOffence } from "./foreign-path.js";
import type { Shell } from "./shell.js";

/** A sheet that was opened. */
export interface ReadSource {
  /** Its name as the user, or the job, has it. */
  readonly name: string;
  readonly path: string;
  readonly file: InputFile;
  /** The job that names it; null for a spreadsheet by itself. */
  readonly job: NamingJob | null;
}

/** A job file that names the sheet. */
export interface NamingJob {
  readonly name: string;
  readonly path: string;
  readonly bytes: Uint8Array;
  readonly root: SourceNode;
}

/** Opens what the user calls `name`. */
export async function openReadSource(name: string, shell: Shell): Promise<Outcome<ReadSource>> {
  const path = resolve(shell.currentFolder, name);
  const content = readBytes(path, name);
  if (!content.ok) return content;
  if (!isJob(name, content.value)) return openSheet({ name, path, job: null }, content.value);
  const parsed = readJobFile(content.value, name);
  if (!parsed.root.ok) return parsed.root;
  return openOfJob({ name, path, bytes: content.value, root: parsed.root.value }, parsed);
}

/** By the name's ending; of other names by the content: a table has no such keys. */
function isJob(name: string, bytes: Uint8Array): boolean {
  if (/\.(ya?ml|json)$/i.test(name)) return true;
  if (/\.(csv|tsv|txt|xlsx)$/i.test(name) || spreadsheetKind(name, bytes) !== null) return false;
  const text = new TextDecoder().decode(bytes.subarray(0, 65_536));
  return /^(job|units|schedule|readFrom|bases)[ \t]*:/m.test(text);
}

async function openOfJob(job: NamingJob, { requests }: JobFile): Promise<Outcome<ReadSource>> {
  const request = requests.find(({ kind }) => kind === "schedule");
  if (request === undefined) return refuse(job.name, "no-schedule", noScheduleWords(job.root));
  const path = resolve(dirname(job.path), request.name);
  const offence = foreignPathOffence(request.name, path);
  if (offence !== null) return refuse(job.name, "foreign-path", `"${request.name}" ${offence}`);
  const content = readBytes(path, request.name);
  if (content.ok) return openSheet({ name: request.name, path, job }, content.value, request.sheet);
  const at = request.at ?? { file: job.name };
  return { ok: false, findings: content.findings.map((finding) => ({ ...finding, at })) };
}

function noScheduleWords(root: SourceNode): string {
  return findNode(root, "bases") === undefined
    ? "the job names no sheet; allowed is schedule: FILE, or the spreadsheet itself in place of the job"
    : "the job has its bases in itself and names no sheet: there is nothing to read";
}

async function openSheet(
  source: Omit<ReadSource, "file">,
  bytes: Uint8Array,
  sheet?: string,
): Promise<Outcome<ReadSource>> {
  const isWorkbook = spreadsheetKind(source.name, bytes) === "xlsx";
  if (!isWorkbook) return { ok: true, value: { ...source, file: bytes }, findings: [] };
  const { openWorkbook } = await import("../readers/workbook.js");
  const opened = await openWorkbook(bytes, source.name, sheet);
  return opened.ok ? { ...opened, value: { ...source, file: opened.value } } : opened;
}

function refuse(name: string, code: string, message: string): { readonly ok: false; readonly findings: Finding[] } {
  return { ok: false, findings: [fileFault(name, code, message)] };
}
