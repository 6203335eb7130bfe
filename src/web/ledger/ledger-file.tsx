/** `ledger.csv` as the package has it. */
import type { JSX } from "preact";
import { PaperRunning } from "../app/paper-running.js";
import { usePapers } from "../app/papers.js";
import { Press } from "../app/press.js";

/** A button that makes it and hands it out. */
export function LedgerFile(): JSX.Element {
  const { running, make, cancel } = usePapers();
  return (
    <>
      <Press isOff={running !== null} onPress={() => make(["ledger"])}>
        Save ledger.csv
      </Press>
      <PaperRunning running={running} cancel={cancel} />
    </>
  );
}
