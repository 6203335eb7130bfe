/**
 * The package of a job: files out of an opened job, pure. Bases are made one at a time, so that memory does not grow with
 * the job; the job's own files come in parts as the bases go by.
 */

import type { AnswerBook } from "../checks/answers.js";
import { startAnswerBook } from "../checks/answers.js";
import type { CheckedBase, CheckedJob } from "../checks/checked.js";
import { checkBase, checkWholeJob } from "../checks/checked.js";
import { heldLayout } from "../checks/held.js";
import type { CheckRow } from "../checks/index.js";
import { ruleSeverities } from "../checks/index.js";
import { ProgramFault } from "../diagnostics/program-fault.js";
import type {
  BaseOutput,
  JobOutput,
  MadeFile,
  OutputFile,
  OutputKind,
  PathAndBytes,
  Surroundings,
  SvgDocument,
} from "../outputs/index.js";
import { baseOutputs, everyOutput, folderOf, jobOutputs } from "../outputs/index.js";
import type { SummaryBase, SummaryFile, UnusedSummaryAnswer } from "../summary/model.js";
import type { Question, Questions } from "../summary/questions.js";
import { startQuestions } from "../summary/questions.js";
import { summarizeAnswer, summarizeBase, summarizeCheck } from "../summary/summarize.js";
import type { GrowingFiles, Part } from "./growing-files.js";
import { startGrowingFiles } from "./growing-files.js";
import type { Hasher } from "./hash.js";
import { hashOf } from "./hash.js";
import type { OpenedJob } from "./open.js";

/** How a package is made. */
export interface PackageOptions {
  /** Version of the program, printed on every sheet. */
  readonly version: string;
  /** Any DOM for svg.js; null where no drawing is wanted. */
  readonly document: SvgDocument | null;
  /** Writes the cut files of held bases too, with HELD in their names. Default false. */
  readonly includeHeld?: boolean;
  /** Which files to make. Default all; empty to check only. */
  readonly outputs?: readonly OutputKind[];
  /** SHA-256; a shell may hand in its platform's own, which is faster than the one that runs everywhere. */
  readonly startSha256?: () => Hasher;
}

/** One base, made. */
export interface BaseResult {
  readonly mark: string;
  readonly held: boolean;
  readonly summary: SummaryBase;
  readonly files: readonly OutputFile[];
}

/** One base, made, with its rows as the rules have them, worst first, and the next parts of the job's files. */
export interface BaseInParts extends BaseResult {
  readonly rows: readonly CheckRow[];
  readonly parts: readonly Part[];
}

/** A package whose growing files are handed out in parts: `head`, the parts of each base, `rest`; documents between the last two. */
export interface PartwisePackage {
  readonly head: readonly Part[];
  /** To be gone through once. */
  readonly bases: Iterable<BaseInParts>;
  /** The job's documents, whole files; to be gone through once, after the bases and before `rest`, which lists them. */
  readonly documents: Iterable<OutputFile>;
  /** After the last base: the closing parts, the job's own rows, and the list of job files as the summary has it. */
  rest(): PackageRest;
}

/** What is left when every base is made. */
export interface PackageRest {
  readonly parts: readonly Part[];
  readonly files: readonly SummaryFile[];
  /** Ledger rows of the whole job, worst first. */
  readonly rows: readonly CheckRow[];
  /** Of every base and of the whole job, numbered. */
  readonly questions: readonly Question[];
  readonly answersNotUsed: readonly UnusedSummaryAnswer[];
  /** Why files of the setting-out folder are held; empty when they are not. */
  readonly layoutHeld: readonly string[];
}

/** Makes a package of any size: nothing of a base is kept once the next one is asked for. */
export function makePackageInParts(opened: OpenedJob, options: PackageOptions): PartwisePackage {
  refuseBadOptions(options);
  const { job, plan, bases } = opened;
  const files = startGrowingFiles(options);
  const held = new Map<string, readonly string[]>();
  const rows = checkWholeJob(job, plan, bases);
  const layoutHeld = heldLayout(rows, job.unit);
  const [asked, answers] = [startQuestions(job), startAnswerBook(job, ruleSeverities)];
  return {
    head: files.head(job),
    bases: makeBases(opened, files, { held, asked, answers }, options),
    documents: makeDocuments({ job, plan, rows, held, layoutHeld }, files, options),
    rest: () => {
      asked.addLayout(rows);
      answers.addLayout(rows);
      const checks = rows.map((row) => summarizeCheck(row, job.unit));
      const [questions, answersNotUsed] = [asked.list(), answers.unused().map((each) => summarizeAnswer(each))];
      const said = { questions, answersNotUsed, layoutHeld: layoutHeld.reasons };
      return { ...files.end({ checks, ...said }), rows, ...said };
    },
  };
}

/**
 * What a caller got wrong: throws TypeError where a drawing is wanted and there is nothing to draw it on, RangeError for a
 * kind of output that there is not.
 */
