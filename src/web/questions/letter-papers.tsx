/** What goes out with the questions: the letter as text to be pasted, and the form that the answers come back in. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { useActions } from "../app/page.js";
import { PaperRunning } from "../app/paper-running.js";
import { usePapers } from "../app/papers.js";
import { Press } from "../app/press.js";

/** Buttons for each; `isAsked`: something waits for an answer. */
export function LetterPapers({ isAsked }: { readonly isAsked: boolean }): JSX.Element {
  const { running, make, cancel } = usePapers();
  const [letter, show] = useState<string | null>(null);
  const write = (): void =>
    make(["letter-text"], ([paper]) => show(paper === undefined ? null : new TextDecoder().decode(paper.bytes)));
  return (
    <>
      <Press isOff={!isAsked || running !== null} onPress={write}>
        Letter as text
      </Press>
      <Press isOff={!isAsked || running !== null} onPress={() => make(["answer-form-xlsx"])}>
        Save the answer form, XLSX
      </Press>
      <Press isOff={!isAsked || running !== null} onPress={() => make(["answer-form-yaml"])}>
        Save it as YAML
      </Press>
      <PaperRunning running={running} cancel={cancel} />
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
