/** How far the beginning of a job has come: kept while another view is looked at. Plain data. */
import type { WrittenAnswer } from "../../tasks/answered-sheet.js";
import type { FirstFigures, FirstPattern } from "../../tasks/first-job.js";
import type { Progress, ReadAnswer } from "../engine/task-model.js";

/** A sheet as it was handed over: dropped, chosen or pasted. */
export interface GivenSheet {
  /** Under which it is kept with the job's files. */
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** What a person answered to one question, to be taken back as one. */
export interface Given {
  /** What was asked, in short. */
  readonly asked: string;
  /** What was answered, in words. */
  readonly said: string;
  readonly answers: readonly WrittenAnswer[];
  /** What was typed for it, to be typed on where it is asked again. */
  readonly typed: Typed;
}

/** Texts of fields by the keys of their answers; the figures of a pattern. */
export interface Typed {
  readonly texts: Readonly<Record<string, string>>;
  readonly pattern: FirstPattern | null;
}

/** Nothing. */
export const NOTHING_TYPED: Typed = { texts: {}, pattern: null };

/** A job that a newer sheet is read into: the id under which it is kept, and the name of its file. */
export interface ReadInto {
  readonly id: string;
  readonly job: string;
}

/** A sheet that is read, with the answers so far. */
export interface SheetBeingRead {
  readonly sheet: GivenSheet;
  readonly given: readonly Given[];
  /** null: a job of its own comes of it. */
  readonly into: ReadInto | null;
  /** While it is read. */
  readonly going: Progress | null;
  /** What was understood the last time. */
  readonly found: ReadAnswer | null;
  /** Why it cannot be read with these answers, a sentence each. */
  readonly refused: readonly string[];
}

/** What of a beginning is kept: what a person gave. */
export type BegunWork =
  | { readonly kind: "first"; readonly figures: FirstFigures }
  | { readonly kind: "paste"; readonly text: string }
  | ({ readonly kind: "read" } & Pick<SheetBeingRead, "sheet" | "given" | "into">);

/** A beginning as it is kept in this browser, until it is a job or thrown away. */
export interface Begun {
  readonly id: string;
  /** Milliseconds since 1970. */
  readonly changed: number;
  readonly work: BegunWork;
}

/** The empty page; a first template that is typed; cells that are pasted; a sheet that is read. */
export type Beginning =
  | { readonly kind: "choice" }
  | { readonly kind: "first"; readonly figures: FirstFigures }
  | { readonly kind: "paste"; readonly text: string }
  | ({ readonly kind: "read" } & SheetBeingRead);
