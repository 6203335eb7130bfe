/** How the tables of a job are looked at: found again by who went on to another view and comes back. */
import type { CheckStatus } from "../../checks/model.js";
import type { Severity } from "../../job/index.js";
import type { BaseState, LedgerOrder } from "../../tasks/live/model.js";

/** Which rows of the whole ledger, and in which order; "": all of them. */
export interface LedgerFilter {
  readonly status: CheckStatus | "";
  readonly severity: Severity | "";
  readonly rule: string;
  /** Mark of a base; null: all, and rows of the job. */
  readonly mark: string | null;
  readonly words: string;
  readonly order: LedgerOrder;
}

/** All rows, the worst first. */
export const ALL_ROWS: LedgerFilter = { status: "", severity: "", rule: "", mark: null, words: "", order: "worst" };

/** Which bases the schedule shows. */
export interface BaseFilter {
  readonly words: string;
  readonly state: BaseState | "question" | "all";
}

/** By which column it is sorted; null: as the job has them. */
export type BaseOrder = { readonly column: string; readonly isDown: boolean } | null;

/** Every base. */
export const ALL_BASES: BaseFilter = { words: "", state: "all" };

/** Of the job that is open. */
export interface Left {
  readonly ledger: LedgerFilter;
  readonly bases: BaseFilter;
  readonly order: BaseOrder;
}

/** As a job is first looked at. */
export const UNTOUCHED: Left = { ledger: ALL_ROWS, bases: ALL_BASES, order: null };
