/** What a page shows of a job while it is edited. Plain data throughout: it may go from one thread to another. */
import type { Finding } from "../../diagnostics/finding.js";
import type { KeyEdit, Splice } from "../../readers/yaml-edit.js";
import type { Room, ScreenPlan } from "../../sheets/on-screen.js";
import type { SummaryCheck, SummaryHole } from "../../summary/model.js";
import type { Unit } from "../../units/index.js";

/**
 * faulty: its own input is at fault. waiting: not checked yet. held, asked: a row holds it, or asks the engineer of record.
 */
export type BaseState = "faulty" | "waiting" | "held" | "asked" | "clear";

/** One base of the list. */
export interface LiveBase {
  /** Of the job file, as `bases[2]`; of a schedule's row: `row 7`. */
  readonly path: string;
  readonly mark: string;
  readonly state: BaseState;
  /** Why it is held, one sentence each. */
  readonly held: readonly string[];
  /** Questions that are open. */
  readonly open: number;
  /** Of the rows that pass with a margin, the one with the least share of its limit to spare. */
  readonly worst: SummaryCheck | null;
  /** What the base says of itself, by key path within it, as `rods.diameter`: texts as written. */
  readonly written: Readonly<Record<string, string>>;
  /** What defaults or its kind give it, by key path. */
  readonly given: Readonly<Record<string, { readonly text: string; readonly by: string }>>;
}

/** The head of the job as it was last right, defaults put in; null where it never was. */
export interface LiveHead {
  readonly number: string;
  readonly title: string;
  readonly revision: string;
  readonly status: string;
  readonly date: string;
  readonly owner: string;
  readonly drawnBy: string;
  readonly unit: Unit;
  readonly shop: string;
  readonly editions: Readonly<Record<string, string>>;
}

/** A question to the engineer of record that is open or answered. */
export interface LiveQuestion {
  readonly number: string;
  readonly marks: readonly string[];
  readonly rule: string;
  readonly text: string;
  readonly status: string;
  readonly check: SummaryCheck;
}

/** The whole job. */
export interface LiveJob {
  /** Counts what was taken in; a state of a lower number is of before. */
  readonly turn: number;
  readonly head: LiveHead | null;
  /** False while bases wait to be checked, or rows of the job and questions are those of before the last change. */
  readonly isSettled: boolean;
  /** Every fault and warning, with the path of the key that it is about. */
  readonly findings: readonly Finding[];
  readonly bases: readonly LiveBase[];
  /** Rows of the job itself, worst first; while something is at fault, those of the job as it was last right. */
  readonly checks: readonly SummaryCheck[];
  readonly layoutHeld: readonly string[];
  readonly questions: readonly LiveQuestion[];
  readonly hasPlan: boolean;
  /** Files beside the job that it names, as they are called there, and whether they were handed in. */
  readonly files: readonly { readonly name: string; readonly kind: string; readonly isThere: boolean }[];
  /** Where the bases stand: in the job file, where they can be edited, or in a spreadsheet that it names. */
  readonly basesIn: "job" | "sheet";
  readonly unit: Unit;
}

/** One base with its plate: what stands on its sheet. */
export interface LiveBaseView {
  readonly path: string;
  readonly mark: string;
  readonly template: string;
  readonly plan: ScreenPlan;
  /** Title for who does not see the drawing, and what is on it in a sentence. */
  readonly title: string;
  readonly description: string;
  /** Worst first. */
  readonly checks: readonly SummaryCheck[];
  readonly holes: readonly SummaryHole[];
  readonly held: readonly string[];
}

/** What is asked of a live job with an edit. */
export interface Watch {
  /** Path of the base whose sheet is shown; null: none. */
  readonly base: string | null;
  readonly room: Room;
}

/** What came of an edit: how the text changed, how the job stands now, and the base that is watched. */
export interface LiveResult {
  readonly splices: readonly Splice[];
  readonly job: LiveJob;
  readonly view: LiveBaseView | null;
}

export type { KeyEdit, Splice };
