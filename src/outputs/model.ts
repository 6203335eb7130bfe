/** What a package can hold, said once for each kind of file: what it is, for whom, where it stands, and how it is written. */
import type { CheckedBase, CheckedJob } from "../checks/checked.js";
import type { JobDigest } from "../checks/digest.js";
import type { PdfMaker } from "../formats/pdf-maker.js";
import type { DrawingDocument } from "../formats/sheet-svg.js";
import type { RegisteredQuestion } from "../job/model/register.js";
import type { Plan } from "../plan/model.js";
import type { CertifiedReading } from "../summary/certificate.js";
import type { BaseFacts } from "../summary/facts.js";
import type {
  FileRole,
  Summary,
  SummaryBase,
  SummaryCheck,
  SummaryFile,
  SummaryQuestion,
  UnusedSummaryAnswer,
} from "../summary/model.js";
import type { Question } from "../summary/questions.js";
import type { TemplatePiece } from "../template/index.js";
import type { PaperName } from "./paper-names.js";
import type { SetPage, SheetSet } from "./sheet-set.js";

/** A document for svg.js: a browser's own, or a lean one. */
export type SvgDocument = DrawingDocument;

/** A finished file: `path` is inside the package, with forward slashes. */
export interface OutputFile {
  readonly kind: string;
  readonly path: string;
  readonly bytes: Uint8Array;
  readonly sha256: string;
  readonly layers?: NonNullable<SummaryFile["layers"]>;
  /** Mark of the piece that it is of, where that is not the template itself. */
  readonly piece?: string;
}

/** A file as the writers of later files see it. */
export interface MadeFile extends Omit<OutputFile, "bytes"> {
  readonly role: FileRole;
}

/** Takes the sheets of templates as they are drawn, as pages for this paper; null: of their own size. */
export interface PageTaker {
  readonly paper: PaperName | null;
  take(page: SetPage): void;
}

/** What a writer may use beside what it writes. */
interface Around {
  /** null only where no wanted output is a drawing. */
  readonly document: SvgDocument | null;
  readonly version: string;
  readonly includeHeld: boolean;
  /** Files of the same base, or documents of the job, that are made already. */
  readonly made: readonly MadeFile[];
}

/** The same for a file of a base. */
export interface BaseSurroundings extends Around {
  /** null where no set is wanted. */
  readonly pages: PageTaker | null;
}

/** The same for a document of the job. */
export interface Surroundings extends Around {
  /** Takes the sheets of the plan as they are drawn, and is written last; null where no set is wanted. */
  readonly set: SheetSet | null;
  /** Writes documents of their own as PDF; null: they are not made. */
  readonly pdf: PdfMaker | null;
  /** What the office prints on; null: letter, or A4 of a metric job. */
  readonly paper: PaperName | null;
  /** Of every base, in the order of the job. */
  readonly facts: readonly BaseFacts[];
  /** Every question of the job, numbered; the answered ones too. */
  readonly questions: () => readonly Question[];
  /** Those of the register that are not asked any more. */
  readonly closedQuestions: () => readonly RegisteredQuestion[];
  /** What all rows of the job come to. */
  readonly digest: () => JobDigest;
  /** Ledger, questions and their like, with size and hash; none where they are not wanted. */
  readonly closedFiles: () => readonly SummaryFile[];
}

interface Described<Kind extends string> {
  /** The public name, as `files[].kind` of the summary has it. */
  readonly kind: Kind;
  readonly role: FileRole;
  /** For README: what it is and for whom. */
  readonly title: string;
  /** True where `document` is needed to write it. */
  readonly drawn: boolean;
  /** True of what the reader of its folder opens first. */
  readonly opensFirst?: true;
  /** True where its sheets are pages of the set: it is drawn for a set even where the file itself is not wanted. */
  readonly inSet?: true;
}

/** A file of a base. */
interface BaseFile<Kind extends string> extends Described<Kind> {
  readonly scope: "base";
  /** Path by pattern, for README. */
  readonly named: string;
  applies(checked: CheckedBase, includeHeld: boolean): boolean;
  /** Inside the package. */
  path(checked: CheckedBase): string;
  write(checked: CheckedBase, around: BaseSurroundings): Uint8Array;
}

