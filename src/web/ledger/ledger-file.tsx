/** `ledger.csv` as the package has it. */
import type { JSX } from "preact";
import { usePapers } from "../app/papers.js";

/** A button that makes it and hands it out. */
export function LedgerFile(): JSX.Element {
  const { running, make, cancel } = usePapers();
  if (running !== null)
    return (
      <span role="status">
        {running}{" "}
        <button type="button" onClick={cancel}>
          Cancel
        </button>
      </span>
    );
  return (
    <button type="button" onClick={() => make(["ledger"])}>
      Save ledger.csv
    </button>
  );
}
