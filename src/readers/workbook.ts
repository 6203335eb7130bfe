/**
 * XLSX bytes -> tables of cells as a person sees them. What is hidden or struck out is read, and told; what a number format
 * shows otherwise than as the number is a fault of its cell. No formula is run.
 */
import { unzipSync } from "fflate";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { listed } from "../diagnostics/listed.js";
import { nearestWord } from "../diagnostics/nearest.js";
import { type Cell, type Merge, MOST_CELLS, type Table, type Workbook } from "./inputs.js";
import { type CellSources, readContent } from "./xlsx-cells.js";
import { remarksOnSheet } from "./xlsx-remarks.js";
import { MOST_COLUMNS, MOST_ROWS, readSheetXml, type SheetContent, type SheetFault } from "./xlsx-sheet.js";
import type { ListedSheet, Relation, WorkbookList } from "./xlsx-styles.js";
import { readRelations, readSharedTexts, readStyles, readWorkbookList } from "./xlsx-styles.js";

/** Largest workbook in bytes: packed, and the XML that its archive unpacks to; pictures are not unpacked. */
const LARGEST_WORKBOOK = { packed: 16 * 1024 * 1024, unpacked: 64 * 1024 * 1024 } as const;

const DAMAGED = "the workbook is damaged; allowed is .xlsx as a spreadsheet saves it";
const NO_BOOK =
  "this is an archive or a document without a workbook in it; allowed is .xlsx, or CSV: take the sheet out of it, and hand that in";

/**
 * Opens the sheets of a workbook that hold cells, hidden ones too, in their order; with `sheet` that one alone, blank or not.
 * Charts are left out. `Cell.line` and `Cell.column` count rows and columns from 1.
 */
export async function openWorkbook(bytes: Uint8Array, file: string, sheet?: string): Promise<Outcome<Workbook>> {
  const refusal = refuseBytes(bytes);
  if (refusal !== null) return refuse(file, "bad-workbook", refusal);
  const book = openBook(bytes);
  if (book === null) return refuse(file, "bad-workbook", hasList(bytes) ? DAMAGED : NO_BOOK);
  const chosen = sheet === undefined ? book.sheets : book.sheets.filter(({ name }) => name === sheet).slice(0, 1);
  if (sheet !== undefined && chosen.length === 0) return refuseSheet(bytes, book, file, sheet);
  const tables = readTables(bytes, book, chosen, file, sheet !== undefined);
  if (typeof tables === "string") return refuse(file, "bad-workbook", tables);
  const sheets = sheet === undefined ? tables.filter(({ rows }) => rows.length > 0) : tables;
  if (sheets.length === 0) return refuse(file, "bad-workbook", "no sheet of the workbook holds a cell; allowed is one");
  return { ok: true, value: { kind: "workbook", sheets }, findings: [] };
}

/** Why bytes are not unpacked: another kind of file, or one beyond bounds. */
function refuseBytes(bytes: Uint8Array): string | null {
  const megabytes = (size: number) => `${Math.ceil(size / 1024 / 1024)} MB`;
  if (bytes.length > LARGEST_WORKBOOK.packed)
    return `the workbook has ${megabytes(bytes.length)}; at most ${megabytes(LARGEST_WORKBOOK.packed)} are read`;
  if (startsWith(bytes, [0xd0, 0xcf, 0x11, 0xe0]))
    return "the workbook is encrypted or an old .xls; allowed is .xlsx without a password, or CSV";
  if (!startsWith(bytes, [0x50, 0x4b])) return "the file is not a workbook; allowed is .xlsx, or CSV";
  const size = unpackedSize(bytes);
  if (size === null) return DAMAGED;
  if (size <= LARGEST_WORKBOOK.unpacked) return null;
  return `the workbook unpacks to ${megabytes(size)}; at most ${megabytes(LARGEST_WORKBOOK.unpacked)} are read`;
}

function startsWith(bytes: Uint8Array, signature: readonly number[]): boolean {
  return signature.every((byte, index) => bytes[index] === byte);
}

/** By the archive's own directory; the unpacking never writes beyond a size that is declared there. */
function unpackedSize(bytes: Uint8Array): number | null {
  let size = 0;
  const unpacked = unpack(bytes, (name, originalSize) => {
    if (/\.(xml|rels)$/i.test(name)) size += originalSize;
    return false;
  });
  return unpacked === null ? null : size;
}

