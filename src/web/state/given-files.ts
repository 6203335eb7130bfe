/** Files that a person hands over: read, and found out which is the job. */
import { decodeText } from "../../readers/text.js";
import type { Glance } from "../engine/task-model.js";
import { startTask } from "../engine/tasks.js";
import { lastPart } from "./file-names.js";
import type { GivenFile } from "./model.js";

/** A file with what is in it; `text` where it may be a job or a shop file. */
export interface ReadFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly handle: FileSystemFileHandle | null;
}

/** A job among the files, and what it names. */
export interface FoundJob {
  readonly file: ReadFile;
  readonly text: string;
  readonly glance: Glance;
}

/** Files as they were read, and in a sentence each what could not be. */
export interface ReadFiles {
  readonly files: readonly ReadFile[];
  readonly refused: readonly string[];
}

const MEGABYTE = 1024 * 1024;
/** As large as a text is read, and any other file. */
const [LARGEST_TEXT, LARGEST_FILE] = [16 * MEGABYTE, 32 * MEGABYTE];

/** By its name. */
export const MAY_BE_JOB = /\.(ya?ml|json)$/i;

/** Reads what is not too large; sizes are looked at before. */
export async function readGiven(given: readonly GivenFile[]): Promise<ReadFiles> {
  const files: ReadFile[] = [];
  const refused: string[] = [];
  for (const { file, handle } of given) {
    const most = MAY_BE_JOB.test(file.name) ? LARGEST_TEXT : LARGEST_FILE;
    if (file.size > most) {
      refused.push(`${file.name} has ${Math.ceil(file.size / MEGABYTE)} MB; at most ${most / MEGABYTE} MB are read.`);
      continue;
    }
    const bytes = await file.arrayBuffer().catch(() => null);
    if (bytes === null) refused.push(`${file.name} cannot be read: it is a folder, or was moved or locked meanwhile.`);
    else files.push({ name: file.name, bytes: new Uint8Array(bytes), handle });
  }
  return { files, refused };
}

/** Those that are jobs by what stands in them; and in a sentence each what is no text. */
export async function findJobs(
  files: readonly ReadFile[],
): Promise<{ readonly jobs: readonly FoundJob[]; readonly refused: readonly string[] }> {
  const jobs: FoundJob[] = [];
  const refused: string[] = [];
  for (const file of files.filter(({ name }) => MAY_BE_JOB.test(name))) {
    const read = decodeText(file.bytes, file.name, "allowed is a job file (YAML)");
    if (!read.ok) refused.push(`${file.name}: ${read.finding.message}.`);
    else {
      const glance = await glanceAt(file.name, read.text);
      if (glance.isJob) jobs.push({ file, text: read.text, glance });
    }
  }
  return { jobs, refused };
}

/** What a text is, found out in a thread of its own. */
export function glanceAt(name: string, text: string): Promise<Glance> {
  return startTask("glance", { name, text }, () => {}).answer;
}

/** Files by the names that a job has for them; those that it does not name are left over. */
export function placeFiles(
  files: readonly ReadFile[],
  names: readonly string[],
): { readonly placed: ReadonlyMap<string, Uint8Array>; readonly left: readonly ReadFile[] } {
  const placed = new Map<string, Uint8Array>();
  const left: ReadFile[] = [];
  for (const file of files) {
    const own = names.find((name) => name === file.name) ?? names.find((name) => lastPart(name) === file.name);
    if (own === undefined) left.push(file);
    else placed.set(own, file.bytes);
  }
  return { placed, left };
}
