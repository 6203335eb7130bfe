/** The row that is looked at, whole: its note, what holds it, and the way to its place. */
import type { JSX } from "preact";
import { counted } from "../../checks/words.js";
import { sourceWords } from "../../formats/ledger-text.js";
import type { LedgerRow } from "../../tasks/live/model.js";
import { useActions } from "../app/page.js";
import { KeyButtons } from "./key-buttons.js";
import { answerWords, capital, figureWords, standingWords } from "./row-words.js";

/** Room that stays the same, whatever the row has to tell. */
export function RowDetail({ row }: { readonly row: LedgerRow | null }): JSX.Element {
  const { choose, point } = useActions();
  if (row === null) return <section class="row-detail" aria-label="The row that is chosen" />;
  const { check, mark, path } = row;
  const show = async (): Promise<void> => {
    if (path === null) return;
    await choose(path);
    point({ subjects: [check.subject, ...check.subject.split(/[\s,;:/()-]+/)], rule: check.rule });
  };
  const answered = answerWords(check);
  return (
    <section class="row-detail" aria-label="The row that is chosen">
      <h3>
        {path === null ? "Layout" : mark}: {capital(check.plainName)} {check.subject}
      </h3>
      <p>
        {[capital(standingWords(check)), figureWords(check), check.spare].filter((words) => words !== "").join("; ")}.{" "}
        {check.note}
      </p>
      {answered !== "" && <p>{answered}</p>}
      <p class="soft">
        {check.rule}: {sourceWords(check)}
      </p>
      <div class="row">
        {path !== null && (
          <button type="button" onClick={() => void show()}>
            Show base {mark}
          </button>
        )}
        {check.missing.length > 0 && (
          <>
            <span class="soft">{counted(check.missing.length, "key")} would have it checked:</span>
            <KeyButtons keys={check.missing} base={path} />
          </>
        )}
      </div>
    </section>
  );
}
