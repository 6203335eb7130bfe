/**
 * The package of a job: files out of an opened job, pure. Bases are made one at a time, so that memory does not grow with
 * the job; the job's own files come in parts as the bases go by.
 */

import type { AnswerBook } from "../checks/answers.js";
import { startAnswerBook } from "../checks/answers.js";
import type { CheckedJob } from "../checks/checked.js";
import type { DigestGatherer, JobDigest } from "../checks/digest.js";
import { startDigest } from "../checks/digest.js";
import { heldLayout } from "../checks/held.js";
import type { CheckRow } from "../checks/index.js";
import { ruleSeverities } from "../checks/index.js";
import { openQuestionsOf } from "../checks/release.js";
import type { PdfMaker } from "../formats/pdf-maker.js";
import type { Job } from "../job/model/job.js";
import type {
  JobOutput,
  MadeFile,
  Output,
  OutputFile,
  PathAndBytes,
  ReducedPage,
  SheetSet,
  Surroundings,
} from "../outputs/index.js";
import { everyOutput, jobOutputs, startSheetSet } from "../outputs/index.js";
import type { BaseFacts } from "../summary/facts.js";
import type { SummaryFile, SummaryQuestion, UnusedSummaryAnswer } from "../summary/model.js";
import type { Question, Questions } from "../summary/questions.js";
import { startQuestions, summarizeQuestions } from "../summary/questions.js";
import { summarizeAnswer, summarizeCheck, summarizeJob } from "../summary/summarize.js";
import type { GrowingFiles, GrowingRest, Part } from "./growing-files.js";
import { startGrowingFiles } from "./growing-files.js";
import { hashOf } from "./hash.js";
import type { BaseAlone, BaseOptions, BaseResult } from "./make-base.js";
import { aroundOf, listFile, makeBases, wants } from "./make-base.js";
import type { LaidOutJob } from "./number-questions.js";

/** How a package is made. */
export interface PackageOptions extends BaseOptions {
  /** `PDFDocument` of pdfkit, for the set of all sheets; without it there is no set. */
  readonly pdf?: PdfMaker | null;
  /** Marks of the bases that growing files are to hold; the others are checked with them and left out. Default all. */
  readonly only?: ReadonlySet<string>;
}

/** One base, made, with its rows as the rules have them, worst first, and the next parts of the job's files. */
export interface BaseInParts extends BaseResult {
  readonly rows: readonly CheckRow[];
  readonly parts: readonly Part[];
}

/** A package that takes its bases one by one, wherever they were made. */
export interface StartedPackage extends Omit<PartwisePackage, "bases"> {
  /** To be called for every base once, in the order of the job. */
  add(made: BaseAlone): BaseInParts;
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
  /** The same, and those that are closed, as the summary has them. */
  readonly everyQuestion: readonly SummaryQuestion[];
  readonly answersNotUsed: readonly UnusedSummaryAnswer[];
  /** Why setting-out files are held; empty when they are not. */
  readonly layoutHeld: readonly string[];
  /** What all rows of the job come to. */
  readonly digest: JobDigest;
  /** Pages of the set that its paper is too small for. */
  readonly reduced: readonly ReducedPage[];
}

/** Makes a package of any size: nothing of a base is kept once the next one is asked for. */
export function makePackageInParts(opened: LaidOutJob, options: PackageOptions): PartwisePackage {
  const { add, ...started } = startPackage(opened, options);
  return { ...started, bases: addBases(makeBases(opened, { ...options, inSet: hasSet(options) }), add) };
}

function* addBases(bases: Iterable<BaseAlone>, add: StartedPackage["add"]): Generator<BaseInParts> {
  for (const base of bases) yield add(base);
}

/** True where the bases are to hand over the pages of a set. */
export function hasSet(options: PackageOptions): boolean {
  return (options.pdf ?? null) !== null && wants(options, SET);
}

