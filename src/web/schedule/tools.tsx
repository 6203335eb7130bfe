/** What is done with the schedule, above it; and which of its columns are shown. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import type { BaseFilter } from "../state/left.js";
import { COLUMNS } from "./columns.js";
import type { Schedule } from "./use-schedule.js";

const STATES: readonly (readonly [BaseFilter["state"], string])[] = [
  ["all", "all bases"],
  ["held", "held"],
  ["question", "with an open question"],
  ["faulty", "faulty"],
  ["asked", "asked"],
  ["waiting", "waiting"],
  ["clear", "clear"],
];

/** Buttons and filters. */
export function Tools({ schedule }: { readonly schedule: Schedule }): JSX.Element {
  const { isReadOnly, order, shown, bases } = schedule;
  const [isChoosing, setChoosing] = useState(false);
  return (
    <div class="row tools" role="toolbar" aria-label="Schedule">
      <label>
        Find
        <input
          type="search"
          value={schedule.filter.words}
          onInput={({ currentTarget: { value } }) => schedule.setFilter({ ...schedule.filter, words: value })}
        />
      </label>
      <label>
        Show
        <select
          value={schedule.filter.state}
          onChange={({ currentTarget: { value } }) => {
            const found = STATES.find(([state]) => state === value);
            if (found !== undefined) schedule.setFilter({ ...schedule.filter, state: found[0] });
          }}
        >
          {STATES.map(([state, words]) => (
            <option key={state} value={state}>
              {words}
            </option>
          ))}
        </select>
      </label>
      {schedule.isCards && <SortBy schedule={schedule} />}
      {!isReadOnly && <Changes schedule={schedule} />}
      <button type="button" onClick={schedule.show}>
        Open template
      </button>
      <button type="button" aria-expanded={isChoosing} onClick={() => setChoosing(!isChoosing)}>
        Columns
      </button>
      {order !== null && !isReadOnly && shown.length === bases.length && (
        <button type="button" onClick={schedule.writeOrder} title="The job file has its bases in another order">
          Write this order into the job
        </button>
      )}
      {isChoosing && <Columns schedule={schedule} />}
    </div>
  );
}

/** Cards have no headings to be sorted by. */
function SortBy({ schedule: { order, columns, sortBy } }: { readonly schedule: Schedule }): JSX.Element {
  return (
    <label>
      Sort by
      <select value={order?.column ?? ""} onChange={({ currentTarget: { value } }) => sortBy(value)}>
        <option value="">order of the job</option>
        {columns.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}

function Changes({ schedule }: { readonly schedule: Schedule }): JSX.Element {
  const { order, shown, bases } = schedule;
  const isWhole = order === null && shown.length === bases.length;
  return (
    <>
      <button type="button" onClick={schedule.add}>
        Add a base
      </button>
      <button type="button" onClick={schedule.duplicate}>
        Duplicate
      </button>
      <button type="button" onClick={schedule.takeOut}>
        Take out
      </button>
      <button type="button" onClick={schedule.fillDown}>
        Fill down
      </button>
      <button type="button" disabled={!isWhole} onClick={() => schedule.move(-1)}>
        Move up
      </button>
      <button type="button" disabled={!isWhole} onClick={() => schedule.move(1)}>
        Move down
      </button>
    </>
  );
}

/** Each column with its box. */
function Columns({ schedule: { chosen, choose } }: { readonly schedule: Schedule }): JSX.Element {
  return (
    <fieldset class="columns">
      <legend>Columns that are shown</legend>
      <ul>
        {COLUMNS.filter(({ id }) => id !== "mark").map(({ id, name }) => (
          <li key={id}>
            <label>
              <input type="checkbox" checked={chosen.has(id)} onChange={() => choose(id)} /> {name}
            </label>
          </li>
        ))}
      </ul>
    </fieldset>
  );
}
