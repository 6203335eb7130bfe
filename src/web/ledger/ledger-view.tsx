/** Ledger. */
import type { JSX } from "preact";

/** Not built yet. */
export function LedgerView(): JSX.Element {
  return (
    <section class="reading">
      <h2>Ledger</h2>
    </section>
  );
}
