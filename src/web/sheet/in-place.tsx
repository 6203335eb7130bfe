/** A word that is typed over where it stands: its text until it is clicked, or opened by Enter or F2; then its field. */
import type { JSX } from "preact";
import { useId, useRef, useState } from "preact/hooks";
import { textEdits } from "../../tasks/live/figure-edits.js";
import { useLook, usePart } from "../app/page.js";
import { useAway } from "./away.js";
import { useFieldFocus } from "./field-focus.js";
import { faultsAt, faultWords, newFaults } from "./findings.js";
import { useHints } from "./hints.js";
import { KeyInput } from "./key-input.js";
import { useSeenEdit } from "./seen-edit.js";

interface InPlaceProps {
  /** Key path in the job file, as `job.title` or `bases[2].template.grade`. */
  readonly path: string;
  /** Path of its hint, where that is another. */
  readonly hintAt?: string;
  readonly label: string;
  /** As it is written; "" where it is not. */
  readonly text: string;
  /** What stands there instead, where it is not written; null: it is what is written. */
  readonly shown?: string | null;
}

/** One word of the title block. */
export function InPlace({ path, hintAt = path, label, text, shown = null }: InPlaceProps): JSX.Element {
  const [draft, setDraft] = useState<string | null>(null);
  const findings = usePart((state) => state.live?.findings);
  const faults = faultsAt(findings ?? [], path);
  const take = useTakeText(path, label, text);
  const hint = useHints()(hintAt);
  const form = useRef<HTMLFormElement>(null);
  const word = useRef<HTMLButtonElement>(null);
  const id = useId();
  const isOpen = draft !== null;
  useFieldFocus(form, isOpen);
  useAway(form, () => {
    if (draft !== null) void take(draft).then((isTaken) => isTaken && setDraft(null));
  });
  const close = () => {
    setDraft(null);
    requestAnimationFrame(() => word.current?.focus());
  };
  const words = text !== "" ? text : (shown ?? "not given");
  return (
    <span class="word-place">
      <button
        ref={word}
        type="button"
        class={`word${text === "" && shown === null ? " soft" : ""}${faults.length > 0 ? " faulty" : ""}`}
        hidden={isOpen}
        aria-label={`${label}: ${words}`}
        aria-describedby={faults.length > 0 && !isOpen ? `${id}-fault` : undefined}
        title={faults.map(faultWords).join(" ")}
        onClick={() => setDraft(text)}
        onKeyDown={(event) => {
          if (event.key !== "F2") return;
          event.preventDefault();
          setDraft(text);
        }}
      >
        <bdi>{words}</bdi>
      </button>
      {isOpen && (
        <form
          ref={form}
          class="word-field"
          data-types-on-job
          onSubmit={(event) => {
            event.preventDefault();
            void take(draft).then((isTaken) => isTaken && close());
          }}
          onKeyDown={(event) => {
            event.stopPropagation();
            if (event.key === "Escape") close();
            else if (event.key === "Tab") void take(draft).then((isTaken) => isTaken && setDraft(null));
            else if (event.key === "Enter") {
              event.preventDefault();
              void take(draft).then((isTaken) => isTaken && close());
            }
          }}
        >
          <KeyInput
            label={label}
            value={draft}
            hint={hint}
            placeholder={shown ?? ""}
            isFaulty={faults.length > 0}
            describedBy={`${id}-fault`}
            onText={setDraft}
          />
        </form>
      )}
      {faults.length > 0 && (
        <span class={isOpen ? "fault" : "for-readers"} id={`${id}-fault`} role="alert" dir="auto">
          {faults.map(faultWords).join(" ")}
        </span>
      )}
    </span>
  );
}

/** Takes a text; an empty one takes the key out. True where nothing was refused. */
export function useTakeText(path: string, label: string, before: string): (text: string) => Promise<boolean> {
  const edit = useSeenEdit();
  const look = useLook();
  return async (typed) => {
    const text = typed.trim();
    if (text === before.trim()) return true;
    const { live } = look();
    if (live === null) return false;
    const known = live.findings;
    const name = text === "" ? `${label} taken out` : `${label} ${before === "" ? "" : `${before} to `}${text}`;
    await edit(name, textEdits(path, text, live));
    return newFaults(look().live?.findings ?? [], known).length === 0;
  };
}
