/** The schedule as a grid: arrows lead through it, typing edits, a block is copied and pasted. Only lines in sight are drawn. */
import type { JSX, RefObject } from "preact";
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { LiveBase } from "../../tasks/live/model.js";
import type { BaseOrder } from "../state/left.js";
import type { Column } from "./columns.js";
import { type At, ledTo } from "./grid-keys.js";
import { compareSpots, edgesOf, held, inSight, type Layout, type Spot } from "./layout.js";
import { type Fault, type Line, linesOf } from "./lines.js";
import { type Field, Row } from "./row.js";

/** What is picked: from the cell where it began to the cell where the keyboard is. */
export interface Picked {
  readonly from: At;
  readonly to: At;
}

/** What the grid shows and what it asks for. */
export interface GridProps {
  readonly bases: readonly LiveBase[];
  readonly layout: Layout;
  readonly columns: readonly Column[];
  readonly faults: ReadonlyMap<number, readonly Fault[]>;
  readonly order: BaseOrder;
  readonly isReadOnly: boolean;
  readonly isCards: boolean;
  readonly picked: Picked;
  readonly field: Field | null;
  readonly pending: ReadonlyMap<string, string>;
  readonly place: RefObject<HTMLDivElement | null>;
  pick(picked: Picked): void;
  sort(column: string): void;
  /** `over`: what is typed instead of what stands there; null: as it stands. */
  begin(over: string | null): void;
  type(text: string): void;
  take(down: number, right: number): void;
  drop(): void;
  clear(): void;
  copy(): string;
  paste(text: string): void;
  show(): void;
}

/** Draws it. */
export function Grid(props: GridProps): JSX.Element {
  const { layout, columns, isCards, place, picked } = props;
  const [view, setView] = useState({ top: 0, height: 600 });
  const isIn = useRef(false);
  useWatch(place, setView);
  useKeptFocus(props, isIn);
  const [first, end] = inSight(layout, view.top, view.top + view.height);
  const template = isCards ? "1fr 1fr" : columns.map(({ wide: each }) => `${each}rem`).join(" ");
  const wide = columns.reduce((sum, column) => sum + column.wide, 0);
  const height = `${layout.tops.at(-1) ?? 0}px`;
  return (
    <div
      class={isCards ? "grid cards" : "grid"}
      ref={place}
      onScroll={({ currentTarget: { scrollTop, clientHeight } }) => setView({ top: scrollTop, height: clientHeight })}
    >
      <table
        // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: cells that are edited in place, by the pattern of an ARIA grid
        role="grid"
        aria-label="Schedule of bases"
        aria-rowcount={(layout.firsts.at(-1) ?? 0) + 1}
        aria-colcount={columns.length}
        aria-multiselectable="true"
        aria-readonly={props.isReadOnly || undefined}
        style={{ width: isCards ? "100%" : `${wide}rem` }}
        {...handlersOf(props, isIn)}
      >
        <Head {...props} template={template} />
        <tbody style={{ height }}>
          {placesOf(first, end, picked.to.spot.at, layout.shown.length).flatMap((at) => rowsOf(at, props, template))}
        </tbody>
      </table>
    </div>
  );
}

function handlersOf(props: GridProps, isIn: { current: boolean }): JSX.IntrinsicElements["table"] {
  return {
    onKeyDown: (event) => gridKey(event, props),
    onFocusIn: () => {
      isIn.current = true;
    },
    onFocusOut: ({ relatedTarget }) => {
      if (relatedTarget instanceof Node && props.place.current?.contains(relatedTarget) !== true) isIn.current = false;
    },
    onPointerDown: (event) => pointed(event, props),
    onPointerMove: (event) => dragged(event, props),
    onDblClick: () => props.begin(null),
    onCopy: (event) => void handOver(event, props),
    onCut: (event) => {
      if (handOver(event, props)) props.clear();
    },
    onPaste: (event) => {
      if (event.target instanceof HTMLInputElement) return;
      event.preventDefault();
      event.stopPropagation();
      props.paste(event.clipboardData?.getData("text/plain") ?? "");
    },
  };
}

/** Those in sight, and the one where the keyboard is. */
function placesOf(first: number, end: number, active: number, count: number): readonly number[] {
  const places = Array.from({ length: Math.max(0, Math.min(end, count) - first) }, (_, i) => first + i);
  return active < count && !places.includes(active) ? [...places, active] : places;
}

/** One heading is a stop of the tab key: that of the column where the keyboard is. */
function Head({ columns, order, sort, template, picked }: GridProps & { readonly template: string }): JSX.Element {
  return (
    <thead>
      <tr aria-rowindex={1} style={{ gridTemplateColumns: template }}>
        {columns.map(({ id, name, figure }, at) => {
          const isBy = order?.column === id;
          return (
            <th
              key={id}
              scope="col"
              aria-colindex={at + 1}
              aria-sort={isBy ? (order.isDown ? "descending" : "ascending") : "none"}
              class={`${figure ? "figure " : ""}${id === "mark" ? "mark" : ""}`}
            >
              <button
                type="button"
                class="quiet"
                tabIndex={at === picked.to.column ? 0 : -1}
                title={`Sort by ${name}`}
                onClick={() => sort(id)}
              >
                {name}
                {isBy && <span aria-hidden="true">{order.isDown ? " \u2193" : " \u2191"}</span>}
              </button>
            </th>
          );
        })}
      </tr>
    </thead>
  );
}

