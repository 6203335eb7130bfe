/** The rows of the whole ledger that are looked at, as they are asked for. */
import type { LedgerAsk, LiveBase, LiveJob } from "../../tasks/live/model.js";
import type { LedgerFilter } from "../state/left.js";
import type { Span } from "./window.js";

/** The ask for such rows. */
export function askFor({ status, severity, rule, mark, words, order }: LedgerFilter, span: Span): LedgerAsk {
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
