/** Which rows of the whole ledger are looked at, and in which order. */
import type { CheckStatus } from "../../checks/model.js";
import type { Severity } from "../../job/index.js";
import type { LedgerAsk, LedgerOrder, LiveBase, LiveJob } from "../../tasks/live/model.js";
import type { Span } from "./window.js";

/** As chosen; "": all of them. */
export interface Filter {
  readonly status: CheckStatus | "";
  readonly severity: Severity | "";
  readonly rule: string;
  /** Mark of a base; null: all, and rows of the job. */
  readonly mark: string | null;
  readonly words: string;
  readonly order: LedgerOrder;
}

/** All rows, the worst first. */
export const NO_FILTER: Filter = { status: "", severity: "", rule: "", mark: null, words: "", order: "worst" };

/** The ask for such rows. */
export function askFor({ status, severity, rule, mark, words, order }: Filter, span: Span): LedgerAsk {
  return {
    statuses: status === "" ? [] : [status],
    severity: severity === "" ? null : severity,
    rule: rule === "" ? null : rule,
    ...{ mark, words, order },
    ...span,
  };
}

/** Another one where the engine would answer otherwise; while bases wait to be checked now and then. */
export function turnOf(live: LiveJob | null): string {
  if (live === null) return "";
  const checked = live.bases.length - waitingIn(live.bases);
  const part = Math.max(1, Math.ceil(live.bases.length / 8));
  return `${live.turn} ${live.isSettled} ${live.isSettled ? "" : Math.floor(checked / part)}`;
}

/** Bases that are not checked yet. */
export function waitingIn(bases: readonly LiveBase[]): number {
  return bases.filter(({ state }) => state === "waiting").length;
}
