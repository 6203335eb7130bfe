/** The schedule: the job's bases as a table that is edited as one edits a spreadsheet. */
import type { JSX } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { type Finding, formatFinding } from "../../diagnostics/finding.js";
import { useActions, usePart } from "../app/page.js";
import { ReadAgain } from "../begin/read-again.js";
import { Grid } from "./grid.js";
import { Layers } from "./layers.js";
import { type CellLine, cellIn, faultAt, faultWords, linesOf, whyHeld, worstWords } from "./lines.js";
import { Tools } from "./tools.js";
import { type Schedule, useSchedule } from "./use-schedule.js";

/** Narrower than this, in dots, a row is a card. */
const CARDS = 620;

/** The whole view. */
export function ScheduleView(): JSX.Element {
  const around = useRef<HTMLElement>(null);
  const isCards = useNarrow(around);
  const schedule = useSchedule(isCards);
  return (
    <section class="schedule" ref={around}>
      <h2 class="for-readers">Schedule of bases</h2>
      <div class="room">
        <Taking sheet={schedule.sheet} />
        <ReadAgain />
        <OtherFaults />
        <Tools schedule={schedule} />
        <Grid {...schedule} />
        <Foot schedule={schedule} />
        <Refused schedule={schedule} />
      </div>
      <Layers columns={schedule.columns} />
    </section>
  );
}

function useNarrow(around: { readonly current: HTMLElement | null }): boolean {
  const [isNarrow, setNarrow] = useState(() => innerWidth < CARDS);
  useEffect(() => {
    const element = around.current;
    if (element === null) return;
    const watch = new ResizeObserver(() => setNarrow(element.clientWidth < CARDS));
    watch.observe(element);
    return () => watch.disconnect();
  }, [around]);
  return isNarrow;
}

/** Bases of a spreadsheet are shown, and can be taken into the job. */
function Taking({ sheet }: { readonly sheet: string | null }): JSX.Element | null {
  const { takeBases } = useActions();
  if (sheet === null) return null;
  return (
    <p class="row taking">
      <span>
        These bases stand in {sheet}, which the job names: they are shown here as they are read, and changed there. To
        change them here, take them into the job; {sheet} stays as it is.
      </span>
      <button type="button" class="main" onClick={() => takeBases()}>
        Take them into the job
      </button>
    </p>
  );
}

const NO_FINDINGS: readonly Finding[] = [];
const MOST_FAULTS = 50;

/** What is wrong beside the lines of the table: in the spreadsheet, in the head of the job. */
function OtherFaults(): JSX.Element | null {
  const findings = usePart((state) => state.live?.findings ?? NO_FINDINGS);
  const faults = findings.filter(({ severity, at }) => severity === "error" && !isShownBelow(at.path ?? ""));
  if (faults.length === 0) return null;
  return (
    <div class="other-faults" role="status">
      <p>
        <span class="state faulty">at fault</span> Until this is mended the bases are shown as they were last right:
      </p>
      <ul>
        {faults.slice(0, MOST_FAULTS).map((finding, i) => (
          <li key={i} class="fault">
            {formatFinding(finding)}
          </li>
        ))}
      </ul>
      {faults.length > MOST_FAULTS && <p>and {faults.length - MOST_FAULTS} more</p>}
    </div>
  );
}

/** In the lines of bases, or under defaults and kinds. */
function isShownBelow(path: string): boolean {
  return /^(bases\[\d+\]|defaults\b|kinds\b)/.test(path);
}

/** How many bases are shown; and of the cell where the keyboard is, which a reader says by itself: who gives it, what is wrong. */
function Foot({ schedule }: { readonly schedule: Schedule }): JSX.Element {
  const { shown, bases, faults } = schedule;
  const count = `${shown.length === bases.length ? "" : `${shown.length} of `}${bases.length} bases`;
  return (
    <p class="foot">
      <span class="soft" role="status">
        {count}
      </span>
      {cellWords(schedule).map(({ text, tone }) => (
        <span key={text} class={tone}>
          {text}
        </span>
      ))}
      <span class="for-readers" role="status">
        {faultsSaid(bases, faults)}
      </span>
    </p>
  );
}

/** The first few faults with their bases: the keyboard has gone on when a value is found to be faulty. */
function faultsSaid(bases: Schedule["bases"], faults: Schedule["faults"]): string {
  const said = [...faults].flatMap(([index, each]) =>
    each.filter(({ isError }) => isError).map((fault) => `${bases[index]?.mark ?? ""}, ${faultWords(fault)}`),
  );
  return said.slice(0, 3).join(". ");
}

function cellWords({ bases, layout, faults, picked, columns }: Schedule) {
  const index = layout.shown[picked.to.spot.at] ?? -1;
  const base = bases[index];
  const line = base === undefined ? undefined : linesOf(base, index, faults.get(index))[picked.to.spot.sub];
  const column = columns[picked.to.column];
  if (line === undefined || line.kind === "fault" || column === undefined) return [];
  const cell = cellIn(line, column);
  const fault = faultAt(line, column)?.message;
  const told = column.id === "worst" ? worstWords(line.base) : whyHeld(line, column);
  const said = [markOf(line), column.name, cell.by === "" ? "" : `given by ${cell.by}`, told].filter(
    (text) => text !== "",
  );
  return [{ text: said.join(", "), tone: "" }, ...(fault === undefined ? [] : [{ text: fault, tone: "fault" }])];
}

function markOf(line: CellLine): string {
  return line.kind === "group" ? `${line.base.mark}, group ${line.group + 1}` : line.base.mark;
}

/** What was not taken, cell by cell, with its text: nothing is lost. */
function Refused({ schedule: { refused, hush } }: { readonly schedule: Schedule }): JSX.Element | null {
  if (refused.length === 0) return null;
  const most = refused.slice(0, 50);
  return (
    <div class="refused" role="alert">
      <p class="row">
        <b>{refused.length === 1 ? "Not taken:" : `${refused.length} cells were not taken:`}</b>
        <button type="button" onClick={hush}>
          Put away
        </button>
      </p>
      <ul>
        {most.map(({ where, text, why }, i) => (
          <li key={i}>
            {where}
            {text === "" ? "" : `, "${text}"`}: <span class="fault">{why}</span>
          </li>
        ))}
      </ul>
      {refused.length > most.length && <p>and {refused.length - most.length} more</p>}
    </div>
  );
}
