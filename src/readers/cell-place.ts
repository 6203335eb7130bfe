/** Names of cells as spreadsheets write them: columns by letters, rows from 1, the sheet before an exclamation mark. */
import type { Cell } from "./inputs.js";
import type { SourcePlace } from "./source.js";

/** A is 1, Z is 26, AA is 27. */
export function columnNumber(letters: string): number {
  return [...letters.toUpperCase()].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0);
}

/** The letters of a column, counted from 1. */
export function columnLetters(column: number): string {
  const before = Math.floor((column - 1) / 26);
  return `${before > 0 ? columnLetters(before) : ""}${String.fromCharCode(65 + ((column - 1) % 26))}`;
}

/** `E7`, without its sheet; the row is that of the sheet, which in a text may be another than the line. */
export function cellInSheet({ line, row = line, column }: Pick<Cell, "line" | "row" | "column">): string {
  return `${columnLetters(column)}${row}`;
}

/** `Bases!E7`, `'Anchor rods'!E7`, or `E7` where the sheet has no name, as in a text. */
export function nameCell(sheet: string, cell: Pick<Cell, "line" | "row" | "column">): string {
  return `${sheetPrefix(sheet)}${cellInSheet(cell)}`;
}

/** Letters of any script, digits, points and low lines stand bare, unless the name reads as a number or a cell itself. */
const BARE_SHEET = /^[\p{L}_][\p{L}\p{N}_.]*$/u;
const LIKE_CELL = /^([a-z]{1,3}\d+|r\d*c\d*|r\d+|c\d+|true|false)$/i;

function sheetPrefix(sheet: string): string {
  if (sheet === "") return "";
  const isBare = BARE_SHEET.test(sheet) && !LIKE_CELL.test(sheet);
  return isBare ? `${sheet}!` : `'${sheet.replaceAll("'", "''")}'!`;
}

/** Where a cell stands in a file: line and column for programs, the spreadsheet's own name for people. */
export function placeOfCell(file: string, sheet: string, cell: Cell, label?: string): SourcePlace {
  const { line, column } = cell;
  return { file, line, column, ...(label === undefined ? {} : { label }), cell: nameCell(sheet, cell) };
}
