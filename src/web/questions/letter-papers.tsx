/** What goes out with the questions: the letter as text to be pasted, and the form that the answers come back in. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { useActions } from "../app/page.js";
import { usePapers } from "../app/papers.js";

/** Buttons for each; `isAsked`: something waits for an answer. */
export function LetterPapers({ isAsked }: { readonly isAsked: boolean }): JSX.Element {
  const { running, make, cancel } = usePapers();
  const [letter, show] = useState<string | null>(null);
  const write = (): void =>
    make(["letter-text"], ([paper]) => show(paper === undefined ? null : new TextDecoder().decode(paper.bytes)));
  return (
    <>
      <button type="button" disabled={!isAsked || running !== null} onClick={write}>
        Letter as text
      </button>
      <button type="button" disabled={!isAsked || running !== null} onClick={() => make(["answer-form-xlsx"])}>
        Save the answer form, XLSX
      </button>
      <button type="button" disabled={!isAsked || running !== null} onClick={() => make(["answer-form-yaml"])}>
        Save it as YAML
      </button>
      {running !== null && (
        <span role="status">
          {running}{" "}
          <button type="button" onClick={cancel}>
            Cancel
          </button>
        </span>
      )}
      {letter !== null && <LetterText letter={letter} close={() => show(null)} />}
    </>
  );
}

function LetterText({ letter, close }: { readonly letter: string; readonly close: () => void }): JSX.Element {
  const { say } = useActions();
  const copy = (): Promise<void> =>
    navigator.clipboard.writeText(letter).then(
      () => say("The letter is copied."),
      () => say("The browser does not let the page copy: mark the text and copy it.", "fault"),
    );
  return (
    <div class="letter">
      <label>
        Letter to the engineer of record
        <textarea class="letter-text" readOnly rows={14} value={letter} />
      </label>
      <div class="row">
        <button type="button" onClick={() => void copy()}>
          Copy
        </button>
        <button type="button" onClick={close}>
          Close
        </button>
      </div>
    </div>
  );
}