export function refuseBadOptions({ document, outputs: wanted }: PackageOptions): void {
  const unknown = (wanted ?? []).filter((kind) => !everyOutput.some((output) => output.kind === kind));
  if (unknown.length > 0) throw new RangeError(`${unknown.join(", ")}: there is no such kind of output`);
  if (document !== null && document !== undefined) return;
  const drawn = everyOutput.filter((output) => output.drawn && (wanted?.includes(output.kind) ?? true));
  if (drawn.length === 0) return;
  const kinds = drawn.map(({ kind }) => kind).join(", ");
  throw new TypeError(`${kinds}: drawings are made with svg.js, which needs a document; allowed is null without them`);
}

/** What is kept of the bases as they go by. */
interface Gathered {
  readonly held: Map<string, readonly string[]>;
  readonly asked: Questions;
  readonly answers: AnswerBook;
}

function* makeBases(
  { job, bases }: OpenedJob,
  files: GrowingFiles,
  { held, asked, answers }: Gathered,
  options: PackageOptions,
): Generator<BaseInParts> {
  const known: KnownFiles = new Map();
  for (const [index, base] of bases.entries()) {
    const checked = checkBase(job, base);
    if (checked.held.length > 0) held.set(checked.base.mark, checked.held);
    asked.addBase(checked);
    answers.addBase(checked.base.mark, checked.rows);
    const made = makeBase(checked, options, known);
    const givenBy = checked.rows.map((row) => row.givenBy);
    yield { ...made, rows: checked.rows, parts: files.base({ ...made, givenBy }, index === 0) };
  }
}

/** Files of templates of several bases that were handed out already, by their paths, without their bytes. */
export type KnownFiles = Map<string, ListedFile>;

interface ListedFile {
  readonly made: MadeFile;
  readonly listed: SummaryFile;
}

/**
 * The files of one base, and what the summary says of it: the same at any time, alone or in the company of others. A file of
 * a template that serves several bases is handed out once for all calls with one `known`, and listed each time.
 */
export function makeBase(checked: CheckedBase, options: PackageOptions, known: KnownFiles = new Map()): BaseResult {
  const { files, listed } = writeBaseFiles(checked, options, known);
  const summary: SummaryBase = { ...summarizeBase(checked), files: listed };
  return { mark: checked.base.mark, held: checked.held.length > 0, summary, files };
}

const wants = ({ outputs: wanted }: PackageOptions, kind: OutputKind): boolean => wanted?.includes(kind) ?? true;

function surroundings(options: PackageOptions, made: readonly MadeFile[]): Surroundings {
  const { document, version, includeHeld = false } = options;
  return { document, version, includeHeld, made };
}

interface BaseFiles {
  readonly files: readonly OutputFile[];
  readonly listed: readonly SummaryFile[];
}

function writeBaseFiles(checked: CheckedBase, options: PackageOptions, known: KnownFiles): BaseFiles {
  const files: OutputFile[] = [];
  const all: ListedFile[] = [];
  for (const output of baseOutputs) {
    if (!wants(options, output.kind) || !output.applies(checked, options.includeHeld ?? false)) continue;
    const path = `${folderOf(checked)}/${output.fileName(checked)}`;
    const before = known.get(path);
    if (before !== undefined) {
      all.push(before);
      continue;
    }
    const around = surroundings(
      options,
      all.map(({ made }) => made),
    );
    const file = writeBaseFile(output, path, checked, around, options.startSha256);
    const { bytes: _bytes, ...named } = file;
    const entry: ListedFile = { made: { ...named, role: output.role }, listed: listFile(file) };
    if (checked.shared !== null) known.set(path, entry);
    all.push(entry);
    files.push(file);
  }
  return { files, listed: all.map(({ listed }) => listed) };
}

function writeBaseFile(
  output: BaseOutput,
  path: string,
  checked: CheckedBase,
  around: Surroundings,
  startSha256: PackageOptions["startSha256"],
): OutputFile {
  const { kind, cut } = output;
  const bytes = output.write(checked, around);
  const differences = cut?.readBack(bytes, checked) ?? [];
  if (differences.length > 0)
    throw new ProgramFault(`${path}: read back, the file differs from its plate: ${differences.join("; ")}`);
  const file = { kind, path, bytes, sha256: hashOf(bytes, startSha256) };
  return cut === undefined ? file : { ...file, layers: cut.layers(checked) };
}

function listFile({ kind, path, bytes, sha256, layers }: OutputFile): SummaryFile {
  return { kind, path, bytes: bytes.length, sha256, ...(layers === undefined ? {} : { layers }) };
}

/** Whole files, one at a time. */
function* makeDocuments(checked: CheckedJob, files: GrowingFiles, options: PackageOptions): Generator<OutputFile> {
  const made: MadeFile[] = [];
  for (const output of jobOutputs.filter(({ kind }) => wants(options, kind)))
    for (const { path, bytes } of writeDocument(output, checked, surroundings(options, made))) {
      const named = { kind: output.kind, path, sha256: hashOf(bytes, options.startSha256) };
      made.push({ ...named, role: output.role });
      files.note(listFile({ ...named, bytes }));
      yield { ...named, bytes };
    }
}

/** Its files, one at a time; none of a document that needs a plan where the job has none. */
export function writeDocument(output: JobOutput, checked: CheckedJob, around: Surroundings): Iterable<PathAndBytes> {
  switch (output.needs) {
    case "job":
      return output.write(checked, around);
    case "plan":
      return checked.plan === null ? [] : output.write({ ...checked, plan: checked.plan }, around);
  }
}