function rowsOf(at: number, props: GridProps, template: string): readonly JSX.Element[] {
  const { layout, bases, faults } = props;
  const index = layout.shown[at] ?? -1;
  const base = bases[index];
  if (base === undefined) return [];
  const { heights } = layout;
  let top = layout.tops[at] ?? 0;
  return linesOf(base, index, faults.get(index)).map((line, i) => {
    const height = heights[line.kind];
    const row = (
      <Row
        key={line.id}
        {...lookOf(line, at, props)}
        {...{ template, top, height }}
        row={(layout.firsts[at] ?? 0) + i + 2}
      />
    );
    top += height;
    return row;
  });
}

function lookOf(line: Line, at: number, { picked, columns, field, pending, type, take, drop }: GridProps) {
  const on = { type, take, drop };
  const none = { line, columns, pending, on, picked: null, active: null, field: null };
  if (line.kind === "fault") return none;
  const spot: Spot = { at, sub: line.kind === "group" ? line.group + 1 : 0 };
  const { from, to } = picked;
  const isActive = compareSpots(spot, to.spot) === 0;
  const ends = [from.spot, to.spot].toSorted(compareSpots);
  const isIn = compareSpots(spot, ends[0] ?? spot) >= 0 && compareSpots(spot, ends[1] ?? spot) <= 0;
  const range: readonly [number, number] = [Math.min(from.column, to.column), Math.max(from.column, to.column)];
  return {
    ...none,
    picked: isIn ? range : null,
    active: isActive ? to.column : null,
    field: field?.line.id === line.id ? field : null,
  };
}

const isInHead = (target: EventTarget | null): boolean => target instanceof Element && target.closest("thead") !== null;

function gridKey(event: KeyboardEvent, props: GridProps): void {
  if (isInHead(event.target)) return;
  const { picked, layout, columns, pick } = props;
  const isFar = event.ctrlKey || event.metaKey;
  const to = event.altKey ? null : ledTo(event.key, isFar, picked.to, layout, columns.length);
  if (to !== null) pick({ from: event.shiftKey ? picked.from : to, to });
  else if (!otherKey(event, isFar, props)) return;
  event.preventDefault();
}

/** False where the key is left to the browser. */
function otherKey({ key, shiftKey, altKey }: KeyboardEvent, isFar: boolean, props: GridProps): boolean {
  const { picked, columns, layout, pick } = props;
  if (altKey) return false;
  if (isFar && key === "Enter") props.show();
  else if (isFar && key.toLowerCase() === "a") {
    const spot = held(layout, { at: layout.shown.length, sub: 0 });
    pick({ from: { spot: { at: 0, sub: 0 }, column: 0 }, to: { spot, column: columns.length - 1 } });
  } else if (isFar) return false;
  else if (key === " " && shiftKey) {
    pick({ from: { spot: picked.from.spot, column: 0 }, to: { spot: picked.to.spot, column: columns.length - 1 } });
  } else if (key === "Enter" || key === "F2") props.begin(null);
  else if (key === "Delete" || key === "Backspace") props.clear();
  else if (key === "Escape") pick({ from: picked.to, to: picked.to });
  else if (key.length === 1) props.begin(key);
  else return false;
  return true;
}

/** The cell under the pointer; null beside them. */
function cellUnder({ target }: Event, { layout }: GridProps): At | null {
  const cell = target instanceof Element ? target.closest("[data-cell]") : null;
  const [index, sub, column] = cell?.getAttribute("data-cell")?.split(",").map(Number) ?? [];
  if (index === undefined || sub === undefined || column === undefined) return null;
  return { spot: { at: layout.shown.indexOf(index), sub }, column };
}

function pointed(event: PointerEvent, props: GridProps): void {
  if (event.target instanceof HTMLInputElement || event.button !== 0) return;
  const at = cellUnder(event, props);
  if (at !== null) props.pick({ from: event.shiftKey ? props.picked.from : at, to: at });
}

function dragged(event: PointerEvent, props: GridProps): void {
  if (event.buttons !== 1 || event.pointerType !== "mouse" || props.field !== null) return;
  const at = cellUnder(event, props);
  const { to, from } = props.picked;
  if (at !== null && (compareSpots(at.spot, to.spot) !== 0 || at.column !== to.column)) props.pick({ from, to: at });
}

function handOver(event: ClipboardEvent, props: GridProps): boolean {
  if (event.target instanceof HTMLInputElement) return false;
  event.clipboardData?.setData("text/plain", props.copy());
  event.preventDefault();
  return true;
}

function useWatch(
  place: RefObject<HTMLDivElement | null>,
  tell: (view: { top: number; height: number }) => void,
): void {
  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    const watch = new ResizeObserver(() => tell({ top: element.scrollTop, height: element.clientHeight }));
    watch.observe(element);
    return () => watch.disconnect();
  }, [place]);
}

/** The keyboard stays at its cell while lines are drawn anew, and the cell in sight when it moves. */
function useKeptFocus({ place, picked, layout, field }: GridProps, isIn: { readonly current: boolean }): void {
  const { spot, column } = picked.to;
  useLayoutEffect(() => {
    const element = place.current;
    if (element === null || !isIn.current) return;
    keepInSight(element, edgesOf(layout, spot));
  }, [spot.at, spot.sub, column]);
  useLayoutEffect(() => {
    if (!isIn.current || field !== null || isInHead(document.activeElement)) return;
    const cell = place.current?.querySelector('.cell[tabindex="0"]');
    if (cell instanceof HTMLElement && document.activeElement !== cell) {
      cell.focus({ preventScroll: true });
      cell.scrollIntoView({ block: "nearest", inline: "nearest" });
    }
  });
}

function keepInSight(element: HTMLElement, [top, bottom]: readonly [number, number]): void {
  const head = element.querySelector("thead")?.clientHeight ?? 0;
  const seen = element.clientHeight - head;
  if (top < element.scrollTop) element.scrollTop = top;
  else if (bottom > element.scrollTop + seen) element.scrollTop = bottom - seen;
}
