/** What a printed sheet says beside its plan, under the drawing: faults, why it is held, callouts that found no room, the plates around. */
import type { JSX } from "preact";
import type { LiveFigure, LiveOutline } from "../../tasks/live/figure-model.js";
import { usePart } from "../app/page.js";
import { faultsIn, faultWords } from "./findings.js";

/** Over the drawing: what is wrong with it, in words. */
export function Banner(): JSX.Element {
  const findings = usePart((state) => state.live?.findings);
  const path = usePart((state) => state.base);
  const sheet = usePart((state) => state.sheet);
  const faults = path === null ? [] : faultsIn(findings ?? [], path);
  const others = (findings ?? []).filter((each) => each.severity === "error" && !faults.includes(each));
  const held = sheet?.held ?? [];
  return (
    <div class="banner" role="status">
      {faults.length > 0 && (
        <div class="at-fault">
          <strong>AT FAULT</strong> {sheet === null ? "It cannot be drawn." : "The drawing is as it was last right."}
          <ul>
            {faults.map((fault) => (
              <li key={`${fault.at.path} ${fault.message}`} dir="auto">
                {fault.at.path?.slice((path?.length ?? 0) + 1)}: {faultWords(fault)}
              </li>
            ))}
          </ul>
        </div>
      )}
      {faults.length === 0 && others.length > 0 && (
        <div class="at-fault">
          <strong>JOB AT FAULT</strong> Elsewhere:{" "}
          {faultWords(others[0] ?? { code: "", severity: "error", at: { file: "" }, message: "" })}
        </div>
      )}
      {held.length > 0 && (
        <details class="held" open={held.length < 3}>
          <summary>
            <strong>HELD</strong> Not to be cut, for {held.length === 1 ? "one reason" : `${held.length} reasons`}
          </summary>
          <ul>
            {held.map((reason) => (
              <li key={reason} dir="auto">
                {reason}
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

interface NotesProps {
  readonly onOpen: (figure: LiveFigure | LiveOutline, from: HTMLElement) => void;
}

/** Under the drawing, at its left. */
export function Notes({ onOpen }: NotesProps): JSX.Element {
  const figures = usePart((state) => state.sheet?.figures ?? null);
  const unplaced = figures?.figures.filter(({ box }) => box === null) ?? [];
  const outlines = figures?.outlines ?? [];
  return (
    <fieldset class="notes" aria-label="Notes of the drawing">
      {outlines.map((outline) => (
        <NoteButton key={outline.id} figure={outline} words={outlineWords(outline)} onOpen={onOpen} />
      ))}
      {unplaced.map((figure) => (
        <NoteButton key={figure.id} figure={figure} words={figure.words} onOpen={onOpen} />
      ))}
    </fieldset>
  );
}

/** `base plate 420 × 360`. */
function outlineWords({ name, keys }: LiveOutline): string {
  const sizes = keys
    .filter(({ key }) => /\.(x|y|diameter)$/.test(key))
    .map(({ key, shown }) => (key.endsWith("diameter") ? `Ø${shown}` : shown));
  return `${name} ${sizes.join(" × ")}`;
}

interface NoteButtonProps extends NotesProps {
  readonly figure: LiveFigure | LiveOutline;
  readonly words: string;
}

function NoteButton({ figure, words, onOpen }: NoteButtonProps): JSX.Element {
  return (
    <button
      type="button"
      class={`word note ${figure.id.startsWith("outline-") ? figure.id : ""}`}
      data-figure={figure.id}
      aria-haspopup="dialog"
      onClick={(event) => onOpen(figure, event.currentTarget)}
      onKeyDown={(event) => {
        if (event.key !== "F2") return;
        event.preventDefault();
        onOpen(figure, event.currentTarget);
      }}
    >
      <bdi>{words}</bdi>
    </button>
  );
}
