/** What is not on the drawing: rods, plates, concrete, grout, template, rules and shop, as fields with what they lack. */
import type { JSX } from "preact";
import { useEffect, useId, useState } from "preact/hooks";
import type { LiveBase } from "../../tasks/live/model.js";
import { useActions, usePart } from "../app/page.js";
import { faultsAt, faultWords } from "./findings.js";
import { useHints } from "./hints.js";
import { useTakeText } from "./in-place.js";
import { KeyInput } from "./key-input.js";
import { JOB_KEYS, type PanelPart, panelParts } from "./panel-keys.js";

/** Folded parts, one after the other. */
export function Panel(): JSX.Element | null {
  const live = usePart((state) => state.live);
  const path = usePart((state) => state.base);
  const { takeBases } = useActions();
  const base = live?.bases.find((each) => each.path === path) ?? null;
  if (live === null) return null;
  if (live.basesIn === "sheet")
    return (
      <details>
        <summary>Fields</summary>
        <p>The bases stand in the spreadsheet that the job names.</p>
        <button type="button" onClick={() => void takeBases()}>
          Take the bases into the job
        </button>
      </details>
    );
  return (
    <>
      {base !== null &&
        panelParts(base).map((part) => <Part key={`${base.path} ${part.name}`} part={part} base={base} />)}
      <details>
        <summary>Rules and shop</summary>
        {JOB_KEYS.map(({ key, label }) => (
          <Field
            key={key}
            path={key}
            hintAt={key}
            label={label}
            text={live.said[key] ?? ""}
            given={givenOfJob(key, live.head)}
            lacks={[]}
          />
        ))}
      </details>
    </>
  );
}

function givenOfJob(
  key: string,
  head: { readonly unit: string; readonly shop: string; readonly editions: Readonly<Record<string, string>> } | null,
): Given | null {
  if (head === null) return null;
  const text = { units: head.unit, shop: head.shop, rules: head.editions.rules ?? "" }[key];
  return text === undefined ? null : { text, by: "the program" };
}

function Part({ part: { name, keys }, base }: { readonly part: PanelPart; readonly base: LiveBase }): JSX.Element {
  const checks = usePart((state) => state.sheet?.checks);
  const lacksOf = (key: string) => [
    ...new Set((checks ?? []).filter(({ missing }) => missing.includes(key)).map(({ plainName }) => plainName)),
  ];
  const lacking = keys.filter(
    ({ key }) => base.written[key] === undefined && base.given[key] === undefined && lacksOf(key).length > 0,
  ).length;
  return (
    <details>
      <summary>
        {name} {lacking > 0 && <span class="state asked">{lacking} lacking</span>}
      </summary>
      {keys.map(({ key, label }) => (
        <Field
          key={`${base.path}.${key}`}
          path={`${base.path}.${key}`}
          hintAt={key}
          label={label}
          text={base.written[key] ?? ""}
          given={base.given[key] ?? null}
          lacks={lacksOf(key.replace(/^groups\[\d+\]\./, ""))}
        />
      ))}
    </details>
  );
}

interface Given {
  readonly text: string;
  readonly by: string;
}

interface FieldProps {
  readonly path: string;
  readonly hintAt: string;
  readonly label: string;
  readonly text: string;
  readonly given: Given | null;
  /** What is not checked without it. */
  readonly lacks: readonly string[];
}

/** A text as it is written, taken when the field is left or by Enter; Escape brings back what was written. */
function Field({ path, hintAt, label, text, given, lacks }: FieldProps): JSX.Element {
  const [draft, setDraft] = useState(text);
  useEffect(() => setDraft(text), [text]);
  const findings = usePart((state) => state.live?.findings);
  const faults = faultsAt(findings ?? [], path).filter(({ at }) => at.path === path || text !== "");
  const take = useTakeText(path, label, text);
  const hint = useHints()(hintAt);
  const id = useId();
  const isChoice = hint !== null && hint.choices.length > 0 && !hint.isOpen;
  return (
    <div class="panel-field">
      <label for={id}>{label}</label>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: keys of the field inside */}
      <div
        onKeyDown={(event) => {
          if (event.key === "Escape") setDraft(text);
          else if (event.key === "Enter") void take(draft);
        }}
      >
        <KeyInput
          id={id}
          value={draft}
          hint={hint}
          placeholder={given?.text ?? ""}
          isFaulty={faults.length > 0}
          describedBy={`${id}-says`}
          onText={(typed) => {
            setDraft(typed);
            if (isChoice) void take(typed);
          }}
          onLeave={() => void take(draft)}
        />
      </div>
      <div class="says" id={`${id}-says`}>
        {faults.map((fault) => (
          <p key={fault.message} class="fault" dir="auto">
            {faultWords(fault)}
          </p>
        ))}
        {text === "" && given !== null && <p class="hint">By {given.by}</p>}
        {text === "" && given === null && lacks.length > 0 && <p class="lacks">Lacking for: {lacks.join(", ")}</p>}
      </div>
    </div>
  );
}
