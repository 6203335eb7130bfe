/** What a sheet leaves open, asked right beside it: each choice writes the line that the job file then has. */
import type { JSX } from "preact";
import { useId, useState } from "preact/hooks";
import { listed } from "../../diagnostics/listed.js";
import { readable } from "../../diagnostics/printable.js";
import type { ReadAsQuestion } from "../../formats/read-as-form.js";
import { yamlScalar } from "../../formats/source-yaml.js";
import { rodSizes } from "../../standards/find-thread.js";
import type { WrittenAnswer } from "../../tasks/answered-sheet.js";
import { answersInLine } from "../../tasks/answered-sheet.js";
import type { FirstPattern } from "../../tasks/first-job.js";
import { patternText } from "../../tasks/first-job.js";
import { MEANT_IN_CELL } from "../../tasks/read-job.js";
import type { Unit } from "../../units/index.js";
import { useActions } from "../app/page.js";
import type { Given, Typed } from "../state/beginning.js";
import { NOTHING_TYPED } from "../state/beginning.js";
import { emptyPattern, figureOf, PATTERN_FIELDS } from "./first-figures.js";
import { PatternFields } from "./pattern-fields.js";
import { saidHere } from "./said-here.js";
import { stockThicknesses } from "./starters.js";
import { beginningOf } from "./written.js";

/** So many questions are on the page at a time, and so many cells of each. */
const MOST = 30;
const MOST_CELLS = 6;

/** What the questions stand on. */
export interface QuestionsProps {
  readonly questions: readonly ReadAsQuestion[];
  readonly prefix: string;
  /** null where it is asked. */
  readonly unit: Unit | null;
  /** What is written in a cell, by its place without its sheet. */
  readonly writtenIn: ReadonlyMap<string, string>;
  /** Answers so far: where one is asked again, what was typed stands in its fields. */
  readonly given: readonly Given[];
  show(cell: string): void;
}

/** Open questions, the first first. */
export function Questions({ questions, ...beside }: QuestionsProps): JSX.Element {
  return (
    <>
      {questions.slice(0, MOST).map((question) => (
        <Question key={`${question.text} ${question.cells[0] ?? ""}`} question={question} {...beside} />
      ))}
      {questions.length > MOST && <p class="soft">and {questions.length - MOST} more, once these are answered.</p>}
    </>
  );
}

function Question({
  question,
  prefix,
  unit,
  writtenIn,
  given,
  show,
}: Omit<QuestionsProps, "questions"> & { readonly question: ReadAsQuestion }): JSX.Element {
  const { cells, choices } = question;
  const text = saidHere(question.text.charAt(0).toUpperCase() + question.text.slice(1));
  const bare = cells.map((cell) => (cell.startsWith(prefix) ? cell.slice(prefix.length) : cell));
  return (
    <fieldset class="question">
      <legend tabIndex={-1}>{text}</legend>
      {bare.length > 0 && (
        <ul class="asked-cells" aria-label="Cells that it is about">
          {bare.slice(0, MOST_CELLS).map((cell) => (
            <li key={cell}>
              <button type="button" class="quiet" onClick={() => show(cell)}>
                {cell}
              </button>{" "}
              <bdi>{beginningOf(writtenIn.get(cell) ?? "", 120)}</bdi>
            </li>
          ))}
          {bare.length > MOST_CELLS && <li class="soft">{listed(bare.slice(MOST_CELLS), 8)}</li>}
        </ul>
      )}
      {choices.map(({ line, means }) => (
        <Choice key={line} asked={text} line={line} means={meansHere(means)} {...{ unit, writtenIn, given }} />
      ))}
    </fieldset>
  );
}

/** Options of the command line are none here. */
function meansHere(means: string): string {
  return readable(means.replace(/; on the command line --.*$/, "")).replace(/; else fill in the cells$/, "");
}

interface ChoiceProps {
  readonly asked: string;
  readonly line: string;
  readonly means: string;
  readonly unit: Unit | null;
  readonly writtenIn: ReadonlyMap<string, string>;
  readonly given: readonly Given[];
}

/** A button where the line says it all, else fields for what is to be filled in. */
function Choice({ asked, line, means, unit, writtenIn, given }: ChoiceProps): JSX.Element {
  const { answerSheet } = useActions();
  const parts = answersInLine(line);
  const whole = parts.flatMap(({ path, text }) => (text === null ? [] : [{ path, text }]));
  const typed = typedFor(given, parts);
  if (parts.some(({ path }) => path.join(".") === "defaults.pattern"))
    return <PatternAnswer asked={asked} typed={typed.pattern} />;
  if (whole.length < parts.length) return <Filled {...{ asked, means, parts, unit, writtenIn, typed }} />;
  return (
    <p class="choice-line">
      <button
        type="button"
        onClick={() =>
          void answerSheet({ asked, said: means === "" ? line : means, answers: whole, typed: NOTHING_TYPED })
        }
      >
        {means === "" ? line : means}
      </button>
      {means !== "" && <code>{readable(line)}</code>}
    </p>
  );
}

