/** What is chosen of the ledger of the whole job. */
import type { JSX } from "preact";
import { useActions, usePart } from "../app/page.js";
import { useAnswer } from "../app/use-answer.js";
import { ALL_ROWS, type LedgerFilter } from "../state/left.js";
import { askFor, turnOf } from "./filter.js";
import { capital, severityWords, statusWords } from "./row-words.js";

interface FilterProps {
  readonly filter: LedgerFilter;
  readonly choose: (filter: LedgerFilter) => void;
}

const STATUSES = ["", "fail", "pass", "not-checked", "not-applicable"] as const;
const SEVERITIES = ["", "stop", "ask", "advise"] as const;
const ORDERS = ["worst", "mark", "rule"] as const;

/** A field each, and one button that takes all of them back. */
export function LedgerFilters({ filter, choose }: FilterProps): JSX.Element {
  const set = (change: Partial<LedgerFilter>): void => choose({ ...filter, ...change });
  return (
    <search class="filters" aria-label="Rows of the ledger">
      <Choice
        name="Status"
        value={filter.status}
        choices={STATUSES.map((status) => ({ value: status, words: status === "" ? "all" : statusWords(status) }))}
        take={(status) => set({ status })}
      />
      <Choice
        name="Severity"
        value={filter.severity}
        choices={SEVERITIES.map((severity) => ({
          value: severity,
          words: severity === "" ? "all" : severityWords(severity),
        }))}
        take={(severity) => set({ severity })}
      />
      <Rules filter={filter} choose={choose} />
      <Marks filter={filter} choose={choose} />
      <label>
        Text
        <input
          type="search"
          value={filter.words}
          onInput={({ currentTarget }) => set({ words: currentTarget.value })}
        />
      </label>
      <Choice
        name="Order"
        value={filter.order}
        choices={ORDERS.map((order) => ({ value: order, words: order === "worst" ? "worst first" : `by ${order}` }))}
        take={(order) => set({ order })}
      />
      <button type="button" disabled={filter === ALL_ROWS} onClick={() => choose(ALL_ROWS)}>
        Show all rows
      </button>
    </search>
  );
}

interface ChoiceProps<T extends string> {
  readonly name: string;
  readonly value: T;
  readonly choices: readonly { readonly value: T; readonly words: string }[];
  readonly take: (value: T) => void;
}

function Choice<T extends string>({ name, value, choices, take }: ChoiceProps<T>): JSX.Element {
  return (
    <label>
      {name}
      <select
        value={value}
        onChange={({ currentTarget }) => {
          const chosen = choices[currentTarget.selectedIndex];
          if (chosen !== undefined) take(chosen.value);
        }}
      >
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.words}
          </option>
        ))}
      </select>
    </label>
  );
}

/** Rules that have a row, by their plain names. */
function Rules({ filter, choose }: FilterProps): JSX.Element {
  const live = usePart((state) => state.live);
  const { ledger } = useActions();
  const slice = useAnswer(() => ledger(askFor(ALL_ROWS, { from: 0, count: 0 })), turnOf(live));
  const rules = (slice?.rules ?? []).map(({ rule, plainName }) => ({ value: rule, words: capital(plainName) }));
  const choices = [{ value: "", words: "all" }, ...rules.toSorted((a, b) => (a.words < b.words ? -1 : 1))];
  return <Choice name="Rule" value={filter.rule} choices={choices} take={(rule) => choose({ ...filter, rule })} />;
}

/** Typed, with the marks of the job to choose from: there may be hundreds. */
function Marks({ filter, choose }: FilterProps): JSX.Element {
  const bases = usePart((state) => state.live?.bases ?? NONE);
  const take = (typed: string): void =>
    choose({ ...filter, mark: typed === "" ? null : typed === OF_JOB ? "" : typed });
  return (
    <label>
      Base
      <input
        list="ledger-marks"
        value={filter.mark === "" ? OF_JOB : (filter.mark ?? "")}
        placeholder="all"
        onInput={({ currentTarget }) => take(currentTarget.value)}
      />
      <datalist id="ledger-marks">
        <option value={OF_JOB} />
        {bases.map(({ path, mark }) => (
          <option key={path} value={mark} />
        ))}
      </datalist>
    </label>
  );
}

const NONE: readonly never[] = [];

/** Stands for rows of no base. */
const OF_JOB = "(the layout)";
