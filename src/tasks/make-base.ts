/** The files of one base: made in the thread of its package, or in another. */
import type { CheckedBase } from "../checks/checked.js";
import { checkBase } from "../checks/checked.js";
import type { CheckRow } from "../checks/index.js";
import { ProgramFault } from "../diagnostics/program-fault.js";
import type { Job } from "../job/model/job.js";
import type {
  BaseOutput,
  BaseSurroundings,
  MadeFile,
  OutputFile,
  OutputKind,
  PageTaker,
  PaperName,
  PieceFile,
  ReadBack,
  SetPage,
  SvgDocument,
} from "../outputs/index.js";
import { baseOutputs, makingOutputs } from "../outputs/index.js";
import type { CertifiedReading, CutCertificate } from "../summary/certificate.js";
import { type BaseFacts, factsOf } from "../summary/facts.js";
import type { SummaryBase, SummaryFile } from "../summary/model.js";
import { summarizeBase } from "../summary/summarize.js";
import type { ShapedBase, TemplatePiece } from "../template/index.js";
import type { Hasher } from "./hash.js";
import { hashOf } from "./hash.js";
import type { OpenedJob } from "./opened-job.js";

/** How the files of a base are made. */
export interface BaseOptions {
  /** Version of the program, printed on every sheet. */
  readonly version: string;
  /** Any DOM for svg.js; null where no drawing is wanted. */
  readonly document: SvgDocument | null;
  /** The paper that the pages of the set are put on. Default: each page has the size of its sheet. */
  readonly paper?: PaperName | null;
  /** Writes the cut files of held bases too, with HELD in their names. Default false. */
  readonly includeHeld?: boolean;
  /** Which files to make. Default all; empty to check only. */
  readonly outputs?: readonly OutputKind[];
  /** SHA-256; a shell may hand in its platform's own, which is faster than the one that runs everywhere. */
  readonly startSha256?: () => Hasher;
}

/** The same, and whether there is a set that takes the pages of sheets. */
export interface AloneOptions extends BaseOptions {
  readonly inSet: boolean;
}

/** One base, made. */
export interface BaseResult {
  readonly mark: string;
  readonly held: boolean;
  readonly summary: SummaryBase;
  readonly files: readonly OutputFile[];
  /** Of every cut file of its template, whether handed out with it or with a base before. */
  readonly certificates: readonly CutCertificate[];
}

/** One base, made, and all that its package needs of it: plain data, which may come from another thread. */
export interface BaseAlone extends BaseResult {
  /** Why it is held, one sentence each. */
  readonly reasons: readonly string[];
  readonly facts: BaseFacts;
  /** As the rules have them, worst first. */
  readonly rows: readonly CheckRow[];
  /** Of each row, which of the job's answers it has, from 0; -1: none. */
  readonly answered: readonly number[];
  /** Of the set. */
  readonly pages: readonly SetPage[];
}

/**
 * Makes bases of a job, one a call. All bases of a template that serves several go through one start, in the order of the
 * job: its files are handed out with the first of them.
 */
export function startBases(job: Job, options: AloneOptions): (base: ShapedBase) => BaseAlone {
  const known: KnownFiles = new Map();
  return (base) => {
    const checked = checkBase(job, base);
    const pages: SetPage[] = [];
    const taker = { paper: options.paper ?? null, take: (page: SetPage) => void pages.push(page) };
    const made = makeBase(checked, options, known, options.inSet ? taker : null);
    const { held: reasons, rows } = checked;
    const filesOf = (piece: TemplatePiece) => madeBy(checked, piece, made.summary.files);
    const answered = rows.map(({ answer }) => (answer === null ? -1 : job.answers.indexOf(answer)));
    const { certificates } = made;
    const facts = factsOf(checked, { files: made.summary.files, certificates }, filesOf);
    return { ...made, reasons, rows, answered, pages, facts };
  };
}

/** Files that a piece is cut or drilled by, told by their paths. */
function madeBy(checked: CheckedBase, piece: TemplatePiece, files: readonly SummaryFile[]): readonly SummaryFile[] {
  const paths = new Map(makingOutputs.map((output) => [output.path(checked, piece), output.kind]));
  return files.filter(({ path, kind }) => paths.get(path) === kind);
}

/** All bases of a job, one at a time. */
export function* makeBases({ job, bases }: OpenedJob, options: AloneOptions): Generator<BaseAlone> {
  const make = startBases(job, options);
  for (const base of bases) yield make(base);
}

/** Files of templates of several bases that were handed out already, by their paths, without their bytes. */
export type KnownFiles = Map<string, ListedFile>;

interface ListedFile {
  readonly made: MadeFile;
  readonly listed: SummaryFile;
  readonly certificate: CutCertificate | null;
}

/**
 * The files of one base, and what the summary says of it: the same at any time, alone or in the company of others. A file of
 * a template that serves several bases is handed out once for all calls with one `known`, and listed each time.
 */
export function makeBase(
  checked: CheckedBase,
  options: BaseOptions,
  known: KnownFiles = new Map(),
  pages: PageTaker | null = null,
): BaseResult {
  const { files, listed, certificates } = writeBaseFiles(checked, options, known, pages);
  const summary: SummaryBase = { ...summarizeBase(checked), files: listed };
  return { mark: checked.base.mark, held: checked.held.length > 0, summary, files, certificates };
}

