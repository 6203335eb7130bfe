/** A cell of a table under one of its columns: its text or the job's answer, and what that gives there. */
import { cellInSheet, placeOfCell } from "../readers/cell-place.js";
import type { Cell } from "../readers/inputs.js";
import type { SourcePlace } from "../readers/source.js";
import type { Unit } from "../units/index.js";
import type { CellReading, FoundTable } from "./model.js";
import { linesReading } from "./read-columns.js";
import type { ColumnRole, ReadColumn, SheetCell } from "./sheet-cell.js";
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
  return { ...read, reading: noteOrCount(readingOf(read), read, source.table) };
}

/** `B3 (2)` and `B3*` on a sheet that has a note 2 or *: two of the base and a mark with its sign, or B3 with a note. */
function noteOrCount(
  reading: CellReading | null,
  { column: { role }, text, place, isAnswered }: Omit<SheetCell, "reading">,
  { notes }: FoundTable,
): CellReading | null {
  if (reading?.kind !== "value" || role.kind !== "value" || role.key !== "mark" || isAnswered) return reading;
  const [, mark, count, sign = count] = /^\s*(\S+?)\s*(?:\((\d{1,2})\)|(\*+|\u2020))\s*$/u.exec(text) ?? [];
  if (mark === undefined || sign === undefined || !notes.has(sign)) return reading;
  const alone = role.read(`the mark ${mark}`, place);
  if (alone.kind !== "value") return reading;
  const other = count === undefined ? `the mark ${text.trim()}` : `${mark} (${count} EA)`;
  const readings = [
    { ...alone, how: `the mark ${mark}` },
    { ...reading, how: other },
  ];
  const message = `"${text}" may be the mark ${mark} with note ${sign}, or ${count === undefined ? other : `${count} of ${mark}`}: write the one that is meant`;
  return { kind: "choice", readings, message };
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
  if (isAnswered) {
    const written = role.read(cell.text, place);
    return chosenReading(written, text) ?? withLines(written, text, place, role) ?? role.read(text, place);
  }
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

/** `2 x 3` for the `(6) 1"` of a column of rods says how the six stand, and leaves what else the cell says. */
function withLines(written: CellReading, answer: string, place: SourcePlace, role: ColumnRole): CellReading | null {
  const isOfRods = role.kind === "value" && (role.key === "rods" || role.key === "rods.diameter");
  const lines = isOfRods ? linesReading(answer, place) : null;
  if (lines?.kind !== "value" || written.kind !== "value") return lines;
  const rest = written.parts.filter(({ key }) => key !== "rods.count");
  return { ...lines, parts: [...lines.parts, ...rest] };
}

/** Of a sheet whose bases lie across, the column that holds the base is its row. */
function labelOf(cell: Cell, { name }: ReadColumn, table: FoundTable): string {
  return `${rowLabel(cell, table)} ${name}`;
}

/** `row 5`, or `column C` of a sheet whose bases lie across. */
export function rowLabel(cell: Cell, { isTurned }: FoundTable): string {
  return isTurned ? `column ${cellInSheet(cell).replace(/\d+$/, "")}` : `row ${cell.row ?? cell.line}`;
}
