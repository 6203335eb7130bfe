/** The job file that `read --out` writes: absent, or one that an earlier reading wrote and nobody changed below its marker. */
import { dirname, relative, resolve } from "node:path";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import type { SourceNode } from "../readers/source.js";
import { findNode } from "../readers/source.js";
import { readYaml } from "../readers/yaml.js";
import type { JobParts } from "../tasks/job-parts.js";
import { splitJob } from "../tasks/job-parts.js";
import { readBytesIfThere } from "./file-system.js";
import { fileFault } from "./findings.js";
import { foreignPathOffence } from "./foreign-path.js";
import type { NamingJob, ReadSource } from "./read-source.js";
import type { Shell } from "./shell.js";

/** Where the job goes. */
export interface ReadTarget {
  /** As the user calls it. */
  readonly name: string;
  readonly path: string;
  /** The sheet's name as the job file has it. */
  readonly sheet: string;
  readonly there: Earlier | null;
}

/** An earlier reading in its place. */
export interface Earlier {
  readonly bytes: Uint8Array;
  readonly own: Uint8Array;
  /** The person's part, read. */
  readonly root: SourceNode;
}

/** What is there, or why it is not written over. */
export function openReadTarget(out: string, source: ReadSource, shell: Shell): Outcome<ReadTarget> {
  const path = resolve(shell.currentFolder, out);
  const sheet = relative(dirname(path), source.path).replaceAll("\\", "/");
  const content = readBytesIfThere(path, out);
  if (!content.ok) return content;
  const offence = /\.ya?ml$/i.test(out)
    ? foreignPathOffence(sheet, source.path)
    : "is no .yaml file; allowed is a name that ends so";
  if (offence !== null) return refuse(out, offence);
  if (content.value === null) return openNew({ name: out, path, sheet, there: null }, source);
  const parts = splitJob(content.value);
  if (parts === null)
    return refuse(
      out,
      "is there already, and was not written by rodplate read: it is not written over; name another file",
    );
  return openAgain({ name: out, path, sheet }, content.value, parts, source);
}

/** Files that a job names are told from its own folder. */
function openNew(target: ReadTarget, { job }: ReadSource): Outcome<ReadTarget> {
  if (job === null || dirname(job.path) === dirname(target.path)) return { ok: true, value: target, findings: [] };
  return refuse(
    target.name,
    `lies in another folder than ${job.name}, whose files are named from there; allowed is a name beside it`,
  );
}

function openAgain(
  target: Omit<ReadTarget, "there">,
  bytes: Uint8Array,
  { own, isUnchanged }: JobParts,
  source: ReadSource,
): Outcome<ReadTarget> {
  const { name } = target;
  const read = readYaml(own, name);
  if (!read.ok) return read;
  if (!isUnchanged) return refuse(name, CHANGED);
  const offence = otherSourceWords(read.value, target, source);
  if (offence !== null) return refuse(name, offence);
  return { ok: true, value: { ...target, there: { bytes, own, root: read.value } }, findings: [] };
}

const CHANGED =
  "was changed below its line of signs #, where reading writes: it is left as it is. Put what is meant above that line, under readFrom (cells: { E7: TEXT }), or under defaults, and take the change back; or name another file";

/** An earlier reading is read again from the sheet that it names, and by its own answers. */
function otherSourceWords(
  root: SourceNode,
  { name, path }: Omit<ReadTarget, "there">,
  { name: sheet, path: source, job }: ReadSource,
): string | null {
  if (job !== null && job.path !== path)
    return `is there from an earlier reading, with answers of its own, beside those of ${job.name}; allowed is rodplate read ${name} --out ${name}, or another name`;
  const file = sheetOf(root);
  if (file === null) return "names no sheet above its line of signs #; allowed is readFrom: { file: ... }";
  if (resolve(dirname(path), file) === source) return null;
  return `was read from ${file}, not from ${sheet}; allowed is that file, or another name`;
}

function sheetOf(root: SourceNode): string | null {
  for (const key of ["readFrom", "schedule"]) {
    const node = findNode(root, key);
    const file = node?.kind === "scalar" ? node : findNode(node, "file");
    if (file?.kind === "scalar") return file.text;
  }
  return null;
}

function refuse(name: string, message: string): { readonly ok: false; readonly findings: Finding[] } {
  return { ok: false, findings: [fileFault(name, "read-target", message)] };
}

/** The job whose answers are used: the earlier reading's own, else the one that names the sheet. */
export function answeringJob(target: ReadTarget | null, job: NamingJob | null): SourceNode | null {
  return target?.there?.root ?? job?.root ?? null;
}
