/** Long work on the page: how far it is, with a way to give it up; why nothing came of it; or what did. */
import type { JSX } from "preact";
import type { Finding } from "../../diagnostics/finding.js";
import { useActions, usePart } from "../app/page.js";
import type { TaskKind, TaskKinds } from "../engine/task-model.js";
import type { Work } from "../state/work.js";
import { save } from "./save.js";

/** The last work of a kind; `what` follows "Making", as `the package`. */
export function WorkShown<K extends TaskKind>({
  kind,
  doing,
  sentence = () => `${doing}: done`,
  children,
}: {
  readonly kind: K;
  /** What goes on, as `Making the package`. */
  readonly doing: string;
  /** The sentence that answers; a reader says it when it is there. */
  readonly sentence?: (answer: TaskKinds[K]["answer"]) => string;
  readonly children: (done: Extract<Work<K>, { kind: "done" }>) => JSX.Element;
}): JSX.Element {
  const work = useWork(kind);
  const { putAway } = useActions();
  return (
    <>
      <p class="for-readers" role="status">
        {work?.kind === "running" && doing}
        {work?.kind === "done" && sentence(work.answer)}
      </p>
      {work?.kind === "running" && <Running doing={doing} work={work} onGiveUp={() => putAway(kind)} />}
      {work?.kind === "refused" && <Refusal why={work.why} findings={work.findings} />}
      {work?.kind === "fault" && <Fault words={work.fault} />}
      {work?.kind === "done" && children(work)}
    </>
  );
}

function Fault({ words }: { readonly words: string }): JSX.Element {
  return (
    <div role="alert" class="refusal">
      <p class="fault">This is a fault of the program, not of what you gave it.</p>
      <pre>{words}</pre>
    </div>
  );
}

/** The last work of a kind; null: there is none. */
export function useWork<K extends TaskKind>(kind: K): Work<K> | null {
  return usePart((state): Work<K> | null => (state.works[kind] as Work<K> | undefined) ?? null);
}

function Running({
  doing,
  work: { progress },
  onGiveUp,
}: {
  readonly doing: string;
  readonly work: Extract<Work<TaskKind>, { kind: "running" }>;
  readonly onGiveUp: () => void;
}): JSX.Element {
  const share = progress === null ? 0 : Math.floor((100 * progress.done) / Math.max(1, progress.of));
  return (
    <div class="running">
      <p>{doing}</p>
      <progress
        aria-label={doing}
        max={progress?.of ?? 1}
        value={progress?.done}
        aria-valuetext={progress === null ? "begun" : `${share} %, ${progress.what}`}
      />
      <p class="soft what">{progress === null ? "reading what is needed" : progress.what}</p>
      <button type="button" onClick={onGiveUp}>
        Cancel
      </button>
    </div>
  );
}

/** So many causes are shown; a schedule may have a fault in every cell. */
const MOST_CAUSES = 20;

/** The causes, a line each; all that is at fault as a table, to be kept. */
export function Refusal({
  why,
  findings,
}: {
  readonly why: readonly string[];
  readonly findings: readonly Finding[];
}): JSX.Element {
  const more = why.length - MOST_CAUSES;
  return (
    <div role="alert" class="refusal">
      <p class="fault">
        <strong>Nothing came of it.</strong> {why.length === 1 ? "This stands in the way:" : "These stand in the way:"}
      </p>
      <ul>
        {why.slice(0, MOST_CAUSES).map((each, i) => (
          <li key={i}>{each}</li>
        ))}
      </ul>
      {more > 0 && <p>{more === 1 ? "And 1 more." : `And ${more} more.`}</p>}
      {findings.length > 0 && (
        <button type="button" onClick={() => void saveFindings(findings)}>
          Save every fault as a table (CSV)
        </button>
      )}
    </div>
  );
}

async function saveFindings(findings: readonly Finding[]): Promise<void> {
  const { writeFindingsCsv } = await import("../../formats/findings-csv.js");
  save("faults.csv", new Blob([writeFindingsCsv(findings)], { type: "text/csv" }));
}

/** What is said beside an answer: warnings, and where something comes from. */
export function Said({ lines }: { readonly lines: readonly string[] }): JSX.Element | null {
  if (lines.length === 0) return null;
  return (
    <ul class="said" aria-label="Remarks">
      {lines.map((line, i) => (
        <li key={i}>{line}</li>
      ))}
    </ul>
  );
}

/** The sentence that answers the question. */
export function Verdict({ isBad, sentence }: { readonly isBad: boolean; readonly sentence: string }): JSX.Element {
  return <p class={`verdict${isBad ? " bad" : ""}`}>{sentence}</p>;
}

/** Says that the job was changed since this was made. */
export function OfBefore(): JSX.Element {
  return <p class="of-before">The job was changed since: what stands here is of before. Make it again.</p>;
}
