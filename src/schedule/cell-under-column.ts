/** A cell of a table under one of its columns: its text or the job's answer, and what that gives there. */
import { cellInSheet, placeOfCell } from "../readers/cell-place.js";
import type { Cell } from "../readers/inputs.js";
import type { Unit } from "../units/index.js";
import type { CellReading, FoundTable } from "./model.js";
import type { ReadColumn, SheetCell } from "./sheet-cell.js";
import type { UsedAnswers } from "./used-answers.js";

/** What rows are made with. */
export interface RowSource {
  readonly table: FoundTable;
  readonly columns: readonly ReadColumn[];
  readonly file: string;
  readonly answers: UsedAnswers;
  readonly unit: Unit;
}

/** A cell under a column; `answer` is what the job says for it. */
export function cellUnder(column: ReadColumn, cell: Cell, answer: string | undefined, source: RowSource): SheetCell {
  const place = placeOfCell(source.file, source.table.sheet, cell, labelOf(cell, column, source.table));
  const read = { column, cell, place, text: answer ?? cell.text, isAnswered: answer !== undefined };
  return { ...read, reading: readingOf(read) };
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
function labelOf(cell: Cell, { name }: ReadColumn, table: FoundTable): string {
  return `${rowLabel(cell, table)} ${name}`;
}

/** `row 5`, or `column C` of a sheet whose bases lie across. */
export function rowLabel(cell: Cell, { isTurned }: FoundTable): string {
  return isTurned ? `column ${cellInSheet(cell).replace(/\d+$/, "")}` : `row ${cell.row ?? cell.line}`;
}
