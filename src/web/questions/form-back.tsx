/** An answer form that came back: chosen or dropped, read into the answers of the job. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { counted } from "../../checks/words.js";
import { useActions, useLook } from "../app/page.js";
import { messageOf, Refused } from "../engine/refused.js";
import { startTask } from "../engine/tasks.js";
import { filesNow } from "../state/model.js";

/** A place for a file; what is wrong with it is told there. */
export function FormThatCameBack(): JSX.Element {
  const look = useLook();
  const { answer, say, today } = useActions();
  const [faults, tell] = useState<readonly string[]>([]);
  const [isOver, hover] = useState(false);
  const read = async (file: File | undefined): Promise<void> => {
    const { job } = look();
    if (job === null || file === undefined) return;
    const own = filesNow(job);
    const files = { ...own, files: new Map([...own.files, [file.name, new Uint8Array(await file.arrayBuffer())]]) };
    try {
      const drafts = await startTask("answer-form", { files, date: today(), name: file.name }, () => {}).answer;
      const found = await answer(drafts);
      tell(Object.values(found));
      say(`${file.name}: ${counted(drafts.length, "answer")} read.`);
    } catch (error) {
      tell(error instanceof Refused ? error.why : [messageOf(error)]);
    }
  };
  return (
    <fieldset
      class={`drop${isOver ? " over" : ""}`}
      onDragOver={(event) => {
        event.preventDefault();
        hover(true);
      }}
      onDragLeave={() => hover(false)}
      onDrop={(event) => {
        event.preventDefault();
        hover(false);
        void read(event.dataTransfer?.files[0]);
      }}
    >
      <label>
        Answer form that came back (XLSX, CSV or YAML): choose it, or drop it here
        <input
          type="file"
          accept=".xlsx,.csv,.tsv,.yaml,.yml"
          onChange={({ currentTarget }) => {
            const [file] = currentTarget.files ?? [];
            void read(file).then(() => {
              currentTarget.value = "";
            });
          }}
        />
      </label>
      {faults.length > 0 && (
        <ul class="fault" role="alert">
          {faults.map((fault) => (
            <li key={fault}>{fault}</li>
          ))}
        </ul>
      )}
    </fieldset>
  );
}
