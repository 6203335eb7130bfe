/** A table that was found -> its rows with the cells that hold something, the job's answers for cells in their place. */
import { cellInSheet, placeOfCell } from "../readers/cell-place.js";
import type { Cell } from "../readers/inputs.js";
import type { CellReading, FoundTable } from "./model.js";
import type { ReadColumn, SheetCell, TableRow } from "./sheet-cell.js";
import type { UsedAnswers } from "./used-answers.js";

/** Rows and what of them is left out as a whole. */
export interface TableRows {
  readonly rows: readonly TableRow[];
  /** Cells of rows that are struck out. */
  readonly struck: readonly SheetCell[];
}

/** The rows that hold something, in their order. */
export function tableRows(
  table: FoundTable,
  columns: readonly ReadColumn[],
  file: string,
  answers: UsedAnswers,
): TableRows {
  const rows: TableRow[] = [];
  const struck: SheetCell[] = [];
  table.rows.forEach((cells) => {
    const filled = cellsOf(cells, columns, { table, file, answers });
    const [first] = filled;
    if (first === undefined) return;
    if (filled.every(({ cell, isAnswered }) => cell.isStruck === true && !isAnswered)) {
      for (const cell of filled) struck.push(cell);
    } else rows.push({ place: rowPlace(first, table), cells: filled });
  });
  return { rows, struck };
}

interface Beside {
  readonly table: FoundTable;
  readonly file: string;
  readonly answers: UsedAnswers;
}

function cellsOf(cells: readonly Cell[], columns: readonly ReadColumn[], beside: Beside): readonly SheetCell[] {
  const filled: SheetCell[] = [];
  for (const column of columns) {
    const cell = cells[column.index];
    if (cell === undefined) continue;
    const answer = beside.answers.ofCell(cellInSheet(cell));
    const text = answer ?? cell.text;
    if (text.trim() === "" && cell.fault === undefined) continue;
    const label = labelOf(cell, column, beside.table);
    const place = placeOfCell(beside.file, beside.table.sheet, cell, label);
    const isAnswered = answer !== undefined;
    filled.push({
      column,
      cell,
      place,
      text,
      isAnswered,
      reading: readingOf({ column, cell, place, text, isAnswered }),
    });
  }
  return filled;
}

/** A cell that cannot be read as typed, or is struck out, is read where the job says what is meant. */
function readingOf({
  column: { role },
  cell,
  place,
  text,
  isAnswered,
}: Omit<SheetCell, "reading">): CellReading | null {
  if (role.kind !== "value" && role.kind !== "note") return null;
  if (isAnswered) return chosenReading(role.read(cell.text, place), text) ?? role.read(text, place);
  if (cell.fault !== undefined) return { kind: "fault", message: cell.fault };
  return cell.isStruck === true ? { kind: "fault", message: struckWords(text) } : role.read(text, place);
}

function struckWords(text: string): string {
  return `"${text}" is struck out, and its row is not; allowed is an answer that says what holds, or "-" where nothing does`;
}

/** An answer in the words of one of the readings chooses it. */
function chosenReading(reading: CellReading, answer: string): CellReading | null {
  if (reading.kind !== "choice") return null;
  const chosen = reading.readings.find(({ how }) => how.toLowerCase() === answer.trim().toLowerCase());
  return chosen === undefined ? null : { kind: "value", ...chosen };
}

/** Of a sheet whose bases lie across, the column that holds the base is its row. */
function labelOf(cell: Cell, { name }: ReadColumn, { isTurned }: FoundTable): string {
  return `${isTurned ? "column" : "row"} ${isTurned ? cell.column : (cell.row ?? cell.line)} ${name}`;
}

function rowPlace({ cell, place }: SheetCell, { isTurned }: FoundTable): TableRow["place"] {
  const label = isTurned ? `column ${cell.column}` : `row ${cell.row ?? cell.line}`;
  return { ...place, label };
}
