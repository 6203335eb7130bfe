/** What the page and its engine say to each other. The engine runs in a worker of its own, so that the page never waits. */
import type {
  AnswerDraft,
  AnswerFaults,
  KeyEdit,
  LedgerAsk,
  LedgerSlice,
  LiveBaseView,
  LiveDigest,
  LiveJob,
  LiveQuestions,
  Splice,
  Watch,
} from "../../tasks/live/model.js";
import type { LivePlan, LivePoints, Room, Zoom } from "../../tasks/live/plan-model.js";
import type { LiveSolid } from "../../tasks/live/solid.js";

import type { JobChange } from "./job-change.js";

/** A job with the files beside it, by name: texts and bytes as they were read. */
export interface JobFiles {
  readonly job: string;
  readonly files: ReadonlyMap<string, string | Uint8Array>;
}

/** What is asked of the engine. `open` starts anew. `date`: of a job that names none. */
export type EngineAsk =
  | { readonly kind: "open"; readonly files: JobFiles; readonly date: string; readonly watch: Watch }
  | { readonly kind: "edit"; readonly edits: readonly KeyEdit[]; readonly watch: Watch }
  | { readonly kind: "splice"; readonly splices: readonly Splice[]; readonly watch: Watch }
  | { readonly kind: "look"; readonly watch: Watch }
  | { readonly kind: "solid"; readonly base: string }
  /** Takes the bases of the schedule that the job names into the job file, as one edit. */
  | { readonly kind: "take-bases"; readonly watch: Watch }
  /** Rows of every base; the answer has them as `ledger`. */
  | { readonly kind: "ledger"; readonly ledger: LedgerAsk }
  /** What all rows come to; every question with what is said to it. */
  | { readonly kind: "digest" }
  | { readonly kind: "questions" }
  /** Every scalar as written under keys of the job's first level. */
  | { readonly kind: "written"; readonly keys: readonly string[] }
  /** The layout drawn in a room; its points to set out. */
  | { readonly kind: "plan"; readonly room: Room; readonly zoom: Zoom }
  | { readonly kind: "points" }
  /** Answers that are written into the job file, as one edit. */
  | { readonly kind: "answer"; readonly drafts: readonly AnswerDraft[]; readonly watch: Watch };

/** What it answers: how the text changed, and what is anew; `job` null where nothing but the watched base was asked for. */
export interface EngineAnswer {
  readonly splices: readonly Splice[];
  readonly job: LiveJob | null;
  readonly view: LiveBaseView | null;
  /** Where it was asked for; null while the base is at fault. */
  readonly solid?: LiveSolid | null;
  /** Why an edit was not made, a sentence each. */
  readonly refused?: readonly string[];
  /** Of the ask `ledger` alone. */
  readonly ledger?: LedgerSlice;
  /** Of the asks of these names alone; null where the job never was right. */
  readonly digest?: LiveDigest | null;
  readonly questions?: LiveQuestions | null;
  /** Of the ask `answer`: why its one answer was not written. */
  readonly faults?: AnswerFaults;
  /** Of the ask `written`: texts by key path. */
  readonly written?: Readonly<Record<string, string>>;
  /** Of the asks of these names alone; null where there is no layout. */
  readonly plan?: LivePlan | null;
  readonly points?: LivePoints | null;
  /** Processor milliseconds that the engine took. */
  readonly took: number;
}

/** An answer on its way to the page. */
export interface SentAnswer extends Omit<EngineAnswer, "job"> {
  readonly job: JobChange | null;
}

/** A message with its number, and the answer to it, or the fault that it met; 0: nobody asked, more of the job is known. */
export interface Numbered<T> {
  readonly id: number;
  readonly body: T;
}

/** A fault of the program, as a worker tells it. */
export interface EngineFault {
  readonly fault: string;
  /** True where it is none of the program: a part of its code did not come. */
  readonly isNotLoaded: boolean;
}
