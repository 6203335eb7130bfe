/** Rows of cells as CSV by RFC 4180: comma, CRLF, quotes doubled. UTF-8 without a byte-order mark. */

import { readable } from "../diagnostics/printable.js";

/** Text as written by a person or by the program, a number, or an empty cell. */
export type CsvCell = string | number | null;

/** Starts that a spreadsheet would take for a formula, full-width ones too; a sign that stands alone is none. */
const FORMULA_START = /^[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]./s;
const NEEDS_QUOTES = /[",\r\n]|^\s|\s$/;

/** What needs none of all that: letters or digits at both ends, ASCII without quotes and commas between them. */
const PLAIN = /^[A-Za-z0-9](?:[ !#-+\--~]*[A-Za-z0-9])?$/;

/** One cell: numbers plain, texts quoted where needed, and never one that a spreadsheet would run as a formula. */
function cellText(cell: CsvCell): string {
  if (cell === null) return "";
  if (typeof cell === "number") return decimalText(cell);
  if (cell === "" || PLAIN.test(cell)) return cell;
  const seen = readable(cell);
  const text = FORMULA_START.test(seen) ? `'${seen}` : seen;
  return NEEDS_QUOTES.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A finite number without an exponent and without a negative zero, at most 8 decimals. */
function decimalText(value: number): string {
  const text = String(value);
  if (!text.includes("e")) return text === "-0" ? "0" : text;
  const fixed = value.toFixed(8).replace(/\.?0+$/, "");
  return fixed === "-0" ? "0" : fixed;
}

/** Rows as CSV text; every row ends with CRLF. */
export function writeCsvRows(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(",")}\r\n`).join("");
}