/** Starts a package whose bases are handed in as they are made. */
export function startPackage(opened: LaidOutJob, options: PackageOptions): StartedPackage {
  refuseBadOptions(options);
  const { job, plan, layout: rows } = opened;
  const files = startGrowingFiles(options);
  const held = new Map<string, readonly string[]>();
  const facts: BaseFacts[] = [];
  const layoutHeld = heldLayout(rows, job.unit);
  const [asked, answers, digest] = [startQuestions(job), startAnswerBook(job, ruleSeverities), startDigest()];
  const ask = once(() => {
    asked.addLayout(rows);
    answers.addLayout(rows);
    digest.add({ mark: "", quantity: 0, template: null, reasons: layoutHeld.reasons, rows });
    return { live: asked.list(), closed: asked.closed(), digest: digest.digest() };
  });
  const [live, closed] = [() => ask().live, () => ask().closed];
  const end = once(() => {
    const questions = live();
    const everyQuestion = summarizeQuestions(questions, closed());
    const answersNotUsed = answers.unused().map((each) => summarizeAnswer(each));
    const said = { questions, everyQuestion, answersNotUsed, layoutHeld: layoutHeld.reasons };
    return onlyAbout(options.only, { checks: rows, ...said });
  });
  const growingRest = (): GrowingRest => {
    const { checks, ...said } = end();
    return { checks: checks.map((row) => summarizeCheck(row, job.unit)), ...said, job: summarizeJob(job), facts };
  };
  const set = startSet(job, options, live);
  return {
    head: files.head(job),
    add: startAdding(opened, files, { held, asked, answers, digest, set, facts }, options.only),
    documents: makeDocuments(
      { job, plan, rows, held, layoutHeld, layoutOpen: openQuestionsOf("", rows) },
      files,
      {
        ...{
          set,
          pdf: options.pdf ?? null,
          paper: options.paper ?? null,
          facts,
          questions: live,
          closedQuestions: closed,
        },
        ...{ digest: () => ask().digest, closedFiles: () => files.close(growingRest()) },
      },
      options,
    ),
    rest: () => {
      const { checks, ...said } = end();
      return {
        ...files.end(growingRest()),
        rows: checks,
        ...said,
        digest: ask().digest,
        reduced: set?.reduced ?? [],
      };
    },
  };
}

/** What is said at the end of some bases alone: their questions, and the rows and answers that name them. */
function onlyAbout(only: ReadonlySet<string> | undefined, end: SaidAtEnd): SaidAtEnd {
  if (only === undefined) return end;
  const isNamed = (words: string): boolean => words.split(/[\s,;:/]+/).some((word) => only.has(word));
  return {
    checks: end.checks.filter(({ subject }) => isNamed(subject)),
    questions: end.questions.filter(({ places }) => places.some(({ mark }) => only.has(mark))),
    everyQuestion: end.everyQuestion.filter(({ bases }) => bases.some((mark) => only.has(mark))),
    answersNotUsed: end.answersNotUsed.filter(({ mark }) => only.has(mark)),
    layoutHeld: end.layoutHeld,
  };
}

type SaidAtEnd = Pick<GrowingRest, "questions" | "everyQuestion" | "answersNotUsed" | "layoutHeld"> & {
  readonly checks: readonly CheckRow[];
};

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
  return pdf === null || !hasSet(options) ? null : startSheetSet(job, { maker: pdf, paper, version, questions });
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
  readonly digest: DigestGatherer;
  readonly set: SheetSet | null;
  readonly facts: BaseFacts[];
}

function startAdding(
  { job, bases }: LaidOutJob,
  files: GrowingFiles,
  { held, asked, answers, digest, set, facts }: Gathered,
  only: PackageOptions["only"],
): StartedPackage["add"] {
  let [next, written] = [0, 0];
  return ({ reasons, answered, pages, facts: known, ...made }) => {
    const base = bases[next]?.base;
    if (base === undefined) throw new RangeError(`${made.mark}: every base was added already`);
    const rows = withAnswers(made.rows, answered, job);
    if (made.held) held.set(made.mark, reasons);
    asked.addBase({ base, rows });
    answers.addBase(made.mark, rows);
    const { quantity, template } = known;
    digest.add({ mark: made.mark, quantity, template, reasons: made.held ? reasons : [], rows });
    facts.push(known);
    for (const page of pages) set?.add(page);
    const givenBy = rows.map((row) => row.givenBy);
    next += 1;
    if (only?.has(made.mark) === false) return { ...made, rows, parts: [] };
    written += 1;
    return { ...made, rows, parts: files.base({ ...made, givenBy }, written === 1) };
  };
}

/** An answer is known by being the one of the job, which that of another thread is not. */
function withAnswers(
  rows: readonly CheckRow[],
  answered: BaseAlone["answered"],
  { answers }: Job,
): readonly CheckRow[] {
  return rows.map((row, i) => (row.answer === null ? row : { ...row, answer: answers[answered[i] ?? -1] ?? null }));
}

/** Whole files, one at a time. */
function* makeDocuments(
  checked: CheckedJob,
  files: GrowingFiles,
  gathered: Omit<Surroundings, keyof ReturnType<typeof aroundOf>>,
  options: PackageOptions,
): Generator<OutputFile> {
  const made: MadeFile[] = [];
  for (const output of jobOutputs.filter(
    (each) => wants(options, each.kind) || (each.inSet === true && gathered.set !== null),
  ))
    for (const { path, bytes } of writeDocument(output, checked, { ...aroundOf(options, made), ...gathered })) {
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
