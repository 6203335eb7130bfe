/** What keeps a package from being cut by, before it is made: faults, what is held, what is open, what is not released. */
import type { JSX } from "preact";
import type { LiveJob } from "../../tasks/live/model.js";
import { useActions, usePart } from "../app/page.js";

/** As the job stands now. */
export function InTheWay(): JSX.Element | null {
  const live = usePart((state) => state.live);
  const { show } = useActions();
  if (live === null) return null;
  const { sentence, held, faulty, open } = standing(live);
  return (
    <div class="in-the-way">
      <p class={`verdict${faulty.length + held.length > 0 ? " bad" : ""}`}>{sentence}</p>
      {!live.isSettled && <p class="soft">Bases are still being checked.</p>}
      <ul>
        {held.map(({ path, mark, held: reasons }) => (
          <li key={path}>
            <Base path={path} mark={mark} /> <span class="state held">held</span> {reasons.join("; ")}
          </li>
        ))}
        {live.layoutHeld.map((reason) => (
          <li key={reason}>
            Layout <span class="state held">held</span> {reason}
          </li>
        ))}
        {faulty.map(({ path, mark }) => (
          <li key={path}>
            <Base path={path} mark={mark} /> <span class="state faulty">at fault</span>: nothing is made until it is
            mended
          </li>
        ))}
      </ul>
      {open > 0 && (
        <button type="button" onClick={() => show("questions")}>
          {open === 1 ? "Answer 1 question" : `Answer ${open} questions`}
        </button>
      )}
    </div>
  );
}

function Base({ path, mark }: { readonly path: string; readonly mark: string }): JSX.Element {
  const { choose } = useActions();
  return (
    <button type="button" class="quiet" onClick={() => void choose(path)}>
      {mark === "" ? path : mark}
    </button>
  );
}

function standing(live: LiveJob): {
  readonly sentence: string;
  readonly held: LiveJob["bases"];
  readonly faulty: LiveJob["bases"];
  readonly open: number;
} {
  const held = live.bases.filter((base) => base.held.length > 0);
  const faulty = live.bases.filter(({ state }) => state === "faulty");
  const open = live.questions.filter(({ status }) => status === "open").length;
  const faults = live.findings.filter(({ severity }) => severity === "error").length;
  const parts = [
    ...(faults === 0 ? [] : [faults === 1 ? "1 fault in the job" : `${faults} faults in the job`]),
    ...(held.length === 0 ? [] : [`${held.length} of ${live.bases.length} bases held`]),
    ...(live.layoutHeld.length === 0 ? [] : ["the layout held"]),
    ...(open === 0 ? [] : [open === 1 ? "1 question open" : `${open} questions open`]),
    ...(live.head === null || live.head.status === "released" ? [] : [`not released: ${live.head.status}`]),
  ];
  const sentence =
    parts.length === 0
      ? "Nothing is held, no question is open, and the job is released."
      : `As it stands: ${parts.join(", ")}.`;
  return { sentence, held, faulty, open };
}
