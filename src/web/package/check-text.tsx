/** The checks as text, as a terminal shows them: of the whole job, of some bases, or every row. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { TextToCopy } from "../answers/text-to-copy.js";
import { OfBefore, Said, WorkShown } from "../answers/work-shown.js";
import { useActions, usePart } from "../app/page.js";
import { today } from "../state/clock.js";
import { filesNow } from "../state/model.js";
import { isOfBefore } from "../state/work-actions.js";

/** To be copied into a message. */
export function CheckText(): JSX.Element {
  const job = usePart((state) => state.job);
  const [marks, setMarks] = useState("");
  const [all, setAll] = useState(false);
  const { work } = useActions();
  const write = (): void => {
    const named = marks.split(/[\s,;]+/).filter((mark) => mark !== "");
    if (job !== null) work("check", { files: filesNow(job), date: today(), marks: named, all });
  };
  return (
    <details class="check-text">
      <summary>The checks as text</summary>
      <form
        class="asked-for"
        onSubmit={(event) => {
          event.preventDefault();
          write();
        }}
      >
        <label>
          Marks of bases or templates; none for the whole job
          <input type="text" value={marks} onInput={({ currentTarget }) => setMarks(currentTarget.value)} />
        </label>
        <label class="tick">
          <input type="checkbox" checked={all} onChange={({ currentTarget }) => setAll(currentTarget.checked)} /> Every
          row
        </label>
        <button type="submit">Write the text</button>
      </form>
      <WorkShown kind="check" doing="Checking">
        {({ ask, answer }) => (
          <>
            {isOfBefore(ask.files, job) && <OfBefore />}
            <Said lines={answer.said} />
            <TextToCopy text={answer.text} name="The checks as text" file="check.txt" />
          </>
        )}
      </WorkShown>
    </details>
  );
}
