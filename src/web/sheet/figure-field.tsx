/** The field that opens where a figure stands: its texts as they are written, taken by Enter, left by Escape. */
import type { JSX } from "preact";
import { useId, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Finding } from "../../diagnostics/finding.js";
import { editsOf, fieldText, giverWords, type TypedOn } from "../../tasks/live/figure-edits.js";
import type { FigureKey } from "../../tasks/live/figure-model.js";
import { useActions, useLook, usePart } from "../app/page.js";
import { useAway } from "./away.js";
import { useFieldFocus } from "./field-focus.js";
import { faultsAt, faultWords, newFaults } from "./findings.js";
import { useHints } from "./hints.js";
import { KeyInput } from "./key-input.js";
import { useSeenEdit } from "./seen-edit.js";

/** A figure that is open. */
export interface OpenFigure {
  readonly id: string;
  readonly name: string;
  readonly follows: string;
  readonly keys: readonly FigureKey[];
}

/** How the field is left: closed, on to the next figure or the one before, or for what was pressed beside it. */
export type Leaving = "taken" | "left" | "next" | "previous" | "away";

interface FieldProps {
  readonly figure: OpenFigure;
  readonly on: TypedOn;
  /** Of its upper left corner, dots of the screen from that of the drawing. */
  readonly left: number;
  readonly top: number;
  readonly onDone: (how: Leaving) => void;
}

/** Opens with the first text marked, so that typing replaces it. */
export function FigureField({ figure, on, left, top, onDone }: FieldProps): JSX.Element {
  const [texts, setTexts] = useState<readonly string[]>(() => figure.keys.map((key) => fieldText(key, on)));
  const [refused, setRefused] = useState<readonly string[]>([]);
  const inSheet = usePart((state) => state.live?.basesIn === "sheet");
  const findings = usePart((state) => state.live?.findings);
  const take = useTaking(figure, on, setRefused);
  const isOpen = figure.keys.length > 0 && !inSheet;
  const faultCount = figure.keys.reduce(
    (sum, { key }) => sum + faultsAt(findings ?? [], `${on.path}.${key}`).length,
    0,
  );
  const { form, place } = usePlace(left, top, faultCount + refused.length);
  useFieldFocus(form, true);
  const leave = async (how: Exclude<Leaving, "left">) => {
    if (!isOpen || (await take(texts))) onDone(how);
  };
  useAway(form, () => void leave("away"));
  return (
    <form
      ref={form}
      class="figure-field"
      data-types-on-job
      aria-label={figure.name}
      style={place}
      onSubmit={(event) => {
        event.preventDefault();
        void leave("taken");
      }}
      onKeyDown={(event) => {
        event.stopPropagation();
        if (event.key === "Escape") {
          event.preventDefault();
          onDone("left");
        } else if (event.key === "Tab" && isAtEnd(event.currentTarget, event.target, event.shiftKey)) {
          event.preventDefault();
          void leave(event.shiftKey ? "previous" : "next");
        }
      }}
    >
      {figure.follows !== "" && <p class="soft">{figure.follows}</p>}
      {inSheet ? (
        <TakeBases />
      ) : (
        figure.keys.map((key, index) => (
          <OneKey
            key={key.key}
            figure={key}
            on={on}
            text={texts[index] ?? ""}
            faults={faultsAt(findings ?? [], `${on.path}.${key.key}`)}
            onText={(text) => setTexts(texts.with(index, text))}
          />
        ))
      )}
      {refused.length > 0 && (
        <div class="fault" role="alert">
          {refused.map((words) => (
            <p key={words}>{words}</p>
          ))}
        </div>
      )}
      <div class="row">
        {isOpen && (
          <button type="submit" class="main">
            Take
          </button>
        )}
        <button type="button" onClick={() => onDone("left")}>
          {isOpen ? "Cancel" : "Close"}
        </button>
      </div>
    </form>
  );
}

