/** The whole way as one pure function: names and texts in, files out. No clock, no file system. */
import { checkBase } from "../checks/checked.js";
import type { Finding } from "../diagnostics/finding.js";
import type { OutputFile } from "../outputs/index.js";
import { growingOutputs } from "../outputs/index.js";
import type { Inputs } from "../readers/inputs.js";
import type { Summary, SummaryBase } from "../summary/model.js";
import type { Question } from "../summary/questions.js";
import { summarizeCheck, summarizeJob } from "../summary/summarize.js";
import type { Part } from "./growing-files.js";
import { hashOf } from "./hash.js";
import type { BaseResult, KnownFiles } from "./make-base.js";
import { makeBase } from "./make-base.js";
import { numberQuestions } from "./number-questions.js";
import type { OpenOptions } from "./open.js";
import { openJob } from "./open.js";
import type { OpenedJob } from "./opened-job.js";
import type { BaseInParts, PackageOptions } from "./package.js";
import { makePackageInParts, refuseBadOptions } from "./package.js";

/** How a job is opened and its package made. */
export interface BuildOptions extends OpenOptions, PackageOptions {}

/** A build whose job files are handed out whole. */
export interface Build {
  readonly findings: readonly Finding[];
  /** null where a finding is an error: there is nothing to write. */
  readonly job: Summary["job"] | null;
  /** May be walked whole, partly, twice or not at all; empty when a finding is an error. */
  readonly bases: Iterable<BaseResult>;
  /** The job's own files and the summary, whatever was walked: makes the bases that nobody asked for yet. Throws without a job. */
  finish(): BuildEnd;
}

/** What a build ends with. */
export interface BuildEnd {
  readonly summary: Summary;
  /** To the engineer of record, numbered; the answered ones too. */
  readonly questions: readonly Question[];
  readonly files: readonly OutputFile[];
}

/** Opens a job and makes its package. Throws on a date that is none, and where a drawing is wanted without a document. */
export function build(inputs: Inputs, options: BuildOptions): Build {
  refuseBadOptions(options);
  const opened = openJob(inputs, options);
  return opened.ok
    ? { findings: opened.findings, ...makePackage(opened.value, options) }
    : { findings: opened.findings, job: null, bases: [], finish: refuse };
}

function refuse(): never {
  throw new TypeError("a job with errors has no files");
}

/** The package of an opened job. What once failed stays failed: a package that is not whole is never handed out. */
export function makePackage(unnumbered: OpenedJob, options: PackageOptions): Omit<Build, "findings"> {
  const opened = numberQuestions(unnumbered);
  const parts = makePackageInParts(opened, options);
  const running = parts.bases[Symbol.iterator]();
  const [all, summaries]: [Part[], SummaryBase[]] = [[...parts.head], []];
  const attempt = startAttempts();
  const record = (): BaseResult | null => {
    const next = attempt(() => running.next());
    if (next.done === true) return null;
    for (const part of next.value.parts) all.push(part);
    summaries.push(next.value.summary);
    return resultOf(next.value);
  };
  let end: BuildEnd | null = null;
  const finish = (): BuildEnd => {
    while (record() !== null);
    const documents = [...parts.documents];
    const rest = parts.rest();
    for (const part of rest.parts) all.push(part);
    const checks = rest.rows.map((row) => summarizeCheck(row, opened.job.unit));
    const job = summarizeJob(opened.job);
    const { files: listed, questions, everyQuestion, answersNotUsed, layoutHeld } = rest;
    const said = { checks, layoutHeld, answersNotUsed, questions: everyQuestion };
    const summary: Summary = { schema: 1, job, bases: summaries, ...said, files: listed };
    return { summary, questions, files: [...documents, ...wholeFiles(all, options)] };
  };
  return {
    job: summarizeJob(opened.job),
    bases: { [Symbol.iterator]: () => walk(opened, options, () => summaries.length, record) },
    finish: () => {
      end ??= attempt(finish);
      return end;
    },
  };
}

/** Runs work until some of it throws; all that is attempted afterwards throws the same again. */
function startAttempts(): <T>(work: () => T) => T {
  let fault: { readonly error: unknown } | null = null;
  return (work) => {
    if (fault !== null) throw fault.error;
    try {
      return work();
    } catch (error) {
      fault = { error };
      throw error;
    }
  };
}

/** Bases that were made before are made again: they are the same, and their bytes need not be kept. */
function* walk(
  { job, bases }: OpenedJob,
  options: PackageOptions,
  recorded: () => number,
  record: () => BaseResult | null,
): Generator<BaseResult> {
  const known: KnownFiles = new Map();
  for (const [index, base] of bases.entries()) {
    const made = index < recorded() ? makeBase(checkBase(job, base), options, known) : record();
    if (made !== null) yield made;
  }
}

function resultOf({ mark, held, summary, files, certificates }: BaseInParts): BaseResult {
  return { mark, held, summary, files, certificates };
}

/** Each growing file from its parts, in the order of the registry. */
function wholeFiles(parts: readonly Part[], { startSha256 }: PackageOptions): readonly OutputFile[] {
  const written = growingOutputs.filter(({ kind }) => parts.some((part) => part.kind === kind));
  return written.map(({ kind, path }) => {
    const bytes = joined(parts.filter((part) => part.kind === kind));
    return { kind, path, bytes, sha256: hashOf(bytes, startSha256) };
  });
}

function joined(parts: readonly Part[]): Uint8Array {
  const bytes = new Uint8Array(parts.reduce((size, part) => size + part.bytes.length, 0));
  let at = 0;
  for (const part of parts) {
    bytes.set(part.bytes, at);
    at += part.bytes.length;
  }
  return bytes;
}
