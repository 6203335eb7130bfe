/** One line of the schedule. It is drawn again only when what it shows is another. */
import { Component, type JSX } from "preact";
import type { Cell, Column } from "./columns.js";
import { type CellLine, cellIn, type Fault, faultAt, faultWords, type Line, whyHeld } from "./lines.js";

/** A field that is open in a cell; it stays with its line, wherever that goes meanwhile. */
export interface Field {
  readonly line: CellLine;
  readonly column: number;
  readonly text: string;
  /** Why what was typed is not taken; "" where nothing is wrong. */
  readonly why: string;
}

/** What a field does. */
export interface FieldActions {
  type(text: string): void;
  /** Takes what is typed, and goes on by so many lines and columns. */
  take(down: number, right: number): void;
  drop(): void;
}

/** What a line shows, and where it stands. */
export interface RowLook {
  readonly line: Line;
  readonly row: number;
  readonly top: number;
  readonly height: number;
  readonly columns: readonly Column[];
  readonly template: string;
  /** Columns that are picked, first and last; null: none. */
  readonly picked: readonly [number, number] | null;
  /** The column where the keyboard is; null: on another line. */
  readonly active: number | null;
  readonly field: Field | null;
  /** Texts that were typed and are not answered yet. */
  readonly pending: ReadonlyMap<string, string>;
  readonly on: FieldActions;
}

/** Draws it. */
export class Row extends Component<RowLook> {
  override shouldComponentUpdate(next: RowLook): boolean {
    return next.field !== null || this.props.field !== null || lookOf(next) !== lookOf(this.props);
  }

  override render({ line, row, top, height, template, columns }: RowLook): JSX.Element {
    const place = { top: `${top}px`, height: `${height}px`, gridTemplateColumns: template };
    if (line.kind === "fault") {
      return (
        <tr aria-rowindex={row} class="line told" style={{ top: `${top}px`, height: `${height}px` }}>
          <td colSpan={columns.length} class="fault" title={faultWords(line.fault)}>
            {faultWords(line.fault)}
          </td>
        </tr>
      );
    }
    return (
      <tr aria-rowindex={row} class={`line ${line.kind}`} style={place}>
        {columns.map((column, at) => (
          <CellView key={column.id} at={at} column={column} line={line} look={this.props} />
        ))}
      </tr>
    );
  }
}

const looks = new WeakMap<RowLook, string>();

/** Everything that is seen of a line, as one text. */
function lookOf(look: RowLook): string {
  const known = looks.get(look);
  if (known !== undefined) return known;
  const { line, row, top, height, columns, template, picked, active, pending } = look;
  const cells =
    line.kind === "fault"
      ? faultWords(line.fault)
      : columns.map((column) => {
          const { shown, by, isTyped } = cellIn(line, column);
          return [shown, by, isTyped, pending.get(`${line.id} ${column.id}`), faultAt(line, column)?.message];
        });
  const text = JSON.stringify([line.id, row, top, height, template, picked, active, cells]);
  looks.set(look, text);
  return text;
}

interface CellProps {
  readonly at: number;
  readonly column: Column;
  readonly line: CellLine;
  readonly look: RowLook;
}

function CellView({ at, column, line, look }: CellProps): JSX.Element {
  const cell = cellIn(line, column);
  const fault = faultAt(line, column);
  const { active, picked, field } = look;
  const isOpen = field !== null && field.column === at;
  const isPicked = picked !== null && at >= picked[0] && at <= picked[1];
  const isHead = column.id === "mark";
  const shownAs = {
    "aria-colindex": at + 1,
    "aria-selected": isPicked,
    "aria-readonly": !cell.isTyped || undefined,
    "aria-invalid": fault?.isError === true ? ("true" as const) : undefined,
    "aria-label": spoken(line, column, cell, fault),
    // a field in the cell is the stop of the keyboard itself
    tabIndex: active === at && !isOpen ? 0 : -1,
    "data-cell": `${line.index},${line.kind === "group" ? line.group + 1 : 0},${at}`,
    class: classesOf(column, cell, isPicked, active === at),
    title: cell.by === "" ? undefined : `given by ${cell.by}`,
  };
  const inside = (
    <>
      <span class="name" aria-hidden="true">
        {column.name}
      </span>{" "}
      {isOpen ? (
        <FieldView field={field} name={`${markOf(line)}, ${column.name}`} on={look.on} />
      ) : (
        <span class={column.id === "state" && line.kind === "base" ? `text state ${line.base.state}` : "text"}>
          {look.pending.get(`${line.id} ${column.id}`) ?? shownText(line, column, cell)}
        </span>
      )}
    </>
  );
  return isHead ? (
    <th scope="row" {...shownAs}>
      {inside}
    </th>
  ) : (
    <td {...shownAs}>{inside}</td>
  );
}

function shownText(line: CellLine, column: Column, { shown }: Cell): string {
  return line.kind === "group" && column.id === "mark" ? `group ${line.group + 1}` : shown;
}

function markOf({ base, ...line }: CellLine): string {
  const mark = base.mark === "" ? "no mark" : base.mark;
  return line.kind === "group" ? `${mark}, group ${line.group + 1}` : mark;
}

/** What a screen reader says at a cell: value, who gives it, what is wrong. */
function spoken(line: CellLine, column: Column, cell: Cell, fault: Fault | undefined): string {
  const shown = shownText(line, column, cell);
  const why = whyHeld(line, column);
  const value = `${column.name}, ${shown === "" ? "blank" : shown}${why === "" ? "" : `, ${why}`}`;
  const by = cell.by === "" ? "" : `, given by ${cell.by}`;
  return `${markOf(line)}: ${value}${by}${fault === undefined ? "" : `; ${fault.message}`}`;
}

function classesOf(column: Column, cell: Cell, isPicked: boolean, isActive: boolean): string {
  const names = ["cell"];
  if (column.figure) names.push("figure");
  if (column.id === "mark") names.push("mark");
  if (cell.by !== "") names.push("given");
  if (!cell.isTyped) names.push("worked-out");
  if (isPicked) names.push("picked");
  if (isActive) names.push("here");
  return names.join(" ");
}

function FieldView({
  field,
  name,
  on,
}: {
  readonly field: Field;
  readonly name: string;
  readonly on: FieldActions;
}): JSX.Element {
  const isWrong = field.why !== "";
  return (
    <>
      <input
        class="cell-field"
        aria-label={name}
        aria-invalid={isWrong ? "true" : undefined}
        aria-describedby={isWrong ? "cell-field-why" : undefined}
        value={field.text}
        autocomplete="off"
        spellcheck={false}
        ref={(input) => {
          if (input !== null && document.activeElement !== input) input.focus();
        }}
        onInput={({ currentTarget }) => on.type(currentTarget.value)}
        onBlur={() => on.take(0, 0)}
        onKeyDown={(event) => fieldKey(event, on)}
      />
      {isWrong && (
        <span class="fault why" id="cell-field-why" role="alert">
          {field.why}
        </span>
      )}
    </>
  );
}

function fieldKey(event: KeyboardEvent, on: FieldActions): void {
  event.stopPropagation();
  if (event.key === "Enter") on.take(event.shiftKey ? -1 : 1, 0);
  else if (event.key === "Tab") on.take(0, event.shiftKey ? -1 : 1);
  else if (event.key === "Escape") on.drop();
  else return;
  event.preventDefault();
}
