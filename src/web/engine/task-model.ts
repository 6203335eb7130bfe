/** Long work, each run in a thread of its own that can be given up: what it is asked, and what it answers. */
import type { Finding } from "../../diagnostics/finding.js";
import type { ReadAsForm, ReadAsQuestion } from "../../formats/read-as-form.js";
import type { OutputKind } from "../../outputs/index.js";
import type { PaperName } from "../../outputs/paper-names.js";
import type { JobTitle, WrittenAnswer } from "../../tasks/answered-sheet.js";
import type { EarlierRegister } from "../../tasks/earlier-register.js";
import type { KeyHints } from "../../tasks/live/key-hints.js";
import type { AnswerDraft } from "../../tasks/live/model.js";
import type { SurveyOptions } from "../../tasks/survey-options.js";
import type { Unit } from "../../units/index.js";
import type { BudgetAnswer } from "./budget-model.js";
import type { CheckAnswer } from "./check-model.js";
import type { CompareAnswer } from "./compare-model.js";
import type { Dropped } from "./dropped.js";
import type { MadePackage } from "./package-model.js";
import type { ProofAnswer } from "./proof-model.js";
import type { JobFiles } from "./protocol.js";
import type { SignAnswer } from "./sign-model.js";
import type { SurveyAnswer } from "./survey-model.js";

/** A job, and the day of the clock for one that names none. */
export interface JobAsk {
  readonly files: JobFiles;
  readonly date: string;
}

/** A register of questions with the name of the file that it came in. */
export interface NamedRegister {
  readonly name: string;
  readonly register: EarlierRegister;
}

/** A side of a comparison: files that were dropped, a package or a job with its schedule, or the job that is open. */
export type CompareSource =
  | { readonly kind: "dropped"; readonly files: readonly Dropped[] }
  | { readonly kind: "job"; readonly name: string; readonly files: JobFiles };

/** A sheet to be read, with the answers given so far; `title` once the job file is wanted. */
export interface ReadAsk {
  readonly name: string;
  readonly content: string | Uint8Array;
  readonly answers: readonly WrittenAnswer[];
  readonly jobName: string;
  /** Text of the job that a newer sheet is read into; null: a new one. */
  readonly into: string | null;
  readonly title: JobTitle | null;
}

/** What was understood, what is open, and the job file where it was wanted and nothing is. */
export interface ReadAnswer {
  readonly unit: Unit | null;
  readonly unitBecause: string;
  readonly isUnderstood: boolean;
  readonly findings: readonly Finding[];
  readonly baseCount: number;
  /** Without its entries where the job file is handed out. */
  readonly form: ReadAsForm;
  /** Questions, and cells at fault for which may be said what is meant. */
  readonly questions: readonly ReadAsQuestion[];
  /** Our own headings, one of which a column may be meant as. */
  readonly headings: readonly string[];
  /** True where it is read into a job whose bases were changed since, which are written anew. */
  readonly overwrites: boolean;
  readonly job: string | null;
}

/** A sheet as it is written in the package. */
export interface PrintedSheet {
  readonly name: string;
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

/** What a text is before it is opened. */
export interface Glance {
  readonly isJob: boolean;
  /** Number, title and revision as written. */
  readonly title: string;
  readonly bases: number;
  /** Files beside it that it names. */
  readonly names: readonly string[];
}

/** What each kind of work is asked and answers. A kind is a line here, a file beside this one, and its line in `task-worker.ts`. */
export interface TaskKinds {
  readonly package: {
    readonly ask: JobAsk & {
      /** null: each page of the set has the size of its sheet. */
      readonly paper: PaperName | null;
      readonly includeHeld: boolean;
      /** Of questions, that of the package before, with the name of its file. */
      readonly register: NamedRegister | null;
    };
    readonly answer: MadePackage;
  };
  readonly register: { readonly ask: Dropped; readonly answer: NamedRegister };
  readonly sign: {
    readonly ask: {
      readonly dropped: Dropped;
      readonly by: string;
      readonly note: string;
      /** Day and moment of the clock. */
      readonly date: string;
      readonly instant: string;
    };
    readonly answer: SignAnswer;
  };
  readonly survey: {
    readonly ask: JobAsk & { readonly points: Dropped; readonly options: SurveyOptions; readonly all: boolean };
    readonly answer: SurveyAnswer;
  };
  readonly proof: {
    readonly ask: { readonly dropped: readonly Dropped[]; readonly against: JobFiles | null; readonly date: string };
    readonly answer: ProofAnswer;
  };
  readonly compare: {
    readonly ask: { readonly old: CompareSource; readonly fresh: CompareSource; readonly date: string };
    readonly answer: CompareAnswer;
  };
  readonly budget: { readonly ask: JobAsk; readonly answer: BudgetAnswer };
  readonly check: {
    /** `marks`: of bases or templates; none: the whole job. */
    readonly ask: JobAsk & { readonly marks: readonly string[]; readonly all: boolean };
    readonly answer: CheckAnswer;
  };
  readonly read: { readonly ask: ReadAsk; readonly answer: ReadAnswer };
  /** What the keys of a job may say. */
  readonly hints: { readonly ask: null; readonly answer: KeyHints };
  /** The printed sheets of one base, by its mark; sizes in millimetres. */
  readonly print: {
    readonly ask: { readonly files: JobFiles; readonly date: string; readonly version: string; readonly mark: string };
    readonly answer: { readonly sheets: readonly PrintedSheet[] };
  };
  readonly glance: { readonly ask: { readonly name: string; readonly text: string }; readonly answer: Glance };
  /** Single papers of the package by the kinds of their outputs: those of the job alone, which need no drawing. */
  readonly papers: {
    readonly ask: { readonly files: JobFiles; readonly date: string; readonly kinds: readonly OutputKind[] };
    readonly answer: readonly {
      readonly kind: string;
      readonly name: string;
      readonly bytes: Uint8Array<ArrayBuffer>;
    }[];
  };
  /** An answer form that came back; `name`: of its file among those of the job. */
  readonly "answer-form": {
    readonly ask: { readonly files: JobFiles; readonly date: string; readonly name: string };
    readonly answer: readonly AnswerDraft[];
  };
}

/** One of them. */
export type TaskKind = keyof TaskKinds;

/** How far it is: of so many steps. */
export interface Progress {
  readonly done: number;
  readonly of: number;
  readonly what: string;
}

/** A job of work. It ends in its answer, in a refusal that the user can do something about, or in a fault of the program. */
export type TaskWork<K extends TaskKind> = (
  ask: TaskKinds[K]["ask"],
  tell: (progress: Progress) => void,
) => Promise<TaskKinds[K]["answer"]>;

/** What a thread tells. */
export type TaskMessage =
  | { readonly kind: "progress"; readonly progress: Progress }
  | { readonly kind: "done"; readonly answer: unknown }
  | { readonly kind: "refused"; readonly why: readonly string[]; readonly findings: readonly Finding[] }
  /** Its code did not come. */
  | { readonly kind: "not-loaded" }
  | { readonly kind: "fault"; readonly fault: string };
