/** What a page shows of a job while it is edited. Plain data throughout: it may go from one thread to another. */
import type { JobDigest } from "../../checks/digest.js";
import type { Unchecked } from "../../checks/missing-keys.js";
import type { CheckStatus } from "../../checks/model.js";
import type { Finding } from "../../diagnostics/finding.js";
import type { AnswerField, Severity } from "../../job/index.js";
import type { QuestionPlace } from "../../job/model/register.js";
import type { KeyEdit, Splice } from "../../readers/yaml-edit.js";
import type { Room, ScreenPlan } from "../../sheets/on-screen.js";
import type { LetterQuestion, SettledQuestion } from "../../summary/letter.js";
import type { SummaryCheck, SummaryHole, UnusedSummaryAnswer } from "../../summary/model.js";
import type { Unit } from "../../units/index.js";
import type { LiveFigures } from "./figure-model.js";

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
  /** The worst row that holds the base or waits for an answer; else, of those that pass with a margin, the one with the least share of its limit to spare. */
  readonly worst: LiveCheck | null;
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
  readonly checks: readonly LiveCheck[];
  readonly layoutHeld: readonly string[];
  readonly questions: readonly LiveQuestion[];
  readonly hasPlan: boolean;
  /** Files beside the job that it names, as they are called there, and whether they were handed in. */
  readonly files: readonly { readonly name: string; readonly kind: string; readonly isThere: boolean }[];
  /** Where the bases stand: in the job file, where they can be edited, or in a spreadsheet that it names. */
  readonly basesIn: "job" | "sheet";
  readonly unit: Unit;
  /** Texts of the job's head as written, by key path, as `job.title`; without its bases, kinds, defaults and lists. */
  readonly said: Readonly<Record<string, string>>;
  /** Values that are written once and repeated by their names; of most jobs none. */
  readonly repeats: readonly LiveRepeat[];
}

/** A value that the job file names (`&name`), and where its name stands instead of it (`*name`), by key path. */
export interface LiveRepeat {
  readonly name: string;
  readonly path: string;
  /** A base's mark, `kind heavy`, or the key at the top of the job. */
  readonly whose: string;
  readonly repeatedAt: readonly { readonly path: string; readonly whose: string }[];
}

/** A row as the page shows it. */
export interface LiveCheck extends SummaryCheck {
  /** The rule in words of the trade. */
  readonly plainName: string;
  /** What the value is, as a noun phrase. */
  readonly measured: string;
  /** Keys that would supply what a row that is not checked lacks, as `concrete.depth` of the base, `shop.kerf`. */
  readonly missing: readonly string[];
  /** Margin as a share of the limit, below 0 where the row fails; null without a margin, and of a pass that says yes or no. */
  readonly share: number | null;
  /** Value, limit and what there is to spare as the printed ledger has them: `2 in`, `1-7/8 in`, `1/8 in to spare`; "" without. */
  readonly found: string;
  readonly bound: string;
  readonly spare: string;
}

/** Rows of one base that agree but for their subjects: one line. */
export interface LiveLine {
  readonly check: LiveCheck;
  readonly subjects: readonly string[];
  /** The subjects in words: `A1 A2 A3 A4`. */
  readonly where: string;
  /** Tags of the holes that the rows are about. */
  readonly tags: readonly string[];
  /** Edges that the rows are about, as `edge of the base plate`. */
  readonly edges: readonly string[];
  /** What the rows note, each once; `where`: of which subjects, "" where it is of all. */
  readonly notes: readonly { readonly where: string; readonly note: string }[];
}

/** Which rows are asked for of the ledger of the whole job, the worst first. */
export interface LedgerAsk {
  /** None: all of them. */
  readonly statuses: readonly CheckStatus[];
  /** Absent: all of them. */
  readonly severity?: Severity | null;
  /** Absent: worst first. By mark or by rule, worst first under each. */
  readonly order?: LedgerOrder;
  /** null: all of them. */
  readonly rule: string | null;
  /** Mark of a base, as it is written; "": rows of the job itself; null: all. */
  readonly mark: string | null;
  /** To be found in mark, subject, rule, clause or note, whatever the case of its letters; "": all. */
  readonly words: string;
  /** Of those the rows from here on, counted from 0; at most `MOST_ROWS` are handed out. */
  readonly from: number;
  readonly count: number;
}

