/** The ledger of the whole job: what its checker wants first, and every row. */
import type { JSX } from "preact";
import { counted } from "../../checks/words.js";
import { useActions, usePart } from "../app/page.js";
import { useAnswer } from "../app/use-answer.js";
import type { LedgerFilter } from "../state/left.js";
import { turnOf, waitingIn } from "./filter.js";
import { LedgerFilters } from "./ledger-filters.js";
import { LedgerHead } from "./ledger-head.js";
import { LedgerTable } from "./ledger-table.js";

/** Head, filters and table, all at once: nothing moves down under who reads. */
export function LedgerView(): JSX.Element {
  const live = usePart((state) => state.live);
  const { digest: askDigest, leave } = useActions();
  const filter = usePart((state) => state.left.ledger);
  const choose = (ledger: LedgerFilter): void => leave({ ledger });
  const digest = useAnswer(askDigest, turnOf(live), ({ isSettled }) => isSettled);
  const waiting = waitingIn(live?.bases ?? []);
  return (
    <section class="ledger-view" aria-label="Ledger of the whole job">
      <h2>Ledger</h2>
      <p class="soft" role="status">
        {waiting > 0
          ? `${counted(waiting, "base")} still to be checked.`
          : (live?.findings.some(({ severity }) => severity === "error") ?? false)
            ? "Something in the job is at fault: these are the rows of the job as it was last right."
            : "Every base is checked."}
      </p>
      {digest === null ? (
        <p aria-busy="true" />
      ) : (
        <>
          <LedgerHead digest={digest} choose={choose} />
          <LedgerFilters filter={filter} choose={choose} />
          <LedgerTable filter={filter} turn={turnOf(live)} />
        </>
      )}
    </section>
  );
}
