/** Every row of the ledger as a table: only rows in sight are drawn, and asked for in slices. */
import type { JSX } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { counted } from "../../checks/words.js";
import type { LedgerRow, LedgerSlice } from "../../tasks/live/model.js";
import { useActions } from "../app/page.js";
import { useAnswer } from "../app/use-answer.js";
import type { LedgerFilter } from "../state/left.js";
import { askFor } from "./filter.js";
import { MarginBar } from "./margin-bar.js";
import { RowDetail } from "./row-detail.js";
import { capital, figureWords, standingWords, stateClass } from "./row-words.js";
import { rowAfter, rowsInSight, rowsToAsk, type Span, topFor } from "./window.js";

interface TableProps {
  readonly filter: LedgerFilter;
  /** Another one where the rows may be others. */
  readonly turn: string;
}

/** With the row that is looked at told beneath. */
export function LedgerTable({ filter, turn }: TableProps): JSX.Element {
  const { ledger } = useActions();
  const [sight, see] = useState({ top: 0, height: 400 });
  const [at, move] = useState(0);
  const place = useRef<HTMLDivElement>(null);
  const isMoving = useRef(false);
  const [total, count] = useState(0);
  const rowHeight = useRowHeight(place, total === 0);
  const span = within(rowsInSight(sight, rowHeight, total), total);
  const wanted = rowsToAsk(span);
  const key = JSON.stringify([filter, turn, wanted]);
  const slice = useAnswer(async () => {
    const rows = await ledger(askFor(filter, wanted));
    return rows && { rows, from: wanted.from };
  }, key);
  useEffect(() => count(slice?.rows.total ?? 0), [slice]);
  useEffect(() => {
    move(0);
    if (place.current !== null) place.current.scrollTop = 0;
  }, [filter]);
  useEffect(() => {
    if (!isMoving.current) return;
    const row = place.current?.querySelector<HTMLElement>(`[aria-rowindex="${at + 2}"]`);
    row?.focus({ preventScroll: true });
    if (row === document.activeElement) isMoving.current = false;
  });
  const rowAt = (index: number): LedgerRow | undefined => slice?.rows.rows[index - slice.from];
  const onKeyDown = (event: KeyboardEvent): void => {
    const height = bodyHeight(place.current);
    const next = rowAfter(event.key, at, Math.floor(height / rowHeight), total);
    if (next === null) return;
    event.preventDefault();
    isMoving.current = true;
    move(next);
    if (place.current !== null) place.current.scrollTop = topFor(next, rowHeight, { top: sight.top, height });
  };
  return (
    <>
      <p role="status" class="soft">
        {slice === null ? "Rows are being gathered." : totalsOf(slice.rows)}
      </p>
      <div
        class="ledger-table"
        ref={place}
        onScroll={({ currentTarget }) => see({ top: currentTarget.scrollTop, height: currentTarget.clientHeight })}
      >
        <Gap rows={span.from} rowHeight={rowHeight} />
        <table aria-label="Rows of the ledger" aria-rowcount={total + 1} onKeyDown={onKeyDown}>
          <Head />
          <tbody>
            <Rows {...{ span, rowAt, at, choose: move }} />
          </tbody>
        </table>
        <Gap rows={total - span.from - span.count} rowHeight={rowHeight} />
      </div>
      <RowDetail row={rowAt(at) ?? null} />
    </>
  );
}

function within({ from, count }: Span, total: number): Span {
  return { from, count: Math.max(0, Math.min(count, total - from)) };
}

function bodyHeight(place: HTMLElement | null): number {
  const head = place?.querySelector<HTMLElement>("thead")?.offsetHeight ?? 0;
  return Math.max(1, (place?.clientHeight ?? 400) - head);
}

/** As the style sheet has it: letters may be larger. */
function useRowHeight(place: { readonly current: HTMLElement | null }, isEmpty: boolean): number {
  const [height, set] = useState(36);
  useEffect(() => {
    const measure = (): void => {
      const row = place.current?.querySelector<HTMLElement>("tbody tr")?.offsetHeight ?? 0;
      if (row > 0) set(row);
    };
    measure();
    window.addEventListener("resize", measure);
    return () => window.removeEventListener("resize", measure);
  }, [place, isEmpty]);
  return height;
}

function totalsOf({ total, counts, isSettled }: LedgerSlice): string {
  const of = `${counts.fail} fail, ${counts["not-checked"]} not checked, ${counts.pass} pass, ${counts["not-applicable"]} do not apply`;
  return `${counted(total, "row")} shown. Whatever their status: ${of}${isSettled ? "" : ", and more to come"}.`;
}

function Head(): JSX.Element {
  return (
    <thead>
      <tr aria-rowindex={1}>
        <th scope="col" class="mark">
          Base
        </th>
        <th scope="col">Rule</th>
        <th scope="col" class="where">
          Where
        </th>
        <th scope="col" class="compared">
          Value and limit
        </th>
        <th scope="col" class="margin">
          Margin
        </th>
        <th scope="col" class="standing">
          Standing
        </th>
      </tr>
    </thead>
  );
}

/** Room of rows that are not drawn. */
function Gap({ rows, rowHeight }: { readonly rows: number; readonly rowHeight: number }): JSX.Element | null {
  return rows <= 0 ? null : <div style={{ height: `${rows * rowHeight}px` }} />;
}

interface RowsProps {
  readonly span: Span;
  readonly rowAt: (index: number) => LedgerRow | undefined;
  readonly at: number;
  readonly choose: (index: number) => void;
}

/** One of them can be tabbed to: the one that is looked at, or the first where that is out of sight. */
function Rows({ span, rowAt, at, choose }: RowsProps): JSX.Element {
  const isDrawn = at >= span.from && at < span.from + span.count;
  return (
    <>
      {Array.from({ length: span.count }, (_, i) => span.from + i).map((index) => (
        <tr
          key={index}
          aria-rowindex={index + 2}
          aria-current={index === at ? "true" : undefined}
          tabIndex={index === (isDrawn ? at : span.from) ? 0 : -1}
          onFocus={() => choose(index)}
        >
          <Cells row={rowAt(index)} />
        </tr>
      ))}
    </>
  );
}

/** A row that has not come yet keeps its room. */
function Cells({ row }: { readonly row: LedgerRow | undefined }): JSX.Element {
  if (row === undefined) return <td>...</td>;
  const { check, mark, path } = row;
  return (
    <>
      <td class="mark">{path === null ? "layout" : mark}</td>
      <td>{capital(check.plainName)}</td>
      <td class="where">{check.subject}</td>
      <td class="compared">{figureWords(check)}</td>
      <td class="margin">
        <MarginBar share={check.share} /> {check.spare}
      </td>
      <td class="standing">
        <span class={`state ${stateClass(check)}`}>{standingWords(check)}</span>
      </td>
    </>
  );
}
