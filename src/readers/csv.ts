/** Text in which a sign parts the cells (CSV) -> a table of cells. */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { type Cell, MOST_CELLS, type Table } from "./inputs.js";
import { type QuoteFault, type SplitRow, splitCells } from "./quoted-cells.js";
import { chooseSeparator, commonCount, countCells, type Separator, sampleLines } from "./separator.js";
import { decodeText } from "./text.js";

/** Separators that spreadsheets write. */
const SEPARATORS = [",", ";", "\t"] as const;

/** Reads a CSV file. `Cell.line` is the line of the file where the row starts, `Cell.column` counts cells from 1. */
export function readCsv(input: string | Uint8Array, file: string): Outcome<Table> {
  const decoded = decodeText(input, file, "allowed is CSV: open it and save the sheet as CSV");
  if (!decoded.ok) return { ok: false, findings: [decoded.finding] };
  const { text, separator, firstLine } = findSeparator(decoded.text, SEPARATORS);
  return readSeparated(text, separator === "aligned" ? "," : separator, firstLine, file);
}

/** Honours the `sep=;` line that spreadsheets write first; otherwise decides over the whole text. */
export function findSeparator(
  text: string,
  among: readonly Separator[],
): { readonly text: string; readonly separator: Separator; readonly firstLine: number } {
  const told = /^sep=([,;\t|])(\r\n|\n|\r)/i.exec(text);
  const separator = among.find((each) => each === told?.[1]);
  if (told !== null && separator !== undefined) return { text: text.slice(told[0].length), separator, firstLine: 2 };
  return { text, separator: chooseSeparator(sampleLines(text), among) ?? ",", firstLine: 1 };
}

/** The table of a text whose separator is known. */
export function readSeparated(
  text: string,
  separator: Exclude<Separator, "aligned">,
  firstLine: number,
  file: string,
): Outcome<Table> {
  if (countSigns(text, separator) > MOST_CELLS) return { ok: false, findings: [tooManyCells(file)] };
  const expected = commonCount(sampleLines(text).map((line) => countCells(line, separator)));
  const { rows, faults } = splitCells(text, separator, expected);
  const quotes = faults.map((fault) => quoteFinding(fault, firstLine - 1, file));
  return tableOfRows(rows, firstLine, quotes, file);
}

/** Rows as a table, unless something is wrong with them. */
export function tableOfRows(
  split: readonly SplitRow[],
  firstLine: number,
  faults: readonly Finding[],
  file: string,
): Outcome<Table> {
  const rows = split.map(({ texts, line }, index) => {
    const [inFile, row] = [line + firstLine - 1, index + 1];
    const own = inFile === row ? {} : { row };
    return texts.map((text, at): Cell => ({ text, line: inFile, column: at + 1, ...own }));
  });
  const findings = [...faults, ...longCells(rows, file)];
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
function countSigns(text: string, separator: string): number {
  const sign = separator.charCodeAt(0);
  let count = 1;
  for (let at = 0; at < text.length && count <= MOST_CELLS; at++) {
    const code = text.charCodeAt(at);
    const endsLine = code === LINE_FEED || (code === RETURN && text.charCodeAt(at + 1) !== LINE_FEED);
    if (code === sign || endsLine) count++;
  }
  return count;
}

const [LINE_FEED, RETURN] = [10, 13];

/** A text of more cells than are read. */
export function tooManyCells(file: string): Finding {
  const message = `the file has more than ${MOST_CELLS} cells; at most ${MOST_CELLS} are read: delete blank rows and columns beside the table`;
  return { code: "too-many-cells", severity: "error", at: { file, line: 1, column: 1 }, message };
}

const QUOTES: Readonly<Record<QuoteFault["why"], string>> = {
  open: "a quotation mark opens this cell and is not closed",
  "closed inside": "a quotation mark opens this cell and closes inside it",
  "two readings":
    "the quotation mark that opens this cell may be one of a pair around several cells, or stand for what is above",
};

function quoteFinding({ line, column, why }: QuoteFault, linesBefore: number, file: string): Finding {
  const message = `${QUOTES[why]}; a cell that holds " is written "like ""this""", and what is above is written DO`;
  return { code: "csv-quotes", severity: "error", at: { file, line: line + linesBefore, column }, message };
}