function unpack(bytes: Uint8Array, wants: (name: string, size: number) => boolean): Parts | null {
  try {
    return new Map(Object.entries(unzipSync(bytes, { filter: ({ name, originalSize }) => wants(name, originalSize) })));
  } catch {
    return null;
  }
}

type Parts = ReadonlyMap<string, Uint8Array>;

/** The text of a part; null where it is not there or no UTF-8. */
function textOf(parts: Parts | null, path: string): string | null {
  const part = parts?.get(path);
  if (part === undefined) return null;
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(part);
  } catch {
    return null;
  }
}

interface Book extends WorkbookList {
  readonly relations: ReadonlyMap<string, Relation>;
}

const [LIST, RELATIONS] = ["xl/workbook.xml", "xl/_rels/workbook.xml.rels"];

/** The sheets of a workbook that hold cells, charts left out; null where it is damaged. */
function openBook(bytes: Uint8Array): Book | null {
  const parts = unpack(bytes, (name) => name === LIST || name === RELATIONS);
  const list = readWorkbookList(textOf(parts, LIST) ?? "<");
  const relations = readRelations(textOf(parts, RELATIONS) ?? "<");
  if (list === null || relations === null) return null;
  const sheets = list.sheets.filter(({ relation }) => relations.get(relation)?.type !== "chartsheet");
  return { ...list, sheets, relations };
}

/** Of an archive whose directory was read. */
function hasList(bytes: Uint8Array): boolean {
  let isThere = false;
  unpack(bytes, (name) => {
    isThere ||= name === LIST;
    return false;
  });
  return isThere;
}

/** The tables of these sheets, or why one of them is not read. */
function readTables(
  bytes: Uint8Array,
  book: Book,
  sheets: readonly ListedSheet[],
  file: string,
  isNamed: boolean,
): readonly Table[] | string {
  const beside = readBeside(bytes, book);
  if (beside === null) return DAMAGED;
  const tables: Table[] = [];
  let left = MOST_CELLS;
  for (const sheet of sheets) {
    const xml = sheetXml(bytes, book, sheet);
    const content = xml === null ? "damaged" : readSheetXml(xml, MOST_CELLS);
    if (typeof content === "string")
      return sheets.length > 1 ? `sheet "${sheet.name}": ${wordsOf(content)}` : wordsOf(content);
    const table = tableOf(content, { ...beside, sheet, file, isNamed }, left);
    if (typeof table === "string") return sheets.length > 1 ? `${table}${NAME_ONE}` : table;
    left -= cellsIn(table);
    tables.push(table);
  }
  return tables;
}

const NAME_ONE = ", or name the sheet that is meant in the job: that one alone is then read";

function cellsIn({ rows }: Table): number {
  return rows.length * (rows[0]?.length ?? 0);
}

/** One sheet is unpacked at a time. */
function sheetXml(bytes: Uint8Array, book: Book, { relation }: ListedSheet): string | null {
  const path = book.relations.get(relation)?.path;
  return path === undefined
    ? null
    : textOf(
        unpack(bytes, (name) => name === path),
        path,
      );
}

/** The styles and shared texts; null where they are damaged. */
function readBeside(bytes: Uint8Array, { relations, from1904 }: Book): CellSources | null {
  const besides = [...relations.values()].filter(({ type }) => type === "styles" || type === "sharedStrings");
  const parts = unpack(bytes, (name) => besides.some(({ path }) => path === name));
  const read = <T>(type: string, reader: (xml: string) => T | null): T | null | undefined => {
    const of = besides.find((each) => each.type === type)?.path;
    const text = of === undefined ? null : textOf(parts, of);
    return text === null ? undefined : reader(text);
  };
  const styles = read("styles", readStyles);
  const shared = read("sharedStrings", (text) => readSharedTexts(text, MOST_CELLS));
  return styles === null || shared === null ? null : { styles: styles ?? [], shared: shared ?? [], from1904 };
}

function wordsOf(fault: SheetFault): string {
  switch (fault) {
    case "damaged":
      return DAMAGED;
    case "disorder":
      return "the workbook is damaged: its cells do not stand in their order; allowed is .xlsx as a spreadsheet saves it";
    case "outside":
      return `the workbook names cells outside a sheet; at most ${MOST_ROWS} rows and ${MOST_COLUMNS} columns are allowed`;
    case "too-many":
      return `the sheet has more than ${MOST_CELLS} cells; at most ${MOST_CELLS} are read`;
  }
}