/** In which order rows are handed out. */
export type LedgerOrder = "worst" | "mark" | "rule";

/** Most rows of one answer. */
export const MOST_ROWS = 500;

/** A row with the base that it is of; `path` null: of the job itself. */
export interface LedgerRow {
  readonly path: string | null;
  readonly mark: string;
  readonly check: LiveCheck;
}

/** What was asked for of the ledger. */
export interface LedgerSlice {
  readonly turn: number;
  /** False while bases wait to be checked: they have no rows yet. */
  readonly isSettled: boolean;
  readonly rows: readonly LedgerRow[];
  /** How many the ask has in all. */
  readonly total: number;
  /** How many of each status there are under the same rule, mark and words. */
  readonly counts: Readonly<Record<CheckStatus, number>>;
  /** Every rule that has a row in the job, with its plain name, in the order of their ids. */
  readonly rules: readonly { readonly rule: string; readonly plainName: string }[];
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
  /** Its rows, worst first, alike ones joined. */
  readonly lines: readonly LiveLine[];
  /** Which keys would have most of what is not checked checked. */
  readonly unchecked: Unchecked;
  readonly holes: readonly SummaryHole[];
  readonly held: readonly string[];
  /** What can be reached and typed on. */
  readonly figures: LiveFigures;
  /** What its title block says beside what the job writes. */
  readonly block: {
    readonly documentType: string;
    readonly status: string;
    readonly drawingNumber: string;
    readonly weight: string;
  };
}

/** What the rows of the whole job come to, for its checker. */
export interface LiveDigest extends JobDigest {
  readonly turn: number;
  readonly isSettled: boolean;
  readonly unit: Unit;
  readonly layoutHeld: readonly string[];
  /** Paths of the bases that it names, by their marks. */
  readonly paths: Readonly<Record<string, string>>;
  /** The first base with a row that lacks the key; null: a row of the job lacks it. */
  readonly lacking: Readonly<Record<string, string | null>>;
}

/** Every question of the job, as it is answered in place. */
export interface LiveQuestions {
  readonly turn: number;
  readonly isSettled: boolean;
  readonly asked: readonly AskedQuestion[];
  /** Of earlier packages: their rows do not fail any more, or are no more. */
  readonly closed: readonly SettledQuestion[];
  /** Answers of the job that answer no open question. */
  readonly unused: readonly UnusedAnswerLine[];
}

/** A question with what is said to it. */
export interface AskedQuestion extends LetterQuestion {
  readonly status: "open" | "answered" | "accepted";
  readonly check: SummaryCheck;
  readonly places: readonly QuestionPlace[];
  /** What takes its answers out of the job file; empty where none of them stands there. */
  readonly withdrawal: readonly KeyEdit[];
}

/** An answer that answers nothing, with why. */
export interface UnusedAnswerLine extends UnusedSummaryAnswer {
  /** What takes it out of the job file; empty where it comes from a form. */
  readonly withdrawal: readonly KeyEdit[];
}

/** What a person says to a question. */
export interface AnswerDraft {
  readonly number: string;
  /** accepted: a release is accepted by name while the question stays open. */
  readonly kind: "answered" | "accepted";
  readonly by: string;
  readonly date: string;
  readonly text: string;
  /** The value that was answered, where a form says it; absent: the value of now. */
  readonly value?: number | null;
}

/** Why an answer was not written, by its field. */
export type AnswerFaults = Partial<Readonly<Record<AnswerField, string>>>;

/** What came of answers: those that cannot stand in the job are not written, and none where a field is at fault. */
export interface AnsweredResult extends LiveResult {
  readonly faults: AnswerFaults;
}

/** What is asked of a live job with an edit. */
export interface Watch {
  /** Path of the base whose sheet is shown; null: none. */
  readonly base: string | null;
  readonly room: Room;
}

/** What came of an edit: how the text changed, how the job stands now, and the base that is watched. */
export interface LiveResult {
  /** Why nothing was changed where the text has no place for an edit, a sentence each; then no edit of the step was made. */
  readonly refused: readonly string[];
  readonly splices: readonly Splice[];
  readonly job: LiveJob;
  readonly view: LiveBaseView | null;
}

export type { KeyEdit, Splice };
