/**
 * XLSX bytes -> a table of cells as a person sees them. What is hidden or struck out is read, and told; what a number format
 * shows otherwise than as the number is a fault of its cell. No formula is run.
 */
import { unzipSync } from "fflate";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { nearestWord } from "../diagnostics/nearest.js";
import { type Cell, MOST_CELLS, type Table } from "./inputs.js";
import { readContent } from "./xlsx-cells.js";
import { remarksOnSheet } from "./xlsx-remarks.js";
import { MOST_COLUMNS, MOST_ROWS, readSheetXml, type SheetContent, type SheetFault } from "./xlsx-sheet.js";
import type { CellStyle, CellText, ListedSheet, Relation, WorkbookList } from "./xlsx-styles.js";
import { readRelations, readSharedTexts, readStyles, readWorkbookList } from "./xlsx-styles.js";

/** Largest workbook in bytes: packed, and the XML that its archive unpacks to; pictures are not unpacked. */
const LARGEST_WORKBOOK = { packed: 16 * 1024 * 1024, unpacked: 64 * 1024 * 1024 } as const;

const DAMAGED = "the workbook is damaged; allowed is .xlsx as a spreadsheet saves it";

/**
 * Opens a sheet of a workbook, the first that is shown when none is named. `Cell.line` and `Cell.column` count rows and
 * columns from 1.
 */
export async function openWorkbook(bytes: Uint8Array, file: string, sheet?: string): Promise<Outcome<Table>> {
  const refusal = refuseBytes(bytes);
  if (refusal !== null) return refuse(file, "bad-workbook", refusal);
  const book = openBook(bytes);
  if (book === null) return refuse(file, "bad-workbook", DAMAGED);
  const chosen = chooseSheet(book, sheet);
  if (chosen === undefined) return refuseSheet(book, file, sheet);
  const table = readTable(bytes, book, chosen, file, sheet);
  return typeof table === "string" ? refuse(file, "bad-workbook", table) : { ok: true, value: table, findings: [] };
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

function chooseSheet({ sheets }: Book, named: string | undefined): ListedSheet | undefined {
  return sheets.find(({ name, isHidden }) => (named === undefined ? !isHidden : name === named));
}

/** The sheet's table, or why it is not read. */
function readTable(
  bytes: Uint8Array,
  book: Book,
  sheet: ListedSheet,
  file: string,
  named: string | undefined,
): Table | string {
  const path = book.relations.get(sheet.relation)?.path;
  const besides = [...book.relations.values()].filter(({ type }) => type === "styles" || type === "sharedStrings");
  const parts = unpack(bytes, (name) => name === path || besides.some((each) => each.path === name));
  const xml = path === undefined ? null : textOf(parts, path);
  if (xml === null) return DAMAGED;
  const content = readSheetXml(xml, MOST_CELLS);
  if (typeof content === "string") return wordsOf(content);
  const read = <T>(type: string, reader: (xml: string) => T | null): T | null | undefined => {
    const of = besides.find((each) => each.type === type)?.path;
    const text = of === undefined ? null : textOf(parts, of);
    return text === null ? undefined : reader(text);
  };
  const styles = read("styles", readStyles);
  const shared = read("sharedStrings", (text) => readSharedTexts(text, MOST_CELLS));
  if (styles === null || shared === null) return DAMAGED;
  return tableOf(content, { styles: styles ?? [], shared: shared ?? [], book, sheet, file, named });
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
interface Beside {
  readonly styles: readonly CellStyle[];
  readonly shared: readonly CellText[];
  readonly book: Book;
  readonly sheet: ListedSheet;
  readonly file: string;
  readonly named: string | undefined;
}

function tableOf(content: SheetContent, { styles, shared, book, sheet, file, named }: Beside): Table | string {
  const read = readContent(content, { styles, shared, from1904: book.from1904 });
  const [rowCount, columnCount] = [read.lastRow, read.lastColumn];
  if (rowCount * columnCount > MOST_CELLS) {
    const words = `${rowCount} rows x ${columnCount} columns up to the last cell that holds something`;
    return `sheet "${sheet.name}" has ${words}; at most ${MOST_CELLS} cells are read: delete what stands far from the table`;
  }
  const rows = Array.from({ length: rowCount }, (_, row): Cell[] =>
    Array.from({ length: columnCount }, (_, column) => ({ text: "", line: row + 1, column: column + 1 })),
  );
  for (const cell of read.cells) (rows[cell.line - 1] ?? [])[cell.column - 1] = cell;
  const remarks = remarksOnSheet({ sheet, others: book.sheets, isNamed: named !== undefined, content, read, file });
  return { kind: "table", sheet: sheet.name, rows, ...(remarks.length === 0 ? {} : { remarks }) };
}

function refuseSheet({ sheets }: Book, file: string, sheet: string | undefined): Outcome<Table> {
  if (sheet === undefined) return refuse(file, "bad-workbook", "the workbook shows no sheet of cells; allowed is one");
  const names = sheets.map(({ name }) => name);
  const near = nearestWord(sheet, names);
  const message = `there is no sheet "${sheet}"; allowed are ${names.map((name) => `"${name}"`).join(", ")}`;
  return refuse(file, "missing-sheet", message, near === undefined ? undefined : `did you mean ${near}?`);
}

function refuse(file: string, code: string, message: string, hint?: string): Outcome<Table> {
  const finding: Finding = { code, severity: "error", at: { file }, message };
  return { ok: false, findings: [hint === undefined ? finding : { ...finding, hint }] };
}
