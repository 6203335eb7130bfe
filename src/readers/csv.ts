/** CSV text -> a table of cells. */
import Papa from "papaparse";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { greatestOf } from "../units/extremes.js";
import { type Cell, MOST_CELLS, type Table } from "./inputs.js";
import { decodeText } from "./text.js";

/** Separators that spreadsheets write; the one that splits the heading line most often is the file's. */
const SEPARATORS = [",", ";", "\t"] as const;

/** Reads a CSV file. `Cell.line` is the line of the file where the row starts, `Cell.column` counts cells from 1. */
export function readCsv(input: string | Uint8Array, file: string): Outcome<Table> {
  const decoded = decodeText(input, file, "allowed is CSV: open it and save the sheet as CSV");
  if (!decoded.ok) return { ok: false, findings: [decoded.finding] };
  const { text, delimiter, firstLine } = findSeparator(decoded.text);
  if (countCells(text, delimiter) > MOST_CELLS) return { ok: false, findings: [tooManyCells(file)] };
  const parsed = Papa.parse<string[]>(text, { delimiter, skipEmptyLines: false });
  const { rows, starts } = placeRows(parsed.data, firstLine);
  const quotes = parsed.errors
    .filter((error) => error.type === "Quotes")
    .map((error) => quoteFinding(error.row === undefined ? firstLine : (starts[error.row] ?? firstLine), file));
  const findings = [...quotes, ...longCells(rows, file)];
  if (findings.length > 0) return { ok: false, findings };
  return { ok: true, value: { kind: "table", sheet: "", rows }, findings: [] };
}

/** Letters that one cell of a spreadsheet holds at most. */
const LONGEST_CELL = 32_767;

/** The first cell that is longer: a quotation mark that is never closed makes one cell of what follows. */
function longCells(rows: readonly (readonly Cell[])[], file: string): readonly Finding[] {
  const long = rows.flatMap((row) => row.filter(({ text }) => text.length > LONGEST_CELL)).slice(0, 1);
  return long.map(({ text, line, column }) => {
    const message = `a cell has ${text.length} characters; at most ${LONGEST_CELL} are read: is a quotation mark not closed?`;
    return { code: "long-cell", severity: "error", at: { file, line, column }, message };
  });
}

/** Counts line ends and separators, those in quoted cells too: at least as many as there are cells. Ends where there are too many. */
function countCells(text: string, delimiter: string): number {
  const separator = delimiter.charCodeAt(0);
  let count = 1;
  for (let at = 0; at < text.length && count <= MOST_CELLS; at++) {
    const code = text.charCodeAt(at);
    const endsLine = code === LINE_FEED || (code === RETURN && text.charCodeAt(at + 1) !== LINE_FEED);
    if (code === separator || endsLine) count++;
  }
  return count;
}

const [LINE_FEED, RETURN] = [10, 13];

function tooManyCells(file: string): Finding {
  const message = `the file has more than ${MOST_CELLS} cells; at most ${MOST_CELLS} are read: delete blank rows and columns beside the table`;
  return { code: "too-many-cells", severity: "error", at: { file, line: 1, column: 1 }, message };
}

function quoteFinding(line: number, file: string): Finding {
  const message =
    'a quotation mark is not closed or stands inside a cell; a cell that holds " is written "like ""this"""';
  return { code: "csv-quotes", severity: "error", at: { file, line, column: 1 }, message };
}

/** Honours the `sep=;` line that spreadsheets write first; otherwise decides by the heading line. */
function findSeparator(text: string): { text: string; delimiter: string; firstLine: number } {
  const told = /^sep=([,;\t])\r?\n/i.exec(text);
  if (told?.[1] !== undefined) return { text: text.slice(told[0].length), delimiter: told[1], firstLine: 2 };
  const [heading = ""] = /[^\r\n]+/.exec(text.trimStart()) ?? [];
  const counts = SEPARATORS.map((separator) => countOutsideQuotes(heading, separator));
  const most = counts.indexOf(greatestOf(counts));
  return { text, delimiter: SEPARATORS[most] ?? ",", firstLine: 1 };
}

function countOutsideQuotes(line: string, separator: string): number {
  return line.replace(/"[^"]*"/g, "").split(separator).length;
}

/** A row ends its line and spans the breaks that its quoted cells hold. */
function placeRows(data: readonly string[][], firstLine: number): { rows: Cell[][]; starts: number[] } {
  let line = firstLine;
  const starts: number[] = [];
  const rows = data.map((fields) => {
    starts.push(line);
    const cells = fields.map((field, index) => ({
      text: field.trim(),
      line: starts.at(-1) ?? line,
      column: index + 1,
    }));
    line += 1 + fields.reduce((breaks, field) => breaks + (field.match(/\r\n|\n|\r/g)?.length ?? 0), 0);
    return cells;
  });
  return { rows, starts };
}
