/** Cells of a spreadsheet or lines of a print, pasted or typed into a field. */
import type { JSX } from "preact";
import { useId } from "preact/hooks";
import { useActions } from "../app/page.js";
import { pastedSheet } from "./hand-over.js";

/** A field that takes any table. */
export function PasteForm({ text }: { readonly text: string }): JSX.Element {
  const { begin, readSheet } = useActions();
  const id = useId();
  const isEmpty = text.trim() === "";
  return (
    <section class="reading paste">
      <h2>Paste the schedule</h2>
      <p>
        Mark the table in the spreadsheet or in the print, headings and footnotes with it, copy, and paste it here. It
        is kept with the job's files as it came, so that it can be read again.
      </p>
      <label for={id}>Cells of the schedule</label>
      <textarea
        id={id}
        rows={14}
        spellcheck={false}
        wrap="off"
        value={text}
        ref={(element) => {
          if (element !== null && document.activeElement !== element && isEmpty) element.focus();
        }}
        onInput={({ currentTarget }) => begin({ kind: "paste", text: currentTarget.value })}
      />
      <p class="row">
        <button type="button" class="main" disabled={isEmpty} onClick={() => void readSheet(pastedSheet(text))}>
          Read it
        </button>
        <button type="button" onClick={() => begin({ kind: "choice" })}>
          Back
        </button>
      </p>
    </section>
  );
}
