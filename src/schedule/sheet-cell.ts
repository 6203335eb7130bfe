/** A cell of a table under the column that it stands in, and what was taken from it. */
import type { Cell } from "../readers/inputs.js";
import type { SourceNode, SourcePlace } from "../readers/source.js";
import type { CellReading, FoundColumn, PossibleReading, ReadOrigin } from "./model.js";

/** What becomes of the cells of a column. */
export type ColumnRole =
  | { readonly kind: "value"; readonly key: string; readonly read: CellReader }
  | { readonly kind: "note"; readonly read: CellReader }
  | { readonly kind: "left out"; readonly why: string }
  | { readonly kind: "asked" };

/** Reads a text as a cell of one column, its heading's unit kept in mind. */
export type CellReader = (text: string, place: SourcePlace) => CellReading;

/** A column of a table with what its cells are taken for. */
export interface ReadColumn {
  readonly index: number;
  readonly found: FoundColumn;
  /** As the sheet writes it, with its group: `ANCHOR RODS / SIZE`. */
  readonly heading: string;
  /** As findings name it: our own name of the heading where it has one. */
  readonly name: string;
  /** What settled its heading, in a few words; "" where its words say it all. */
  readonly how: string;
  readonly role: ColumnRole;
}

/** A cell that holds something. */
export interface SheetCell {
  readonly column: ReadColumn;
  readonly cell: Cell;
  readonly place: SourcePlace;
  /** What is read: the cell's own text, or the job's answer for it. */
  readonly text: string;
  readonly isAnswered: boolean;
  /** What the text gives under its column; null where the column's cells are not read for values. */
  readonly reading: CellReading | null;
}

/** A cell with several readings, none of which it proves by itself. */
export interface OpenChoice {
  readonly from: SheetCell;
  readonly readings: readonly PossibleReading[];
  readonly message: string;
}

/** A row of a table with its cells that hold something. */
export interface TableRow {
  readonly place: SourcePlace;
  readonly cells: readonly SheetCell[];
}

/** A value that was taken for a key of the job file, and the cell it was taken from. */
export interface Taken {
  readonly key: string;
  readonly node: SourceNode;
  readonly from: SheetCell;
  /** asked: it stands in for what cannot be read, so that nothing else is asked for in its place. */
  readonly origin: ReadOrigin;
  /** How it was understood; "" where the text says it all. */
  readonly remark: string;
  /** Who gave the value, where it is not the base's own row: `note 2`. */
  readonly givenBy?: string;
}

/** What became of a cell of which nothing was taken. */
export interface NotTaken {
  readonly from: SheetCell;
  readonly origin: ReadOrigin;
  readonly remark: string;
}

/** True for what a row without a mark may give again: rods of another size, their pattern and holes. */
export function isOfGroup(key: string): boolean {
  return /^(rods|pattern)(\.|$)/.test(key) || key === "hole" || key === "baseHole" || key === "washer";
}
