/** The line at the top: which job is open, steps back and forth, and whether it is kept. */
import type { JSX } from "preact";
import { useActions, usePart } from "./page.js";

/** Number, title and revision of the job; undo and redo. */
export function JobLine(): JSX.Element {
  const head = usePart((state) => state.live?.head ?? null);
  const job = usePart((state) => state.job);
  const keeping = usePart((state) => state.keeping);
  const { undo, redo } = useActions();
  return (
    <header class="job-line">
      <h1>{head === null ? "rodplate" : `${head.number}  ${head.title}, rev ${head.revision}, ${head.status}`}</h1>
      {job !== null && (
        <div class="steps">
          <button type="button" disabled={job.made === 0} onClick={undo}>
            Undo
          </button>
          <button type="button" disabled={job.made === job.steps.length} onClick={redo}>
            Redo
          </button>
          <span role="status">{keeping.kind === "refused" ? `Not kept: ${keeping.why}` : keeping.kind}</span>
        </div>
      )}
    </header>
  );
}