/** True where this kind of file is asked for. */
export const wants = ({ outputs: wanted }: Pick<BaseOptions, "outputs">, kind: OutputKind): boolean =>
  wanted?.includes(kind) ?? true;

/** What every writer may use. */
export function aroundOf(options: BaseOptions, made: readonly MadeFile[]): Omit<BaseSurroundings, "pages"> {
  const { document, version, includeHeld = false } = options;
  return { document, version, includeHeld, made };
}

interface BaseFiles {
  readonly files: readonly OutputFile[];
  readonly listed: readonly SummaryFile[];
  readonly certificates: readonly CutCertificate[];
}

function writeBaseFiles(
  checked: CheckedBase,
  options: BaseOptions,
  known: KnownFiles,
  pages: PageTaker | null,
): BaseFiles {
  const files: OutputFile[] = [];
  const all: ListedFile[] = [];
  for (const output of baseOutputs) {
    const isWanted = wants(options, output.kind);
    if (!isWanted && !isForSet(output, pages)) continue;
    const made = all.map((each) => each.made);
    const around = { ...aroundOf(options, made), pages };
    for (const toMake of filesToMake(output, checked, around)) {
      const { path } = toMake;
      const before = known.get(path);
      if (before !== undefined) {
        if (isWanted) all.push(before);
        continue;
      }
      const { file, reading } = writeBaseFile({ kind: output.kind, ...toMake }, options.startSha256);
      const { bytes: _bytes, ...named } = file;
      const certificate = reading && certificateOf(checked, file, reading);
      const entry: ListedFile = { made: { ...named, role: output.role }, listed: listFile(file), certificate };
      if (checked.shared !== null) known.set(path, entry);
      if (!isWanted) continue;
      all.push(entry);
      files.push(file);
    }
  }
  const certificates = all.flatMap(({ certificate }) => certificate ?? []);
  return { files, listed: all.map(({ listed }) => listed), certificates };
}

const isForSet = ({ inSet }: BaseOutput, pages: PageTaker | null): boolean => inSet === true && pages !== null;

/** A file before it is written. `readBack`: what is found in its bytes, and how that differs from what it was to be. */
interface FileToMake {
  readonly path: string;
  readonly write: () => Uint8Array;
  readonly readBack?: ((bytes: Uint8Array) => ReadBack) | undefined;
  readonly layers?: (() => NonNullable<SummaryFile["layers"]>) | undefined;
  readonly piece?: string;
}

/** None where the output does not apply; one of a base, or one a piece of its template. */
function filesToMake(output: BaseOutput, checked: CheckedBase, around: BaseSurroundings): readonly FileToMake[] {
  switch (output.scope) {
    case "base":
      return output.applies(checked, around.includeHeld)
        ? [{ path: output.path(checked), write: () => output.write(checked, around) }]
        : [];
    case "piece":
      return checked.pieces
        .filter((piece) => output.applies(checked, piece, around.includeHeld))
        .map((piece) => pieceFile(output, checked, piece, around));
  }
}

function pieceFile(
  output: PieceFile,
  checked: CheckedBase,
  piece: TemplatePiece,
  around: BaseSurroundings,
): FileToMake {
  const { cut } = output;
  const path = output.path(checked, piece);
  return {
    path,
    write: () => output.write(checked, piece, around),
    readBack: cut && ((bytes) => cut.readBack(bytes, path, checked, piece)),
    layers: cut && (() => cut.layers(checked, piece)),
    ...(piece.role === "template" ? {} : { piece: piece.plate.mark }),
  };
}

function writeBaseFile(
  { kind, path, write, readBack, layers, piece }: FileToMake & { readonly kind: string },
  startSha256: BaseOptions["startSha256"],
): { readonly file: OutputFile; readonly reading: CertifiedReading | null } {
  const bytes = write();
  const read = readBack?.(bytes) ?? null;
  const differences = read?.differences ?? [];
  if (differences.length > 0)
    throw new ProgramFault(`${path}: read back, the file differs from its plate: ${differences.join("; ")}`);
  const named = piece === undefined ? {} : { piece };
  const file = { kind, path, bytes, sha256: hashOf(bytes, startSha256), ...named };
  return { file: layers === undefined ? file : { ...file, layers: layers() }, reading: read?.reading ?? null };
}

/** A file that fails is none of ours, unless its template is held: the plate itself is then at fault, and its certificate says so. */
function certificateOf(
  { held }: Pick<CheckedBase, "held">,
  { kind, path, bytes, sha256 }: OutputFile,
  reading: CertifiedReading,
): CutCertificate {
  if (reading.result === "fail" && held.length === 0)
    throw new ProgramFault(`${path}: proved against its plate, the file is not it: ${reading.stops.join("; ")}`);
  return { kind, path, bytes: bytes.length, sha256, held: held.length > 0, ...reading };
}

/** A file as the summary lists it. */
export function listFile({ kind, path, bytes, sha256, layers, piece }: OutputFile): SummaryFile {
  const more = { ...(layers === undefined ? {} : { layers }), ...(piece === undefined ? {} : { piece }) };
  return { kind, path, bytes: bytes.length, sha256, ...more };
}