/** What was typed for one of these answers before. */
function typedFor(given: readonly Given[], parts: readonly WrittenAnswer<string | null>[]): Typed {
  const keys = new Set(parts.map(({ path }) => keyOf(path)));
  const before = given.findLast(({ answers }) => answers.some(({ path }) => keys.has(keyOf(path))));
  return before?.typed ?? NOTHING_TYPED;
}

const keyOf = (path: readonly string[]): string => path.join("\n");

function Filled({
  asked,
  means,
  parts,
  unit,
  writtenIn,
  typed,
}: Omit<ChoiceProps, "line" | "given"> & {
  readonly parts: readonly WrittenAnswer<string | null>[];
  readonly typed: Typed;
}): JSX.Element {
  const { answerSheet } = useActions();
  const id = useId();
  const [texts, setTexts] = useState(typed.texts);
  const given = parts.flatMap(({ path, text }): WrittenAnswer[] => {
    if (text !== null) return [{ path, text }];
    const now = (texts[keyOf(path)] ?? "").trim();
    return now === "" ? [] : [{ path, text: yamlScalar(now) }];
  });
  const isReady = given.some(({ path }) => (texts[keyOf(path)] ?? "").trim() !== "");
  const submit = (event: Event): void => {
    event.preventDefault();
    const said = Object.values(texts).filter((text) => text.trim() !== "");
    if (isReady) void answerSheet({ asked, said: listed(said, 4), answers: given, typed: { texts, pattern: null } });
  };
  return (
    <form class="filled" onSubmit={submit}>
      {means !== "" && means !== MEANT_IN_CELL && <p>{means}</p>}
      {parts
        .filter(({ text }) => text === null)
        .map(({ path }) => {
          const key = keyOf(path);
          const name = path.at(-1) ?? "";
          const written = path.includes("cells") ? writtenIn.get(name) : undefined;
          return (
            <label key={key}>
              {written === undefined ? nameOf(path) : <NameOfCell cell={name} written={written} />}
              <input
                type="text"
                list={`${id}-${key}`}
                value={texts[key] ?? ""}
                onInput={({ currentTarget }) => setTexts({ ...texts, [key]: currentTarget.value })}
              />
              <datalist id={`${id}-${key}`}>
                {offered(path, unit).map((choice) => (
                  <option key={choice} value={choice} />
                ))}
              </datalist>
            </label>
          );
        })}
      <button type="submit" disabled={!isReady}>
        Answer
      </button>
    </form>
  );
}

const NAMES: Readonly<Record<string, string>> = {
  "defaults.template.thickness": "Plate thickness",
  "defaults.rods.diameter": "Rod diameter",
};

function nameOf(path: readonly string[]): string {
  return NAMES[path.join(".")] ?? path.join(" ");
}

/** Sizes that the standards have, and plates that the shop of a new job has in stock. */
function offered(path: readonly string[], unit: Unit | null): readonly string[] {
  if (unit === null) return [];
  switch (path.join(".")) {
    case "defaults.template.thickness":
      return stockThicknesses(unit);
    case "defaults.rods.diameter":
      return rodSizes[unit];
    default:
      return [];
  }
}

function NameOfCell({ cell, written }: { readonly cell: string; readonly written: string }): JSX.Element {
  return (
    <>
      {cell} says <bdi>{written === "" ? "nothing" : `"${beginningOf(written, 120)}"`}</bdi>; meant is
    </>
  );
}

/** The pattern that all bases have, where the sheet has none. */
function PatternAnswer({ asked, typed }: { readonly asked: string; readonly typed: FirstPattern | null }): JSX.Element {
  const { answerSheet } = useActions();
  const [pattern, setPattern] = useState<FirstPattern>(typed ?? emptyPattern("rectangle"));
  const isReady = PATTERN_FIELDS[pattern.kind].every(
    ({ key, isOptional }) => isOptional || figureOf(pattern, key).trim() !== "",
  );
  const submit = (event: Event): void => {
    event.preventDefault();
    const text = patternText(pattern);
    const answers = [{ path: ["defaults", "pattern"], text }];
    if (isReady) void answerSheet({ asked, said: text, answers, typed: { texts: {}, pattern } });
  };
  return (
    <form class="filled" onSubmit={submit}>
      <p>The pattern, where it is the same for all:</p>
      <PatternFields pattern={pattern} faultOf={() => ""} change={setPattern} />
      <button type="submit" disabled={!isReady}>
        Answer
      </button>
    </form>
  );
}
