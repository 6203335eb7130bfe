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
import type { PdfMaker } from "../formats/pdf-maker.js";
import type { Job } from "../job/model/job.js";
import type {
  BaseOutput,
  JobOutput,
  MadeFile,
  Output,
  OutputFile,
  OutputKind,
  PaperName,
  PathAndBytes,
  ReducedPage,
  SheetSet,
  Surroundings,
  SvgDocument,
} from "../outputs/index.js";
import { baseOutputs, everyOutput, folderOf, jobOutputs, startSheetSet } from "../outputs/index.js";
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
  /** `PDFDocument` of pdfkit, for the set of all sheets; without it there is no set. */
  readonly pdf?: PdfMaker | null;
  /** The paper that the pages of the set are put on. Default: each page has the size of its sheet. */
  readonly paper?: PaperName | null;
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
  /** Pages of the set that its paper is too small for. */
  readonly reduced: readonly ReducedPage[];
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
  const ask = once(() => {
    asked.addLayout(rows);
    answers.addLayout(rows);
    return asked.list();
  });
  const set = startSet(job, options, ask);
  return {
    head: files.head(job),
    bases: makeBases(opened, files, { held, asked, answers, set }, options),
    documents: makeDocuments({ job, plan, rows, held, layoutHeld }, files, set, options),
    rest: () => {
      const questions = ask();
      const checks = rows.map((row) => summarizeCheck(row, job.unit));
      const answersNotUsed = answers.unused().map((each) => summarizeAnswer(each));
      const said = { questions, answersNotUsed, layoutHeld: layoutHeld.reasons };
      return { ...files.end({ checks, ...said }), rows, ...said, reduced: set?.reduced ?? [] };
    },
  };
}

function once<T>(work: () => T): () => T {
  let done: { readonly value: T } | null = null;
  return () => {
    done ??= { value: work() };
    return done.value;
  };
}

const SET = "sheet-set-pdf";

/** null where no set is wanted, or there is nothing to write it with. */
function startSet(job: Job, options: PackageOptions, questions: () => readonly Question[]): SheetSet | null {
  const { pdf = null, paper = null, version } = options;
  return pdf === null || !wants(options, SET) ? null : startSheetSet(job, { maker: pdf, paper, version, questions });
}

/**
 * What a caller got wrong: throws TypeError where a drawing is wanted and there is nothing to draw it on, RangeError for a
 * kind of output that there is not.
 */
export function refuseBadOptions({ document, pdf, outputs: wanted }: PackageOptions): void {
  const unknown = (wanted ?? []).filter((kind) => !everyOutput.some((output) => output.kind === kind));
  if (unknown.length > 0) throw new RangeError(`${unknown.join(", ")}: there is no such kind of output`);
  if ((pdf ?? null) === null && (wanted ?? []).includes(SET))
    throw new TypeError(`${SET}: the set is made with pdfkit, whose PDFDocument is to be handed in as pdf`);
  if (document !== null && document !== undefined) return;
  const isDrawn = ({ drawn, inSet, kind }: Output) =>
    drawn && (wanted === undefined || wanted.some((each) => each === kind) || (inSet === true && wanted.includes(SET)));
  const drawn = everyOutput.filter(isDrawn);
  if (drawn.length === 0) return;
  const kinds = drawn.map(({ kind }) => kind).join(", ");
  throw new TypeError(`${kinds}: drawings are made with svg.js, which needs a document; allowed is null without them`);
}

/** What is kept of the bases as they go by. */
interface Gathered {
  readonly held: Map<string, readonly string[]>;
  readonly asked: Questions;
  readonly answers: AnswerBook;
  readonly set: SheetSet | null;
}

function* makeBases(
  { job, bases }: OpenedJob,
  files: GrowingFiles,
  { held, asked, answers, set }: Gathered,
  options: PackageOptions,
): Generator<BaseInParts> {
  const known: KnownFiles = new Map();
  for (const [index, base] of bases.entries()) {
    const checked = checkBase(job, base);
    if (checked.held.length > 0) held.set(checked.base.mark, checked.held);
    asked.addBase(checked);
    answers.addBase(checked.base.mark, checked.rows);
    const made = makeBase(checked, options, known, set);
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
export function makeBase(
  checked: CheckedBase,
  options: PackageOptions,
  known: KnownFiles = new Map(),
  set: SheetSet | null = null,
): BaseResult {
  const { files, listed } = writeBaseFiles(checked, options, known, set);
  const summary: SummaryBase = { ...summarizeBase(checked), files: listed };
  return { mark: checked.base.mark, held: checked.held.length > 0, summary, files };
}

const wants = ({ outputs: wanted }: PackageOptions, kind: OutputKind): boolean => wanted?.includes(kind) ?? true;

function surroundings(options: PackageOptions, made: readonly MadeFile[], set: SheetSet | null): Surroundings {
  const { document, version, includeHeld = false } = options;
  return { document, version, includeHeld, made, set };
}

interface BaseFiles {
  readonly files: readonly OutputFile[];
  readonly listed: readonly SummaryFile[];
}

function writeBaseFiles(
  checked: CheckedBase,
  options: PackageOptions,
  known: KnownFiles,
  set: SheetSet | null,
): BaseFiles {
  const files: OutputFile[] = [];
  const all: ListedFile[] = [];
  for (const output of baseOutputs) {
    const isWanted = wants(options, output.kind);
    if (!isWanted && !isForSet(output, set)) continue;
    if (!output.applies(checked, options.includeHeld ?? false)) continue;
    const path = `${folderOf(checked)}/${output.fileName(checked)}`;
    const before = known.get(path);
    if (before !== undefined) {
      if (isWanted) all.push(before);
      continue;
    }
    const around = surroundings(
      options,
      all.map(({ made }) => made),
      set,
    );
    const file = writeBaseFile(output, path, checked, around, options.startSha256);
    const { bytes: _bytes, ...named } = file;
    const entry: ListedFile = { made: { ...named, role: output.role }, listed: listFile(file) };
    if (checked.shared !== null) known.set(path, entry);
    if (!isWanted) continue;
    all.push(entry);
    files.push(file);
  }
  return { files, listed: all.map(({ listed }) => listed) };
}

const isForSet = ({ inSet }: Output, set: SheetSet | null): boolean => inSet === true && set !== null;

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
function* makeDocuments(
  checked: CheckedJob,
  files: GrowingFiles,
  set: SheetSet | null,
  options: PackageOptions,
): Generator<OutputFile> {
  const made: MadeFile[] = [];
  for (const output of jobOutputs.filter((each) => wants(options, each.kind) || isForSet(each, set)))
    for (const { path, bytes } of writeDocument(output, checked, surroundings(options, made, set))) {
      if (!wants(options, output.kind)) continue;
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
