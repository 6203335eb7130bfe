/** One cause in a sentence: what it is about, how many places, where they are, what is wrong there. */
import type { Finding, Place } from "./finding.js";
import { formatFinding } from "./finding.js";
import type { Cause } from "./gather.js";
import { quotedFirst, sheetOf } from "./gather.js";
import { listed } from "./listed.js";
import type { Printable } from "./printable.js";
import { terminalText } from "./printable.js";

/** As a finding is shown where there is one; else `file column D Rod dia, 35 rows (D5 to D39): message (hint)`. */
export function formatCause(cause: Cause): Printable {
  return cause.all.length === 1 ? formatFinding(cause.first) : causeLine(cause);
}

const causeLine = terminalText((cause: Cause): string => {
  const { first, all } = cause;
  const hints = new Set(all.map(({ hint }) => hint));
  const hint = hints.size === 1 && first.hint !== undefined ? ` (${first.hint})` : "";
  return `${first.at.file} ${placesInWords(cause)}: ${messageOf(all, hints.size > 1)}${hint}`;
});

/** Values that are quoted with their places; the others are counted. */
const MOST_QUOTED = 3;

/** The message that all share; where their values differ the first of them, each with its place and its own hint. */
function messageOf(all: readonly Finding[], withHints: boolean): string {
  const [first] = all;
  const messages = new Set(all.map(({ message }) => message));
  const quoted = first === undefined ? null : quotedFirst(first.message);
  if (messages.size === 1 || quoted === null) return first?.message ?? "";
  const values = all.map(({ message, at, hint }) => {
    const own = withHints && hint !== undefined ? ` (${hint})` : "";
    return `${quotedFirst(message)?.value ?? ""} in ${shortPlace(at)}${own}`;
  });
  return `${listed(values, MOST_QUOTED)}: ${quoted.words}`;
}

function shortPlace({ cell, line, path = "" }: Place): string {
  if (cell !== undefined) return withoutSheet(cell);
  return /^row \d+/.exec(path)?.[0] ?? (line === undefined ? path : `line ${line}`);
}

function withoutSheet(cell: string): string {
  return cell.slice(sheetOf(cell).length);
}

function placesInWords(cause: Cause): string {
  const places = cause.all.map(({ at }) => at);
  const cells = places.flatMap(({ cell }) => (cell === undefined ? [] : [cell]));
  if (cells.length === places.length) return cellsInWords(cause.subject, cells);
  if (places.every(({ path = "" }) => /^row \d+/.test(path))) return rowsInWords(cause.subject, places);
  return keysInWords(cause.subject, places);
}

/** Spans of cells, rows or lines that are named; more are counted. */
const MOST_SPANS = 6;

function cellsInWords(subject: string, named: readonly string[]): string {
  const cells = named.map((cell) => {
    const [, letters = "", row = ""] = /^([A-Z]+)(\d+)$/.exec(withoutSheet(cell)) ?? [];
    return { letters, row: Number(row) };
  });
  const sheet = sheetOf(named[0] ?? "").slice(0, -1);
  const columns = new Set(cells.map(({ letters }) => letters));
  const rows = new Set(cells.map(({ row }) => row));
  const line = columns.size === 1 ? `column ${cells[0]?.letters}` : rows.size === 1 ? `row ${cells[0]?.row}` : "";
  const where = [sheet, line, subject].filter((part) => part !== "").join(" ");
  const count = columns.size === 1 ? `${rows.size} rows` : `${cells.length} cells`;
  return `${where}${where === "" ? "" : ", "}${count} (${listed(cellSpans(cells), MOST_SPANS)})`;
}

/** Neighbours in a column as D5 to D39. */
function cellSpans(cells: readonly { readonly letters: string; readonly row: number }[]): readonly string[] {
  const spans: { letters: string; first: number; last: number }[] = [];
  for (const { letters, row } of cells) {
    const before = spans.at(-1);
    if (before?.letters === letters && row >= before.last && row <= before.last + 1) before.last = row;
    else spans.push({ letters, first: row, last: row });
  }
  return spans.map(({ letters, first, last }) =>
    first === last ? `${letters}${first}` : `${letters}${first} to ${letters}${last}`,
  );
}

function rowsInWords(subject: string, places: readonly Place[]): string {
  const rows = places.map(({ path = "" }) => ({ letters: "", row: Number(/^row (\d+)/.exec(path)?.[1]) }));
  return `${subject}${subject === "" ? "" : ", "}${places.length} rows (${listed(cellSpans(rows), MOST_SPANS)})`;
}

/** `bases[].rods.diamter, 3 bases (lines 8, 15, 22)` */
function keysInWords(subject: string, places: readonly Place[]): string {
  const [, list = "places"] = /^(bases|placements|answers)\[/.exec(subject) ?? [];
  const items = new Set(places.map(({ path = "" }) => (list === "places" ? path : /\[\d+\]/.exec(path)?.[0])));
  const lines = [...new Set(places.flatMap(({ line }) => line ?? []))];
  const word = items.size === 1 ? list.slice(0, -1) : list;
  const at = ` (${lines.length === 1 ? "line" : "lines"} ${listed(lines.map(String), MOST_SPANS)})`;
  const count = items.size === places.length ? "" : `${places.length} places in `;
  return `${subject}, ${count}${items.size} ${word}${lines.length === 0 ? "" : at}`;
}
