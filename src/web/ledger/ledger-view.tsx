/** Ledger. */
import type { JSX } from "preact";

/** Not built yet. */
export function LedgerView(): JSX.Element {
  return <h2>Ledger</h2>;
}
