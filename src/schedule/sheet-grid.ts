/** A sheet as a grid of texts that knows its merges, and that can be looked at with its rows and columns exchanged. */

import { columnLetters } from "../readers/cell-place.js";
import type { Cell, Merge, Table } from "../readers/inputs.js";

/** Cells of a merge, counted from 0, both ends included. */
export interface Span {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** Rows and columns count from 0; turned, a row is a column of the sheet. */
export interface SheetGrid {
  readonly isTurned: boolean;
  readonly height: number;
  /** Longest row. */
  readonly width: number;
  /** Cells of a row up to its last. */
  lengthOf(row: number): number;
  /** A cell's own text with its breaks; "" outside, and in a merge but for its first cell. */
  text(row: number, column: number): string;
  cell(row: number, column: number): Cell;
  span(row: number, column: number): Span | null;
  /** The last row that holds a text in a column; -1 where none does. */
  lastFilled(column: number): number;
  /** As the spreadsheet names it: `B5`. */
  place(row: number, column: number): string;
  /** Notes that a cell's text has found its place in a table. */
  take(row: number, column: number): void;
  turned(): SheetGrid;
}

/** What the two ways of looking at a sheet share, in the sheet's own rows and columns. */
class Sheet {
  readonly rows: readonly (readonly Cell[])[];
  readonly width: number;
  private readonly spans: ReadonlyMap<number, Span>;
  private readonly taken: (Uint8Array | undefined)[] = [];
  private ends: { readonly rows: readonly number[]; readonly columns: readonly number[] } | null = null;

  constructor(table: Table) {
    this.rows = table.rows;
    this.width = table.rows.reduce((most, row) => Math.max(most, row.length), 0);
    this.spans = coverSpans(table.merges ?? [], this.rows.length, this.width);
  }

  textAt(row: number, column: number): string {
    const cell = this.rows[row]?.[column];
    if (cell === undefined || (cell.text === "" && cell.fault === undefined)) return "";
    const span = this.spanAt(row, column);
    if (span !== null && (span.top !== row || span.left !== column)) return "";
    return cell.text === "" ? "?" : cell.text;
  }

  cellAt(row: number, column: number): Cell {
    const cells = this.rows[row] ?? [];
    return cells[column] ?? { text: "", line: cells[0]?.line ?? row + 1, column: column + 1 };
  }

  spanAt(row: number, column: number): Span | null {
    return this.spans.size === 0 ? null : (this.spans.get(row * this.width + column) ?? null);
  }

  /** The last filled column of each row, and the last filled row of each column. */
  lastTexts(): { readonly rows: readonly number[]; readonly columns: readonly number[] } {
    if (this.ends !== null) return this.ends;
    const rows = this.rows.map(() => -1);
    const columns = Array.from({ length: this.width }, () => -1);
    for (const [row, cells] of this.rows.entries())
      for (let column = 0; column < cells.length; column++)
        if (this.textAt(row, column) !== "") [rows[row], columns[column]] = [column, row];
    this.ends = { rows, columns };
    return this.ends;
  }

  takeAt(row: number, column: number): void {
    const marks = this.taken[row] ?? new Uint8Array(this.rows[row]?.length ?? 0);
    this.taken[row] = marks;
    marks[column] = 1;
  }

  isTaken(row: number, column: number): boolean {
    return this.taken[row]?.[column] === 1;
  }
}

/** Merges never overlap in a sound sheet, so that together they cover no more cells than there are. */
function coverSpans(merges: readonly Merge[], height: number, width: number): ReadonlyMap<number, Span> {
  const spans = new Map<number, Span>();
  let room = height * width;
  for (const merge of merges) {
    const [top, left] = [merge.top - 1, merge.left - 1];
    const span = { top, left, bottom: Math.min(merge.bottom, height) - 1, right: Math.min(merge.right, width) - 1 };
    const area = (span.bottom - top + 1) * (span.right - left + 1);
    if (top < 0 || left < 0 || span.bottom < top || span.right < left || area < 2 || area > room) continue;
    room -= area;
    for (let row = top; row <= span.bottom; row++)
      for (let column = left; column <= span.right; column++) spans.set(row * width + column, span);
  }
  return spans;
}

class UprightGrid implements SheetGrid {
  readonly isTurned = false;
  readonly height: number;
  readonly width: number;

  constructor(private readonly sheet: Sheet) {
    this.height = sheet.rows.length;
    this.width = sheet.width;
  }

  lengthOf(row: number): number {
    return this.sheet.rows[row]?.length ?? 0;
  }
  text(row: number, column: number): string {
    return this.sheet.textAt(row, column);
  }
  cell(row: number, column: number): Cell {
    return this.sheet.cellAt(row, column);
  }
  span(row: number, column: number): Span | null {
    return this.sheet.spanAt(row, column);
  }
  lastFilled(column: number): number {
    return this.sheet.lastTexts().columns[column] ?? -1;
  }
  place(row: number, column: number): string {
    return `${columnLetters(column + 1)}${row + 1}`;
  }
  take(row: number, column: number): void {
    this.sheet.takeAt(row, column);
  }
  turned(): SheetGrid {
    return new TurnedGrid(this.sheet);
  }
}

class TurnedGrid implements SheetGrid {
  readonly isTurned = true;
  readonly height: number;
  readonly width: number;

  constructor(private readonly sheet: Sheet) {
    this.height = sheet.width;
    this.width = sheet.rows.length;
  }

  lengthOf(): number {
    return this.width;
  }
  text(row: number, column: number): string {
    return this.sheet.textAt(column, row);
  }
  cell(row: number, column: number): Cell {
    return this.sheet.cellAt(column, row);
  }
  span(row: number, column: number): Span | null {
    const span = this.sheet.spanAt(column, row);
    return span === null ? null : { top: span.left, left: span.top, bottom: span.right, right: span.bottom };
  }
  lastFilled(column: number): number {
    return this.sheet.lastTexts().rows[column] ?? -1;
  }
  place(row: number, column: number): string {
    return `${columnLetters(row + 1)}${column + 1}`;
  }
  take(row: number, column: number): void {
    this.sheet.takeAt(column, row);
  }
  turned(): SheetGrid {
    return new UprightGrid(this.sheet);
  }
}

/** A text that no table took, and where it stands on the sheet. */
export interface StrayText {
  readonly row: number;
  readonly column: number;
  readonly cell: Cell;
}

/** A sheet's grid, and what no table took of it when all were read. */
export function gridOf(table: Table): { readonly grid: SheetGrid; readonly strays: () => readonly StrayText[] } {
  const sheet = new Sheet(table);
  const strays = () => {
    const found: StrayText[] = [];
    for (const [row, cells] of sheet.rows.entries())
      for (const [column, cell] of cells.entries())
        if (!sheet.isTaken(row, column) && sheet.textAt(row, column) !== "") found.push({ row, column, cell });
    return found;
  };
  return { grid: new UprightGrid(sheet), strays };
}