/** A file of each piece of a template, which it is cut or drilled by, or shown as. */
export interface PieceFile<Kind extends string = string> extends Described<Kind> {
  readonly scope: "piece";
  /** Path by pattern, for README. */
  readonly named: string;
  applies(checked: CheckedBase, piece: TemplatePiece, includeHeld: boolean): boolean;
  /** Inside the package. */
  path(checked: CheckedBase, piece: TemplatePiece): string;
  write(checked: CheckedBase, piece: TemplatePiece, around: BaseSurroundings): Uint8Array;
  /** Of a file that is cut by. */
  readonly cut?: CutReading;
}

/** What was read from the bytes of a cut file: how they differ from the plate, in words, and what its certificate says. */
export interface ReadBack {
  readonly differences: readonly string[];
  readonly reading: CertifiedReading;
}

/** What is cut by is read again, once, for all that is said of it; and its layers, for the summary. */
export interface CutReading {
  readBack(bytes: Uint8Array, path: string, checked: CheckedBase, piece: TemplatePiece): ReadBack;
  layers(checked: CheckedBase, piece: TemplatePiece): NonNullable<SummaryFile["layers"]>;
}

/** A file that comes of a base. */
export type BaseOutput<Kind extends string = string> = BaseFile<Kind> | PieceFile<Kind>;

/** A base of which everything is said and written. */
export interface MadeBase {
  readonly summary: SummaryBase;
  /** For each of its checks, who gave what the rule takes. */
  readonly givenBy: readonly string[];
}

/** What is left to say when every base is made. */
export interface JobRest {
  readonly checks: readonly SummaryCheck[];
  /** Of every base and of the job. */
  readonly questions: readonly Question[];
  /** The same, and those that are closed, as the summary has them. */
  readonly everyQuestion: readonly SummaryQuestion[];
  readonly answersNotUsed: readonly UnusedSummaryAnswer[];
  readonly layoutHeld: readonly string[];
  readonly job: Summary["job"];
  /** Of every base, in the order of the job. */
  readonly facts: readonly BaseFacts[];
  /** Of a kind of file. */
  readonly about: (kind: string) => Pick<Described<string>, "title" | "role" | "opensFirst"> | null;
  /** The files of the job itself that are whole by then, in the order of the registry. */
  readonly files: readonly SummaryFile[];
}

/** One file of the job that grows as the bases go by: memory does not hold it. */
export interface GrowingOutput<Kind extends string = string> extends Described<Kind> {
  readonly scope: "job, base by base";
  /** Inside the package. */
  readonly path: string;
  head(job: Summary["job"]): string;
  base(made: MadeBase, isFirst: boolean): string;
  end(rest: JobRest): string;
  /** True for a file that lists others with their hashes: it ends after them, in the order of the registry, and cannot list itself. */
  readonly listsOthers: boolean;
  /** Of a file that no other lists: what follows its end, by the SHA-256 of all before. */
  seal?(sha256: string): string;
}

/** A file with its path inside the package. */
export interface PathAndBytes {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** A checked job that has a plan. */
export interface PlannedJob extends CheckedJob {
  readonly plan: Plan;
}

interface Document<Kind extends string> extends Described<Kind> {
  readonly scope: "job";
  /** Path by pattern, for README. */
  readonly named: string;
}

/**
 * Documents of the job when all bases are checked, in one file or several, each written whole; paths inside the package,
 * none twice. One file at a time, so that memory holds one.
 */
export type JobOutput<Kind extends string = string> = Document<Kind> &
  (
    | { readonly needs: "job"; write(checked: CheckedJob, around: Surroundings): Iterable<PathAndBytes> }
    | { readonly needs: "plan"; write(checked: PlannedJob, around: Surroundings): Iterable<PathAndBytes> }
  );

/** What the writer of a result may use; `pdf` as in a package. */
export type ResultAround = Pick<Surroundings, "document" | "version" | "pdf">;

/** Files that a budget or a survey leaves in a folder of its own, one at a time; paths inside that folder. */
export interface ResultOutput<Result, Kind extends string = string> extends Described<Kind> {
  readonly scope: "budget" | "survey";
  /** Path by pattern, for README. */
  readonly named: string;
  write(result: Result, around: ResultAround): Iterable<PathAndBytes>;
}

/** Everything that a package can hold. */
export type Output<Kind extends string = string> = BaseOutput<Kind> | GrowingOutput<Kind> | JobOutput<Kind>;
