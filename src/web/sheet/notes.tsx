/** What a printed sheet says beside its plan, under the drawing: faults, why it is held, callouts that found no room, the plates around. */
import type { JSX } from "preact";
import type { Finding } from "../../diagnostics/finding.js";
import type { StrokeRole } from "../../sheets/scene.js";
import type { Edge, LiveFigure, LiveOutline } from "../../tasks/live/figure-model.js";
import type { LiveBase } from "../../tasks/live/model.js";
import { usePart } from "../app/page.js";
import { faultsUnder, faultWords } from "./findings.js";
import { penOf } from "./scene-drawing.js";

/** Over the drawing, a line that is always there, so that nothing moves: how the base stands, and why when it is opened. */
export function Standing(): JSX.Element {
  const path = usePart((state) => state.base);
  const base = usePart((state) => state.live?.bases.find((each) => each.path === state.base) ?? null);
  const { word, about, reasons, tone } = useStanding(path, base?.state ?? "waiting");
  const line = (
    <>
      <strong class={`state ${tone}`}>{word}</strong> <span class="about">{about}</span>
    </>
  );
  return (
    <div class="standing" role="status">
      {reasons.length === 0 ? (
        <p>{line}</p>
      ) : (
        <details>
          <summary>
            {line} <bdi class="first">{reasons[0]}</bdi>
          </summary>
          <ul>
            {reasons.map((reason) => (
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

interface Told {
  readonly word: string;
  readonly about: string;
  readonly reasons: readonly string[];
  readonly tone: string;
}

/** A fault goes before all, since the drawing is then not that of the job. */
function useStanding(path: string | null, state: LiveBase["state"]): Told {
  const findings = usePart((page) => page.live?.findings);
  const sheet = usePart((page) => page.sheet);
  const own = path === null ? [] : faultsUnder(findings ?? [], path);
  const all = (findings ?? []).filter(({ severity }) => severity === "error");
  const last = sheet === null ? "It cannot be drawn." : "Drawing and ledger are as they were last right.";
  if (own.length > 0)
    return { word: "At fault", about: last, reasons: own.map((each) => placed(each, path ?? "")), tone: "faulty" };
  if (all.length > 0)
    return { word: "Job at fault", about: last, reasons: all.map((each) => placed(each, "")), tone: "faulty" };
  const held = sheet?.held ?? [];
  if (held.length > 0) return { word: "Held", about: "Not to be cut:", reasons: held, tone: "held" };
  if (state === "asked")
    return { word: "Asked", about: "A question to the engineer is open.", reasons: [], tone: "asked" };
  if (state === "clear") return { word: "Clear", about: "No rule holds it.", reasons: [], tone: "clear" };
  return { word: "", about: "Being checked.", reasons: [], tone: "clear" };
}

function placed(fault: Finding, path: string): string {
  const at = fault.at.path ?? "";
  const key = path !== "" && at.startsWith(`${path}.`) ? at.slice(path.length + 1) : at;
  return key === "" ? faultWords(fault) : `${key}: ${faultWords(fault)}`;
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
        <NoteButton
          key={outline.id}
          figure={outline}
          words={outline.words}
          pen={PEN_OF[outline.name]}
          onOpen={onOpen}
        />
      ))}
      {unplaced.map((figure) => (
        <NoteButton key={figure.id} figure={figure} words={figure.words} onOpen={onOpen} />
      ))}
    </fieldset>
  );
}

const PEN_OF: Readonly<Record<Edge, StrokeRole>> = {
  template: "outline",
  "base plate": "base-plate",
  concrete: "concrete",
};

/** A piece of the line that the drawing has, as a legend does. */
function LinePiece({ pen }: { readonly pen: StrokeRole }): JSX.Element {
  return (
    <svg class="line-piece" viewBox="0 0 10 2" aria-hidden="true">
      <path class={`stroke ${pen}`} d="M0 1H10" {...penOf(pen)} />
    </svg>
  );
}

interface NoteButtonProps extends NotesProps {
  readonly figure: LiveFigure | LiveOutline;
  readonly words: string;
  /** Of an outline: how it is drawn. */
  readonly pen?: StrokeRole;
}

function NoteButton({ figure, words, pen, onOpen }: NoteButtonProps): JSX.Element {
  return (
    <button
      type="button"
      class="word note"
      data-figure={figure.id}
      aria-label={pen === undefined ? `${figure.name}: ${words}` : words}
      aria-haspopup="dialog"
      onClick={(event) => onOpen(figure, event.currentTarget)}
      onKeyDown={(event) => {
        if (event.key !== "F2") return;
        event.preventDefault();
        onOpen(figure, event.currentTarget);
      }}
    >
      {pen !== undefined && <LinePiece pen={pen} />}
      <bdi>{words}</bdi>
    </button>
  );
}
