/** Every cell of the sheet beside what was taken for it and why; what is meant in it can be said right there. */
import type { JSX } from "preact";
import { useId, useLayoutEffect, useRef, useState } from "preact/hooks";
import { counted } from "../../checks/words.js";
import { listed } from "../../diagnostics/listed.js";
import { readable } from "../../diagnostics/printable.js";
import { yamlScalar } from "../../formats/source-yaml.js";
import { useActions } from "../app/page.js";
import { NOTHING_TYPED } from "../state/beginning.js";
import type { ReadRow, RowFilter, RowState } from "./read-rows.js";
import { filteredRows, ROW_FILTERS } from "./read-rows.js";
import { saidHere } from "./said-here.js";
import { beginningOf, Written } from "./written.js";

/** So many rows are on the page at a time. */
const PAGE = 100;

/** What is looked for in the table. */
export interface Sought {
  readonly filter: RowFilter;
  readonly words: string;
}

/** The table with what is looked for in it. */
export function ReadTable({
  rows,
  headings,
  sought,
  seek,
}: {
  readonly rows: readonly ReadRow[];
  /** Our own headings, one of which a column may be meant as. */
  readonly headings: readonly string[];
  readonly sought: Sought;
  seek(sought: Sought): void;
}): JSX.Element {
  const found = filteredRows(rows, sought.filter, sought.words);
  const [from, setFrom] = useState(0);
  const start = Math.min(from, Math.max(0, PAGE * (Math.ceil(found.length / PAGE) - 1)));
  const id = useId();
  return (
    <section class="cells" aria-label="Cells of the sheet, and what they were taken as">
      <div class="row seek">
        <label for={`${id}-filter`} class="for-readers">
          Cells that are shown
        </label>
        <select
          id={`${id}-filter`}
          value={sought.filter}
          onChange={({ currentTarget }) => {
            setFrom(0);
            seek({ ...sought, filter: filterOf(currentTarget.value) });
          }}
        >
          {(Object.keys(ROW_FILTERS) as RowFilter[]).map((filter) => (
            <option key={filter} value={filter}>
              {ROW_FILTERS[filter].words} ({rows.filter(({ state }) => ROW_FILTERS[filter].has(state)).length})
            </option>
          ))}
        </select>
        <label for={`${id}-words`} class="for-readers">
          Find a cell, a mark or words
        </label>
        <input
          id={`${id}-words`}
          type="search"
          placeholder="Find a cell, mark or words"
          value={sought.words}
          onInput={({ currentTarget }) => {
            setFrom(0);
            seek({ ...sought, words: currentTarget.value });
          }}
        />
        <span class="soft" role="status">
          {found.length <= PAGE
            ? counted(found.length, "cell")
            : `${start + 1} to ${Math.min(found.length, start + PAGE)} of ${found.length} cells`}
        </span>
        {found.length > PAGE && (
          <span class="row">
            <button type="button" disabled={start === 0} onClick={() => setFrom(start - PAGE)}>
              Cells before
            </button>
            <button type="button" disabled={start + PAGE >= found.length} onClick={() => setFrom(start + PAGE)}>
              Cells after
            </button>
          </span>
        )}
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls is reached by keyboard */}
      <section class="rows" tabIndex={0} aria-label="Rows of the table">
        <table>
          <thead>
            <tr>
              <th scope="col">Cell</th>
              <th scope="col">As written</th>
              <th scope="col">Taken as</th>
              <th scope="col">Why</th>
            </tr>
          </thead>
          <tbody>
            {found.slice(start, start + PAGE).map((row) => (
              <Row key={row.key} row={row} headings={headings} />
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}

function filterOf(text: string): RowFilter {
  return (Object.keys(ROW_FILTERS) as RowFilter[]).find((filter) => filter === text) ?? "all";
}

const STATE_WORDS: Readonly<Record<RowState, string>> = {
  asked: "asked",
  fault: "at fault",
  doubt: "doubtful",
  reworded: "",
  plain: "",
  heading: "",
  left: "",
};
const STATE_CLASS: Readonly<Record<RowState, string>> = {
  asked: "asked",
  fault: "held",
  doubt: "asked",
  reworded: "clear",
  plain: "clear",
  heading: "clear",
  left: "clear",
};

const MOST_MARKS = 4;
const MOST_WRITTEN = 300;

function Row({ row, headings }: { readonly row: ReadRow; readonly headings: readonly string[] }): JSX.Element {
  const { cell, heading, written, marks, taken, why, told, state, answers } = row;
  return (
    <tr class={`is-${state}`}>
      <th scope="row">
        {cell === "" ? "no cell" : cell} <span class="soft under">{beginningOf(heading, 80)}</span>
      </th>
      <td class="written">
        <Written text={written} most={MOST_WRITTEN} />
        {answers !== null && !cell.includes("!") && <Meant {...{ cell, written, answers, headings }} />}
      </td>
      <td>
        {marks.length > 0 && (
          <span class="soft marks">
            {listed(
              marks.map((mark) => beginningOf(mark, 40)),
              MOST_MARKS,
            )}
          </span>
        )}
        {taken.map(({ name, value, unit }) => (
          <span key={`${name} ${value}`} class="taken">
            {name} <bdi class="value">{beginningOf(value, MOST_WRITTEN)}</bdi> {unit}
          </span>
        ))}
        {taken.length === 0 && <span class="soft">{state === "heading" ? "a heading" : "no value"}</span>}
      </td>
      <td class="why">
        {STATE_WORDS[state] !== "" && <span class={`state ${STATE_CLASS[state]}`}>{STATE_WORDS[state]}</span>}
        {why.map((words) => (
          <span key={words}>{readable(words)}</span>
        ))}
        {told.map(({ message, severity }) => (
          <span key={message} class={severity === "error" ? "fault" : "doubt"}>
            {saidHere(message)}
          </span>
        ))}
      </td>
    </tr>
  );
}

interface MeantProps {
  readonly cell: string;
  readonly written: string;
  readonly answers: "cells" | "columns";
  readonly headings: readonly string[];
}

/** Says what is meant in a cell, or by a heading: an answer of the job, the sheet stays as it is. */
function Meant({ cell, written, answers, headings }: MeantProps): JSX.Element {
  const { answerSheet } = useActions();
  const [text, setText] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const wasOpen = useRef(false);
  const id = useId();
  const isOpen = text !== null;
  useLayoutEffect(() => {
    if (isOpen) field.current?.select();
    else if (wasOpen.current) button.current?.focus();
    wasOpen.current = isOpen;
  }, [isOpen]);
  if (text === null)
    return (
      <button
        ref={button}
        type="button"
        class="quiet meant"
        onClick={() => setText(answers === "cells" ? written : "")}
      >
        Mean otherwise<span class="for-readers"> in {cell}</span>
      </button>
    );
  const submit = (event: Event): void => {
    event.preventDefault();
    if (text.trim() === "") return;
    setText(null);
    const answer = { path: ["readFrom", answers, cell], text: yamlScalar(text.trim()) };
    void answerSheet({
      asked: `${cell} "${beginningOf(written, 80)}"`,
      said: text.trim(),
      answers: [answer],
      typed: NOTHING_TYPED,
    });
  };
  return (
    <form class="row" onSubmit={submit}>
      <input
        ref={field}
        type="text"
        list={`${id}-names`}
        aria-label={answers === "cells" ? `What is meant in ${cell}` : `What stands under ${beginningOf(written, 80)}`}
        value={text}
        onInput={({ currentTarget }) => setText(currentTarget.value)}
        onKeyDown={({ key }) => key === "Escape" && setText(null)}
      />
      <datalist id={`${id}-names`}>
        {answers === "columns" && headings.map((name) => <option key={name} value={name} />)}
      </datalist>
      <button type="submit">Mean it</button>
      <button type="button" class="quiet" onClick={() => setText(null)}>
        Leave it
      </button>
    </form>
  );
}