interface OneKeyProps {
  readonly figure: FigureKey;
  readonly on: TypedOn;
  readonly text: string;
  readonly faults: readonly Finding[];
  readonly onText: (text: string) => void;
}

function OneKey({ figure, on, text, faults, onText }: OneKeyProps): JSX.Element {
  const { key, label, note } = figure;
  const id = useId();
  const hint = useHints()(key);
  const words = [note, giverWords(key, on)].filter((each) => each !== "");
  const hasFault = faults.length > 0;
  return (
    <div class="key">
      <label for={id}>{label}</label>
      <KeyInput
        id={id}
        value={text}
        hint={figure.takes.kind === "moves" ? null : hint}
        isFaulty={hasFault}
        describedBy={`${id}-says`}
        onText={onText}
      />
      <div id={`${id}-says`}>
        {faults.map((fault) => (
          <p key={fault.message} class="fault" dir="auto">
            {faultWords(fault)}
          </p>
        ))}
        {words.map((each) => (
          <p key={each} class="hint">
            {each}
          </p>
        ))}
      </div>
    </div>
  );
}

/** Bases of a schedule are not written in the job file. */
function TakeBases(): JSX.Element {
  const { takeBases } = useActions();
  return (
    <div>
      <p>
        This base stands in the spreadsheet that the job names. To type on its drawing, take the bases into the job
        file.
      </p>
      <button type="button" onClick={() => void takeBases()}>
        Take the bases into the job
      </button>
    </div>
  );
}

/** Takes what was typed; true where nothing was refused. A refused value is in the job all the same, and its fault at its field. */
function useTaking(
  { keys }: OpenFigure,
  on: TypedOn,
  refuse: (why: readonly string[]) => void,
): (texts: readonly string[]) => Promise<boolean> {
  const edit = useSeenEdit();
  const look = useLook();
  return async (texts) => {
    const typed = keys.flatMap((figure, i) => {
      const text = (texts[i] ?? "").trim();
      return text === fieldText(figure, on).trim() ? [] : [{ figure, text, before: fieldText(figure, on) }];
    });
    if (typed.length === 0) return true;
    const made = editsOf(typed, on);
    refuse(made.ok ? [] : [made.message]);
    if (!made.ok) return false;
    performance.mark("figure taken");
    const before = look().live?.findings ?? [];
    await edit(
      typed.map(({ figure, text, before: was }) => `${figure.label} ${was} to ${text}`).join(", "),
      made.edits,
    );
    const faults = newFaults(look().live?.findings ?? [], before);
    const own = (path: string | undefined) =>
      keys.some(({ key }) => faultsAt(faults, `${on.path}.${key}`).some(({ at }) => at.path === path));
    refuse(faults.filter(({ at }) => !own(at.path)).map(faultWords));
    return faults.length === 0;
  };
}

function isAtEnd(form: HTMLFormElement, target: EventTarget | null, isBack: boolean): boolean {
  const fields = [...form.querySelectorAll("input, select")];
  return fields.length === 0 || target === (isBack ? fields[0] : fields.at(-1));
}

/** Its first field lies over its figure, moved so far that all of it is on the paper; again when more is said in it. */
function usePlace(left: number, top: number, lines: number) {
  const form = useRef<HTMLFormElement>(null);
  const [place, setPlace] = useState({ left: `${left}px`, top: `${top}px` });
  useLayoutEffect(() => {
    const element = form.current;
    const around = element?.offsetParent;
    if (element === null || around === null || around === undefined) return;
    const field = element.querySelector<HTMLElement>("input, select");
    const [dx, dy] = [field?.offsetLeft ?? 0, field?.offsetTop ?? 0];
    const x = Math.max(4, Math.min(left - dx - 8, around.clientWidth - element.offsetWidth - 4));
    const y = Math.max(4, Math.min(top - dy - 6, around.clientHeight - element.offsetHeight - 4));
    setPlace({ left: `${x}px`, top: `${y}px` });
  }, [left, top, lines]);
  return { form, place };
}