/** What a sheet's cells are read with. */
interface Beside extends CellSources {
  readonly sheet: ListedSheet;
  readonly file: string;
  readonly isNamed: boolean;
}

/** `most` cells are left to read of the workbook. */
function tableOf(content: SheetContent, beside: Beside, most: number): Table | string {
  const { sheet } = beside;
  const read = readContent(content, beside);
  const [rowCount, columnCount] = [read.lastRow, read.lastColumn];
  if (rowCount * columnCount > most) return tooManyWords(sheet.name, rowCount, columnCount, most);
  const rows = Array.from({ length: rowCount }, (_, row): Cell[] =>
    Array.from({ length: columnCount }, (_, column) => ({ text: "", line: row + 1, column: column + 1 })),
  );
  for (const cell of read.cells) (rows[cell.line - 1] ?? [])[cell.column - 1] = cell;
  const merges = mergesWithin(content.merges, rowCount, columnCount);
  for (const merge of merges) coverCells(rows, merge);
  const remarks = remarksOnSheet({ ...beside, content, read });
  return {
    ...{ kind: "table", sheet: sheet.name, rows },
    ...(remarks.length === 0 ? {} : { remarks }),
    ...(merges.length === 0 ? {} : { merges }),
    ...(sheet.isHidden ? { isHidden: true } : {}),
  };
}

function tooManyWords(name: string, rows: number, columns: number, most: number): string {
  const words = `sheet "${name}" has ${rows} rows x ${columns} columns up to the last cell that holds something`;
  const allowed =
    most === MOST_CELLS
      ? `at most ${MOST_CELLS} cells are read`
      : `at most ${MOST_CELLS} cells are read of a workbook, and the sheets before it leave ${most}`;
  return `${words}; ${allowed}: delete what stands far from the table`;
}

/** Merges of two cells and more, cut off where nothing stands any more. As merges do not lie over each other, all together have no more cells than the table. */
function mergesWithin(merges: readonly Merge[], rows: number, columns: number): readonly Merge[] {
  let left = rows * columns;
  return merges.flatMap((merge): Merge[] => {
    const { top, left: first } = merge;
    const [bottom, right] = [Math.min(merge.bottom, rows), Math.min(merge.right, columns)];
    const size = (bottom - top + 1) * (right - first + 1);
    if (top < 1 || first < 1 || bottom < top || right < first || size < 2 || size > left) return [];
    left -= size;
    return [{ top, left: first, bottom, right }];
  });
}

/** What a merge covers is not seen, though a file may hold it. */
function coverCells(rows: Cell[][], { top, left, bottom, right }: Merge): void {
  for (let line = top; line <= bottom; line++) {
    const row = rows[line - 1] ?? [];
    for (let column = left; column <= right; column++) {
      const cell = row[column - 1];
      if (cell === undefined || cell.text === "" || (line === top && column === left)) continue;
      row[column - 1] = { ...cell, isHidden: true, remark: "a merged cell covers it" };
    }
  }
}

/** Names that hold a table where one is held: no cover is proposed. */
function refuseSheet(bytes: Uint8Array, book: Book, file: string, sheet: string): Outcome<Workbook> {
  const tables = readTables(bytes, book, book.sheets, file, false);
  const held = typeof tables === "string" ? [] : tables.filter(holdsTable).map(({ sheet: name }) => name);
  const names = held.length > 0 ? held : book.sheets.map(({ name }) => name);
  const near = nearestWord(sheet, names);
  const message = `there is no sheet "${sheet}"; allowed are ${listed(
    names.map((name) => `"${name}"`),
    MOST_NAMES,
  )}`;
  return refuse(file, "missing-sheet", message, near === undefined ? undefined : `did you mean ${near}?`);
}

const MOST_NAMES = 30;

/** Two rows and more of which each has two cells filled side by side. */
function holdsTable({ rows }: Table): boolean {
  const filled = (cell: Cell | undefined) => cell !== undefined && cell.text !== "";
  const isRow = (row: readonly Cell[]) => row.some((cell, index) => filled(cell) && filled(row[index + 1]));
  return rows.filter(isRow).length > 1;
}

function refuse(file: string, code: string, message: string, hint?: string): Outcome<Workbook> {
  const finding: Finding = { code, severity: "error", at: { file }, message };
  return { ok: false, findings: [hint === undefined ? finding : { ...finding, hint }] };
}
