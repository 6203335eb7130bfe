/**
 * The pipeline as one pure function: names and texts in, files out. No clock, no file system. Bases are made one at a
 * time, so that memory does not grow with the job; the job's own files come in parts as the bases go by.
 */
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex } from "@noble/hashes/utils.js";
import { CAUTIONS } from "./checks/cautions.js";
import type { CheckContext, CheckRow } from "./checks/index.js";
import {
  isHeld,
  jobQuestionText,
  NOT_CHECKED_AT_ALL,
  questionText,
  runChecks,
  runJobChecks,
  worstFirst,
} from "./checks/index.js";
import { quantityText, subjectWords } from "./checks/words.js";
import type { Finding } from "./diagnostics/finding.js";
import { hasErrors } from "./diagnostics/finding.js";
import { writeLedgerHead, writeLedgerJobRows, writeLedgerRows, writeLedgerTail } from "./formats/ledger-csv.js";
import type { Question } from "./formats/questions-csv.js";
import { writeQuestionRows, writeQuestionsHead } from "./formats/questions-csv.js";
import { compareCutFile } from "./formats/read-back.js";
import { writeSummaryBase, writeSummaryHead, writeSummaryTail } from "./formats/summary-json.js";
import { readJob } from "./job/index.js";
import type { Base, Job } from "./job/model/job.js";
import type { BaseOutput, JobOutputKind, JobProduct, OutputFile, OutputKind, Product, SvgDocument } from "./outputs.js";
import { baseOutputs, jobDocuments, jobOutputs, layersOf } from "./outputs.js";
import { makePlan } from "./plan/index.js";
import type { Plan } from "./plan/model.js";
import type { Inputs } from "./readers/inputs.js";
import { placeRods } from "./rods/index.js";
import type { BaseWithRods, OutlinedBase, PlacedRod } from "./rods/model.js";
import type { Summary, SummaryBase, SummaryFile } from "./summary.js";
import { summarizeBase, summarizeCheck, summarizeJob, weighPlate } from "./summary.js";
import type { PlateShape } from "./template/index.js";
import { makePlate, makePlateShape, measurePlate } from "./template/index.js";
import type { Plate } from "./template/model.js";

export interface BuildOptions {
  /** ISO date for a job that names none. */
  readonly date: string;
  /** Version of the program, printed on every sheet. */
  readonly version: string;
  /** Any DOM for svg.js; null where no sheet is wanted. */
  readonly document: SvgDocument | null;
  /** Writes the cut files of held bases too, with HELD in their names. Default false. */
  readonly includeHeld?: boolean;
  /** Which files to make. Default all; empty to check only. */
  readonly outputs?: readonly OutputKind[];
  /** SHA-256; a shell may hand in its platform's own, which is faster than the one that runs everywhere. */
  readonly startSha256?: () => Hasher;
}

/** A hash that is fed in parts; `hex` ends it. */
export interface Hasher {
  update(bytes: Uint8Array): void;
  hex(): string;
}

/** A fault of the program, not of the input: a written file does not say what its plate says. */
export class ProgramFault extends Error {
  override readonly name = "ProgramFault";
}

