/** What the checker of a job wants first: what is held and why, the closest calls, advice, and which keys would close most. */
import type { ComponentChildren, JSX } from "preact";
import { CAUTIONS } from "../../checks/cautions.js";
import { markWords } from "../../checks/digest.js";
import { NOT_CHECKED_AT_ALL } from "../../checks/model.js";
import { counted, subjectWords } from "../../checks/words.js";
import { comparison, marginWords } from "../../formats/ledger-text.js";
import type { LiveDigest } from "../../tasks/live/model.js";
import { useActions, usePart } from "../app/page.js";
import { ALL_ROWS, type LedgerFilter } from "../state/left.js";
import { KeyButtons } from "./key-buttons.js";
import { LedgerFile } from "./ledger-file.js";
import { capital } from "./row-words.js";

interface HeadProps {
  readonly digest: LiveDigest;
  readonly choose: (filter: LedgerFilter) => void;
}

/** Each leads to its place. */
export function LedgerHead({ digest, choose }: HeadProps): JSX.Element {
  const { rows, failed, notChecked, passed, notApplicable } = digest;
  return (
    <>
      <p>
        {counted(rows, "row")}: <b>{failed} fail</b>, {notChecked} not checked, {passed} pass, {notApplicable} do not
        apply. <LedgerFile />
      </p>
      <div class="digest">
        <Held {...{ digest, choose }} />
        <Questions />
        <Closest {...{ digest, choose }} />
        <Advice {...{ digest, choose }} />
        <Lacking {...{ digest, choose }} />
        <Cautions />
      </div>
    </>
  );
}

function Part({ name, children }: { readonly name: string; readonly children: ComponentChildren }): JSX.Element {
  return (
    <section aria-label={name}>
      <h3>{name}</h3>
      {children}
    </section>
  );
}

const MOST_MARKS = 8;

/** Marks, each a button to its base. */
function Marks({
  marks,
  paths,
}: {
  readonly marks: readonly string[];
  readonly paths: LiveDigest["paths"];
}): JSX.Element {
  const { choose } = useActions();
  const more = marks.length - MOST_MARKS;
  return (
    <span class="keys">
      {marks.slice(0, MOST_MARKS).map((mark) => {
        const path = paths[mark];
        return path === undefined ? (
          <span key={mark}>{mark}</span>
        ) : (
          <button key={mark} type="button" onClick={() => void choose(path)}>
            {mark}
          </button>
        );
      })}
      {more > 0 && <span>and {more} more</span>}
    </span>
  );
}

function Held({ digest, choose }: HeadProps): JSX.Element {
  const { held, heldBases, bases, heldTemplates, layoutHeld, paths } = digest;
  if (held.length === 0 && layoutHeld.length === 0)
    return (
      <Part name="Held">
        <p class="soft">Nothing is held: {counted(bases, "base")}.</p>
      </Part>
    );
  return (
    <Part name="Held">
      <p>
        {heldBases} of {counted(bases, "base")}, {counted(heldTemplates, "template")} not to be cut.{" "}
        <button type="button" class="quiet" onClick={() => choose({ ...ALL_ROWS, status: "fail", severity: "stop" })}>
          Show the rows that hold
        </button>
      </p>
      <ul>
        {held.slice(0, MOST_GROUPS).map(({ marks, reasons }) => (
          <li key={marks.join(" ")}>
            <Marks marks={marks} paths={paths} /> {reasons.join("; ")}
          </li>
        ))}
        {held.length > MOST_GROUPS && <li>and {held.length - MOST_GROUPS} other causes</li>}
        {layoutHeld.map((reason) => (
          <li key={reason}>Layout, not to be set out by: {reason}</li>
        ))}
      </ul>
    </Part>
  );
}

const MOST_GROUPS = 6;

function Questions(): JSX.Element {
  const questions = usePart((state) => state.live?.questions ?? NONE);
  const { show } = useActions();
  const open = questions.filter(({ status }) => status === "open").length;
  return (
    <Part name="Questions to the engineer of record">
      <p>
        {questions.length === 0 ? (
          <span class="soft">None.</span>
        ) : (
          <button type="button" onClick={() => show("questions")}>
            {open} open of {questions.length}
          </button>
        )}
      </p>
    </Part>
  );
}

const NONE: readonly never[] = [];

function Closest({ digest: { closest, unit, paths } }: HeadProps): JSX.Element | null {
  const { choose, point } = useActions();
  if (closest.length === 0) return null;
  const show = async (mark: string, subjects: readonly string[], rule: string): Promise<void> => {
    const path = paths[mark];
    if (path === undefined) return;
    await choose(path);
    point({ subjects, rule });
  };
  return (
    <Part name="Closest of what passes">
      <ol>
        {closest.map(({ row, subjects, marks }) => (
          <li key={`${row.rule} ${row.clause} ${marks.first[0]} ${subjects[0]}`}>
            <button type="button" class="quiet" onClick={() => void show(marks.first[0] ?? "", subjects, row.rule)}>
              {capital(row.plainName)}: {comparison(row, unit)}, {marginWords(row, unit)}
            </button>{" "}
            <span class="soft">
              {markWords(marks, MOST_MARKS / 2)}, {subjectWords(subjects)}
            </span>
          </li>
        ))}
      </ol>
    </Part>
  );
}

function Advice({ digest: { advice }, choose }: HeadProps): JSX.Element | null {
  if (advice.length === 0) return null;
  return (
    <Part name="Advice, which stops nothing">
      <ul>
        {advice.map(({ rule, plainName, rows, ofLayout, marks }) => (
          <li key={rule}>
            <button
              type="button"
              class="quiet"
              onClick={() => choose({ ...ALL_ROWS, status: "fail", severity: "advise", rule })}
            >
              {capital(plainName)}: {counted(rows, "row")}
            </button>{" "}
            <span class="soft">{markWords(marks, MOST_MARKS / 2, ofLayout ? "; " : ", ")}</span>
          </li>
        ))}
      </ul>
    </Part>
  );
}

/** What no row says. */
function Cautions(): JSX.Element {
  return (
    <Part name="Cautions">
      <p>No rule looks at: {NOT_CHECKED_AT_ALL.join("; ")}.</p>
      <ul>
        {CAUTIONS.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </Part>
  );
}

const MOST_STEPS = 6;

function Lacking({ digest: { unchecked, lacking }, choose }: HeadProps): JSX.Element | null {
  const { rows, keyless, steps } = unchecked;
  if (rows === 0) return null;
  return (
    <Part name="Not checked for want of input">
      <p>
        <button type="button" class="quiet" onClick={() => choose({ ...ALL_ROWS, status: "not-checked" })}>
          {counted(rows, "row")}
        </button>{" "}
        {steps.length > 0 && "Most of it is checked when these are given, in this order:"}
      </p>
      <ol>
        {steps.slice(0, MOST_STEPS).map((step) => (
          <li key={step.keys.join(" ")}>
            <KeyButtons keys={step.keys} base={lacking[step.keys[0] ?? ""] ?? null} />{" "}
            <span class="soft">
              {counted(step.rows, "row")}, together {step.total}
            </span>
          </li>
        ))}
      </ol>
      {keyless > 0 && (
        <p class="soft">
          {counted(keyless, "row")} {keyless === 1 ? "hangs" : "hang"} on no key.
        </p>
      )}
    </Part>
  );
}
