/** What is not on the drawing: rods, plates, concrete, grout, template, rules and shop, as fields with what they lack. */
import type { JSX } from "preact";
import { useEffect, useId, useMemo, useState } from "preact/hooks";
import type { LiveBase } from "../../tasks/live/model.js";
import { useActions, usePart } from "../app/page.js";
import { faultsAt, faultWords } from "./findings.js";
import { useAllHints, useHints } from "./hints.js";
import { useTakeText } from "./in-place.js";
import { KeyInput } from "./key-input.js";
import { isMeant, jobKeys, type PanelKey, type PanelPart, panelKeyOf, panelParts } from "./panel-keys.js";

const JOB_PART = "Rules and shop";

/** Folded parts, one after the other. A row that lacks a key leads to its field. */
export function Panel(): JSX.Element | null {
  const live = usePart((state) => state.live);
  const path = usePart((state) => state.base);
  const base = live?.bases.find((each) => each.path === path) ?? null;
  const hints = useAllHints();
  const parts = useMemo(() => (base === null ? [] : panelParts(base, Object.keys(hints ?? {}))), [base, hints]);
  const [opened, setOpened] = useState<ReadonlySet<string>>(new Set());
  const open = (name: string, isOpen: boolean) =>
    setOpened((before) => new Set([...before].filter((each) => each !== name).concat(isOpen ? [name] : [])));
  useGoal(parts, (name) => open(name, true));
  if (live === null) return null;
  if (live.basesIn === "sheet") return <SheetBases />;
  return (
    <>
      {base !== null &&
        parts.map((part) => (
          <Part key={part.name} part={part} base={base} isOpen={opened.has(part.name)} onOpen={open} />
        ))}
      <details open={opened.has(JOB_PART)} onToggle={(event) => open(JOB_PART, event.currentTarget.open)}>
        <summary>{JOB_PART}</summary>
        {jobKeys(live.said).map(({ key, label }) => (
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

/** Bases of a spreadsheet have no fields here. */
function SheetBases(): JSX.Element {
  const { takeBases } = useActions();
  return (
    <details>
      <summary>Fields</summary>
      <p>The bases stand in the spreadsheet that the job names.</p>
      <button type="button" onClick={() => void takeBases()}>
        Take the bases into the job
      </button>
    </details>
  );
}

const NOTHING_SAID = {};

/** Opens the part that has the field that the user is taken to, and goes there. */
function useGoal(parts: readonly PanelPart[], open: (name: string) => void): void {
  const goal = usePart((state) => state.goal);
  const path = usePart((state) => state.base);
  const said = usePart((state) => state.live?.said ?? NOTHING_SAID);
  const { reached, say } = useActions();
  useEffect(() => {
    if (goal === null || (goal.base !== null && goal.base !== path)) return;
    const isOfShop = goal.key.endsWith("of the shop file");
    const key = isOfShop
      ? "shop"
      : (panelKeyOf(parts, goal.key) ?? jobKeys(said).find((each) => each.key === goal.key)?.key);
    reached();
    if (isOfShop) say(`${goal.key}: it stands in the shop file. Choose another shop, or give a shop file of your own.`);
    if (key === undefined) {
      say(`${goal.key} has no field here: write it in the job file.`);
      return;
    }
    open(parts.find(({ keys }) => keys.some((each) => each.key === key))?.name ?? JOB_PART);
    requestAnimationFrame(() => {
      const field = document.querySelector<HTMLElement>(`[data-key="${key}"] :is(input, select)`);
      field?.scrollIntoView({ block: "center" });
      field?.focus();
    });
  });
}

function givenOfJob(
  key: string,
  head: { readonly unit: string; readonly shop: string; readonly editions: Readonly<Record<string, string>> } | null,
): Given | null {
  if (head === null) return null;
  const text =
    key === "units"
      ? head.unit
      : key === "shop"
        ? head.shop
        : head.editions[key === "rules.set" ? "rules" : key.replace(/^rules\./, "")];
  return text === undefined ? null : { text, by: "the program" };
}

interface PartProps {
  readonly part: PanelPart;
  readonly base: LiveBase;
  readonly isOpen: boolean;
  readonly onOpen: (name: string, isOpen: boolean) => void;
}

function Part({ part: { name, keys }, base, isOpen, onOpen }: PartProps): JSX.Element {
  const lines = usePart((state) => state.sheet?.lines);
  const lacksOf = (key: string) => [
    ...new Set(
      (lines ?? [])
        .filter(({ check }) => check.missing.some((wanted) => wanted.split(" or ").some((one) => isMeant(key, one))))
        .map(({ check }) => check.plainName),
    ),
  ];
  const lacking = keys.filter(
    ({ key }) => base.written[key] === undefined && base.given[key] === undefined && lacksOf(key).length > 0,
  ).length;
  return (
    <details open={isOpen} onToggle={(event) => onOpen(name, event.currentTarget.open)}>
      <summary>
        {name} {lacking > 0 && <span class="state asked">{lacking} lacking</span>}
      </summary>
      {(isOpen ? keys : []).map((each) => (
        <KeyOrParts key={`${base.path}.${each.key}`} of={each} base={base} lacksOf={lacksOf} />
      ))}
    </details>
  );
}

interface KeyOrPartsProps {
  readonly of: PanelKey;
  readonly base: LiveBase;
  readonly lacksOf: (key: string) => readonly string[];
}

/** A key; where it could be a group of keys, these too when they are asked for. */
function KeyOrParts({ of: { key, label, parts = [] }, base, lacksOf }: KeyOrPartsProps): JSX.Element {
  const [isInParts, setInParts] = useState(false);
  const field = (each: PanelKey) => (
    <Field
      key={each.key}
      path={`${base.path}.${each.key}`}
      hintAt={each.key}
      label={each.label}
      text={base.written[each.key] ?? ""}
      given={base.given[each.key] ?? null}
      lacks={lacksOf(each.key)}
    />
  );
  return (
    <>
      {field({ key, label })}
      {parts.length > 0 && (
        <button type="button" class="in-parts" aria-expanded={isInParts} onClick={() => setInParts(!isInParts)}>
          {label}, in parts
        </button>
      )}
      {isInParts && parts.map(field)}
    </>
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
    <div class="panel-field" data-key={hintAt}>
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
