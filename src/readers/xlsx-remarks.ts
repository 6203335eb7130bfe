/** What is told of a sheet that is read: what of it is hidden or struck out, what shows less than it holds. */
import type { Finding } from "../diagnostics/finding.js";
import { listed } from "../diagnostics/listed.js";
import { cellInSheet, columnLetters } from "./cell-place.js";
import { hiddenColumns, type ReadContent } from "./xlsx-cells.js";
import type { SheetContent, Span } from "./xlsx-sheet.js";
import type { ListedSheet } from "./xlsx-styles.js";

/** A sheet that was read. */
export interface SheetRead {
  readonly sheet: ListedSheet;
  /** Whether the job names the sheet. */
  readonly isNamed: boolean;
  readonly content: SheetContent;
  readonly read: ReadContent;
  readonly file: string;
}

/** Places that one remark names; of more their number is told. */
const MOST_NAMED = 20;

/** The remarks as warnings: all that is read is used as read. */
export function remarksOnSheet(sheet: SheetRead): readonly Finding[] {
  const remark = (code: string, message: string, hint?: string): Finding => {
    const at = { file: sheet.file };
    return { code, severity: "warning", at, message, ...(hint === undefined ? {} : { hint }) };
  };
  const name = `sheet "${sheet.sheet.name}"`;
  const parts: readonly (readonly [string, string | null, string])[] = [
    ["hidden-rows", hiddenRows(sheet), "show or delete them, and look whether they are meant"],
    ["hidden-columns", hiddenColumnsOf(sheet), "show or delete them, and look whether they are meant"],
    ["struck-cells", struckCells(sheet.read), "delete what no longer holds"],
    ["shown-rounded", roundedCells(sheet.read), "show all decimals, and look whether they are meant"],
  ];
  return [
    ...hiddenSheet(sheet).map((words) => remark("hidden-sheet", `${name} ${words}`)),
    ...parts.flatMap(([code, words, hint]) => (words === null ? [] : [remark(code, `${name}: ${words}`, hint)])),
  ];
}

function hiddenSheet({ sheet, isNamed }: SheetRead): readonly string[] {
  return sheet.isHidden && isNamed ? ["is hidden in the workbook; it is read since the job names it"] : [];
}

/** Hidden rows that hold something. */
function hiddenRows({ content, read }: SheetRead): string | null {
  if (content.hiddenRows.length === 0) return null;
  const filled = new Set(read.cells.map(({ line }) => line));
  return hidden("row", spansOf(content.hiddenRows.filter((row) => filled.has(row))), String);
}

function hiddenColumnsOf({ content, read }: SheetRead): string | null {
  if (content.hiddenColumns.length === 0) return null;
  const isHidden = hiddenColumns(content);
  const filled = [...new Set(read.cells.map(({ column }) => column))].sort((a, b) => a - b);
  return hidden("column", spansOf(filled.filter((column) => isHidden.has(column))), columnLetters);
}

function hidden(what: string, spans: readonly Span[], name: (place: number) => string): string | null {
  const [first] = spans;
  if (first === undefined) return null;
  const isOne = spans.length === 1 && first.first === first.last;
  const places = spans.map(({ first, last }) => (first === last ? name(first) : `${name(first)} to ${name(last)}`));
  const verbs = isOne ? "is hidden; it is read like the others" : "are hidden; they are read like the others";
  return `${what}${isOne ? "" : "s"} ${listed(places, MOST_NAMED)} ${verbs}`;
}

function spansOf(places: readonly number[]): readonly Span[] {
  return places.reduce<Span[]>((spans, place) => {
    const last = spans.at(-1);
    if (last !== undefined && last.last === place - 1) spans[spans.length - 1] = { ...last, last: place };
    else spans.push({ first: place, last: place });
    return spans;
  }, []);
}

/** Neighbours in a row as A4 to F4. */
function struckCells({ cells }: ReadContent): string | null {
  const struck = cells.filter(({ isStruck }) => isStruck === true);
  if (struck.length === 0) return null;
  const rows = new Map<number, number[]>();
  for (const { line, column } of struck) rows.set(line, [...(rows.get(line) ?? []), column]);
  const places = [...rows].flatMap(([row, columns]) =>
    spansOf(columns).map(({ first, last }) => {
      const [from, to] = [`${columnLetters(first)}${row}`, `${columnLetters(last)}${row}`];
      return from === to ? from : `${from} to ${to}`;
    }),
  );
  const verbs = struck.length === 1 ? "is struck out" : "are struck out";
  return `${listed(places, MOST_NAMED)} ${verbs}; a row that is struck out whole is left out, a single value is asked about`;
}

function roundedCells({ rounded }: ReadContent): string | null {
  if (rounded.length === 0) return null;
  const words = rounded.map(({ cell, shown }) => `${cellInSheet(cell)} shows ${shown} and holds ${cell.text}`);
  return `${listed(words, MOST_NAMED)}; what is held is read`;
}