/** Bytes to be added to the end of the job file at `path`. */
export interface Part {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** One base, made. */
export interface BaseResult {
  readonly mark: string;
  readonly held: boolean;
  readonly summary: SummaryBase;
  readonly files: readonly OutputFile[];
  /** Ledger rows, worst first. */
  readonly rows: readonly CheckRow[];
  readonly questions: readonly Question[];
}

/** A build whose job files are handed out in parts: `head`, the parts of each base, `tail`; documents between the last two. */
export interface PartwiseBuild {
  readonly findings: readonly Finding[];
  readonly job: Job | null;
  readonly head: readonly Part[];
  /** To be gone through once. Empty when a finding is an error. */
  readonly bases: Iterable<BaseResult & { readonly parts: readonly Part[] }>;
  /** The job's documents, whole files; to be gone through once, after the bases and before `tail`, which lists them. */
  readonly documents: Iterable<OutputFile>;
  /** After the last base: the closing parts, the job's own rows, and the list of job files as the summary has it. */
  tail(): JobEnd;
}

/** What is left when every base is made. */
export interface JobEnd {
  readonly parts: readonly Part[];
  readonly files: readonly SummaryFile[];
  /** Ledger rows of the whole job, worst first, and the questions among them. */
  readonly rows: readonly CheckRow[];
  readonly questions: readonly Question[];
}

/** A build whose job files are handed out whole. */
export interface Build {
  readonly findings: readonly Finding[];
  readonly job: Job | null;
  /** To be gone through once. Empty when a finding is an error. */
  readonly bases: Iterable<BaseResult>;
  /** The job's own files and the summary; makes the bases that nobody asked for yet. */
  finish(): { readonly summary: Summary; readonly files: readonly OutputFile[] };
}

const encoder = new TextEncoder();

function startOwnSha256(): Hasher {
  const hash = sha256.create();
  return { update: (bytes) => void hash.update(bytes), hex: () => bytesToHex(hash.digest()) };
}

function hashOf(bytes: Uint8Array, start: () => Hasher = startOwnSha256): string {
  const hash = start();
  hash.update(bytes);
  return hash.hex();
}

/** The whole way from inputs to files. With an error among the findings there is nothing to write. */
export function build(inputs: Inputs, options: BuildOptions): Build {
  const parts = buildInParts(inputs, options);
  const { findings, job } = parts;
  const gathered = gatherParts(parts, options);
  return { findings, job, bases: gathered.bases, finish: gathered.finish };
}

function gatherParts(
  { job, head, bases, documents, tail }: PartwiseBuild,
  { outputs, startSha256 }: BuildOptions,
): Pick<Build, "bases" | "finish"> {
  const all: Part[] = [...head];
  const summaries: SummaryBase[] = [];
  const gather = function* (): Generator<BaseResult> {
    for (const { parts, ...base } of bases) {
      all.push(...parts);
      summaries.push(base.summary);
      yield base;
    }
  };
  const running = gather();
  return {
    bases: running,
    finish: () => {
      if (job === null) throw new Error("a job with errors has no files");
      for (const _ of running);
      const written = [...documents];
      const end = tail();
      all.push(...end.parts);
      const wanted = jobOutputs.filter(({ kind }) => outputs?.includes(kind) ?? true);
      const files = wanted.map(({ kind, path }) => wholeFile(kind, path, all, startSha256));
      const checks = end.rows.map((row) => summarizeCheck(row, job.unit));
      return {
        summary: { schema: 1, job: summarizeJob(job), bases: summaries, checks, files: end.files },
        files: [...written, ...files],
      };
    },
  };
}

function wholeFile(
  kind: JobOutputKind,
  path: string,
  parts: readonly Part[],
  startSha256: BuildOptions["startSha256"],
): OutputFile {
  const mine = parts.filter((part) => part.path === path);
  const bytes = new Uint8Array(mine.reduce((size, part) => size + part.bytes.length, 0));
  let at = 0;
  for (const part of mine) {
    bytes.set(part.bytes, at);
    at += part.bytes.length;
  }
  return { kind, path, bytes, sha256: hashOf(bytes, startSha256) };
}

/** As `build`, for jobs of any size: nothing of a base is kept once the next one is asked for. */
export function buildInParts(inputs: Inputs, options: BuildOptions): PartwiseBuild {
  const read = readJob(inputs, { date: options.date });
  if (!read.ok) return faulty(read.findings);
  const job = read.value;
  const { findings: faults, plan, bases } = firstPass(job);
  const findings = [...read.findings, ...faults];
  if (hasErrors(findings)) return faulty(findings);
  const files = startJobFiles(options);
  const head = [
    ...files.add("ledger", writeLedgerHead),
    ...files.add("questions", writeQuestionsHead),
    ...files.add("summary", () => writeSummaryHead(summarizeJob(job))),
  ];
  const held = new Map<string, readonly string[]>();
  const rows = hasErrors(findings) ? [] : worstFirst(runJobChecks({ job, plan, bases }));
  const product = plan === null ? null : { job, plan, rows, held };
  return {
    findings,
    job,
    head,
    bases: makeBases(job, bases, files, held, options),
    documents: makeDocuments(product, files, options),
    tail: () => closeJobFiles(job, rows, files),
  };
}

function faulty(findings: readonly Finding[]): PartwiseBuild {
  const tail = (): never => {
    throw new Error("a job with errors has no files");
  };
  return { findings, job: null, head: [], bases: [], documents: [], tail };
}

/** A base with the shape of its plate, from which the plate is made. */
interface ShapedBase extends OutlinedBase {
  readonly shape: PlateShape;
}

/** What is found on the way through every base, and what is kept of it. */
interface FirstPass {
  readonly findings: readonly Finding[];
  /** null: the job has no grid. */
  readonly plan: Plan | null;
  /** In the order of the job's bases; complete where no finding is an error. */
  readonly bases: readonly ShapedBase[];
}

/** Goes through every base once, so that every fault is told before anything is written. Keeps no plates: they are large. */
function firstPass(job: Job): FirstPass {
  const findings: Finding[] = [];
  const withRods: BaseWithRods[] = [];
  const bases: ShapedBase[] = [];
  for (const base of job.bases) {
    const rods = placeRods(base);
    findings.push(...rods.findings);
    if (!rods.ok) continue;
    const shape = makePlateShape(job, base, rods.value);
    findings.push(...shape.findings);
    withRods.push({ base, rods: rods.value });
    if (shape.ok) bases.push({ base, rods: rods.value, outline: shape.value.outline.contour, shape: shape.value });
  }
  if (withRods.length < job.bases.length) return { findings, plan: null, bases };
  const plan = makePlan(job, withRods);
  return { findings: [...findings, ...plan.findings], plan: plan.ok ? plan.value : null, bases };
}

function plateOf(job: Job, { base, rods, shape }: ShapedBase): Plate {
  const plate = makePlate(job, base, rods, shape);
  if (!plate.ok) throw new ProgramFault(`base ${base.mark}: a fault that the first pass did not find`);
  return plate.value;
}

function* makeBases(
  job: Job,
  bases: readonly ShapedBase[],
  files: JobFiles,
  held: Map<string, readonly string[]>,
  options: BuildOptions,
): Generator<BaseResult & { readonly parts: readonly Part[] }> {
  const writers = baseOutputs.filter(({ kind }) => options.outputs?.includes(kind) ?? true);
  for (const [index, shaped] of bases.entries()) {
    const { base, rods } = shaped;
    const product = judge(job, base, rods, plateOf(job, shaped));
    const made = writeFiles(product, writers, options);
    if (product.held.length > 0) held.set(base.mark, product.held);
    yield describeBase(product, made, files, index === 0);
  }
}

/** Whole files, one at a time; nothing without a layout plan. */
function* makeDocuments(product: JobProduct | null, files: JobFiles, options: BuildOptions): Generator<OutputFile> {
  if (product === null) return;
  const { document, version, startSha256 } = options;
  const made: Omit<OutputFile, "bytes">[] = [];
  for (const { kind, write } of jobDocuments.filter((each) => options.outputs?.includes(each.kind) ?? true)) {
    for (const { path, bytes } of write(product, { document, version, made })) {
      const named = { kind, path, sha256: hashOf(bytes, startSha256) };
      made.push(named);
      files.note(listFile({ ...named, bytes }));
      yield { ...named, bytes };
    }
  }
}

function judge(job: Job, base: Base, rods: readonly PlacedRod[], plate: Plate): Product {
  const rows = worstFirst(runChecks({ job, base, rods, plate }));
  const measures = measurePlate(plate);
  const weight = weighPlate(measures.netArea, plate.thickness, job.shop.density[plate.material], job.unit);
  const held = isHeld(rows) ? heldReasons(rows.filter(holds), job) : [];
  return { job, base, rods, plate, measures, rows, held, weight };
}

const holds = (row: CheckRow): boolean => row.status === "fail" && row.severity === "stop";

/** Why a base is held: one sentence for all rows that say the same of several subjects. */
function heldReasons(rows: readonly CheckRow[], job: Job): readonly string[] {
  const bySame = new Map<string, { rule: string; subjects: string[]; words: string }>();
  for (const row of rows) {
    const words = heldWords(row, job);
    const same = bySame.get(`${row.rule} ${words}`);
    if (same === undefined) bySame.set(`${row.rule} ${words}`, { rule: row.rule, subjects: [row.subject], words });
    else same.subjects.push(row.subject);
  }
  return [...bySame.values()].map(({ rule, subjects, words }) =>
    `${rule} ${subjectWords(subjects)}`.trimEnd().concat(`: ${words}`),
  );
}

function heldWords(row: CheckRow, { unit }: Job): string {
  if (row.value === null || row.limit === null) return row.note;
  const allowed = row.sense === ">=" ? "at least" : row.sense === "<=" ? "at most" : "exactly";
  return `${quantityText(row.value, unit)}, ${allowed} ${quantityText(row.limit, unit)} is needed`;
}

function writeFiles(product: Product, writers: readonly BaseOutput[], options: BuildOptions): readonly OutputFile[] {
  const { document, version, includeHeld = false, startSha256 } = options;
  const made: OutputFile[] = [];
  for (const writer of writers) {
    if (!writer.applies(product, includeHeld)) continue;
    const bytes = writer.write(product, { document, version, includeHeld, made });
    const path = `${product.base.mark}/${writer.fileName(product)}`;
    if (writer.cut !== undefined) readBack(bytes, path, product, writer.cut(product));
    const layers = writer.cut === undefined ? {} : { layers: layersOf(product) };
    made.push({ kind: writer.kind, path, bytes, sha256: hashOf(bytes, startSha256), ...layers });
  }
  return made;
}

/** Reads a cut file again and holds it against the plate: a difference stops the program before the file is delivered. */
function readBack(bytes: Uint8Array, path: string, product: Product, cut: Parameters<typeof compareCutFile>[2]): void {
  const differences = compareCutFile(bytes, product.plate, cut);
  if (differences.length === 0) return;
  throw new ProgramFault(`${path}: read back, the file differs from its plate: ${differences.join("; ")}`);
}

function describeBase(
  product: Product,
  made: readonly OutputFile[],
  files: JobFiles,
  first: boolean,
): BaseResult & { readonly parts: readonly Part[] } {
  const { job, base, plate, measures, rows, held } = product;
  const summary: SummaryBase = {
    ...summarizeBase(job, base, plate, measures, rows, held.length > 0),
    files: made.map(listFile),
  };
  const questions = askQuestions(product);
  const parts = [
    ...files.add("ledger", () => writeLedgerRows(summary)),
    ...files.add("questions", () => writeQuestionRows(questions)),
    ...files.add("summary", () => writeSummaryBase(summary, first)),
  ];
  return { mark: base.mark, held: held.length > 0, summary, files: made, rows, questions, parts };
}

function listFile({ kind, path, bytes, sha256: hash, layers }: OutputFile): SummaryFile {
  return { kind, path, bytes: bytes.length, sha256: hash, ...(layers === undefined ? {} : { layers }) };
}

function askQuestions({ job, base, rods, plate, rows }: Product): readonly Question[] {
  const context: CheckContext = { job, base, rods, plate };
  return rows
    .filter((row) => row.status === "fail" && row.severity === "ask")
    .map((row) => ({
      mark: base.mark,
      quantity: base.quantity,
      text: questionText(row, context),
      check: summarizeCheck(row, job.unit),
    }));
}

/** The job files as they grow: sizes and hashes only, never their bytes. */
interface JobFiles {
  /** The next part of a file; none when the file is not wanted. */
  add(kind: JobOutputKind, write: () => string): readonly Part[];
  /** A document that is written whole. */
  note(document: SummaryFile): void;
  /** All but the summary, which cannot list itself; documents last. */
  list(): readonly SummaryFile[];
}

function startJobFiles({ outputs, startSha256 = startOwnSha256 }: BuildOptions): JobFiles {
  const states = jobOutputs
    .filter(({ kind }) => outputs?.includes(kind) ?? true)
    .map(({ kind, path }) => ({ kind, path, size: 0, hash: startSha256() }));
  const documents: SummaryFile[] = [];
  return {
    add: (kind, write) => {
      const state = states.find((each) => each.kind === kind);
      if (state === undefined) return [];
      const bytes = encoder.encode(write());
      state.size += bytes.length;
      if (kind !== "summary") state.hash.update(bytes);
      return [{ path: state.path, bytes }];
    },
    note: (document) => void documents.push(document),
    list: () => [
      ...states
        .filter(({ kind }) => kind !== "summary")
        .map(({ kind, path, size, hash }) => ({ kind, path, bytes: size, sha256: hash.hex() })),
      ...documents,
    ],
  };
}

function closeJobFiles(job: Job, rows: readonly CheckRow[], files: JobFiles): JobEnd {
  const checks = rows.map((row) => summarizeCheck(row, job.unit));
  const questions = askJobQuestions(job, rows);
  const ledger = files.add("ledger", () => writeLedgerJobRows(checks) + writeLedgerTail(NOT_CHECKED_AT_ALL, CAUTIONS));
  const asked = files.add("questions", () => writeQuestionRows(questions));
  const listed = files.list();
  const summary = files.add("summary", () => writeSummaryTail(checks, listed));
  return { parts: [...ledger, ...asked, ...summary], files: listed, rows, questions };
}

function askJobQuestions(job: Job, rows: readonly CheckRow[]): readonly Question[] {
  return rows
    .filter((row) => row.status === "fail" && row.severity === "ask")
    .map((row) => ({
      mark: "",
      quantity: null,
      text: jobQuestionText(row, job),
      check: summarizeCheck(row, job.unit),
    }));
}
