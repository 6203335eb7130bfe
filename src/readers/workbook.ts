/** XLSX bytes -> a table of cells. Asynchronous, since its reader is: shells open workbooks before they call `build`. */
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import readWorkbook, { InvalidInputError, readSheet, SheetNotFoundError } from "read-excel-file/universal";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { nearestWord } from "../diagnostics/nearest.js";
import type { Cell, Table } from "./inputs.js";

/** Largest workbook, packed and unpacked, in bytes. */
const LARGEST_WORKBOOK = { packed: 16 * 1024 * 1024, unpacked: 128 * 1024 * 1024 } as const;

/** Opens a sheet of a workbook, the first when none is named. `Cell.line` and `Cell.column` count rows and columns from 1. */
export async function openWorkbook(bytes: Uint8Array, file: string, sheet?: string): Promise<Outcome<Table>> {
  const unpacked = unpack(bytes);
  if (typeof unpacked === "string") return refuse(file, "bad-workbook", unpacked);
  const readable = copyBuffer(unpacked);
  try {
    const rows = sheet === undefined ? await readSheet(readable) : await readSheet(readable, sheet);
    return { ok: true, value: { kind: "table", sheet: sheet ?? "", rows: rows.map(toCells) }, findings: [] };
  } catch (error) {
    return refuseUnread(error, readable, file, sheet ?? "");
  }
}

/** The bytes to read, or why they are not read: another kind of file, or one that unpacks beyond bounds. */
function unpack(bytes: Uint8Array): Uint8Array | string {
  const megabytes = (size: number) => `${Math.round(size / 1024 / 1024)} MB`;
  if (bytes.length > LARGEST_WORKBOOK.packed) {
    return `the workbook has ${megabytes(bytes.length)}; at most ${megabytes(LARGEST_WORKBOOK.packed)} are read`;
  }
  if (startsWith(bytes, [0xd0, 0xcf, 0x11, 0xe0])) {
    return "the workbook is encrypted or an old .xls; allowed is .xlsx without a password, or CSV";
  }
  if (!startsWith(bytes, [0x50, 0x4b])) return "the file is not a workbook; allowed is .xlsx, or CSV";
  try {
    const size = unpackedSize(bytes);
    if (size > LARGEST_WORKBOOK.unpacked) {
      return `the workbook unpacks to ${megabytes(size)}; at most ${megabytes(LARGEST_WORKBOOK.unpacked)} are read`;
    }
    return withReadableSheets(bytes);
  } catch {
    return "the workbook is damaged; allowed is .xlsx as a spreadsheet saves it";
  }
}

function startsWith(bytes: Uint8Array, signature: readonly number[]): boolean {
  return signature.every((byte, index) => bytes[index] === byte);
}

/** By the archive's own directory; the unpacking never writes beyond a size that is declared there. */
function unpackedSize(bytes: Uint8Array): number {
  let size = 0;
  unzipSync(bytes, {
    filter: ({ originalSize }) => {
      size += originalSize;
      return false;
    },
  });
  return size;
}

/**
 * The reader drops the cells of failed formulas and trusts every row number. So failed formulas become texts (`#REF!`),
 * and a cell outside a spreadsheet's own limits is refused.
 */
function withReadableSheets(bytes: Uint8Array): Uint8Array | string {
  const sheets = unzipSync(bytes, { filter: ({ name }) => /^xl\/worksheets\/[^/]+\.xml$/.test(name) });
  const changed: Record<string, Uint8Array> = {};
  for (const [name, content] of Object.entries(sheets)) {
    const xml = strFromU8(content);
    if (hasCellOutside(xml))
      return "the workbook names cells outside a sheet; at most 1048576 rows and 16384 columns are allowed";
    const readable = xml.replace(/(<(?:\w+:)?c\b[^>]*?\bt=)(["'])e\2/g, '$1"str"');
    if (readable !== xml) changed[name] = strToU8(readable);
  }
  if (Object.keys(changed).length === 0) return bytes;
  return zipSync({ ...unzipSync(bytes), ...changed }, { level: 0 });
}

function hasCellOutside(xml: string): boolean {
  for (const [, letters = "", digits = ""] of xml.matchAll(
    /<(?:\w+:)?(?:c|row)\b[^>]*?\br=["']([A-Za-z]*)([^"']*)["']/g,
  )) {
    const isPlain = /^\d{1,7}$/.test(digits) && letters.length <= 3;
    if (!isPlain || Number(digits) > 1_048_576 || columnNumber(letters) > 16_384) return true;
  }
  return false;
}

function columnNumber(letters: string): number {
  return [...letters.toUpperCase()].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0);
}

function copyBuffer(bytes: Uint8Array): ArrayBuffer {
  const copy = new ArrayBuffer(bytes.length);
  new Uint8Array(copy).set(bytes);
  return copy;
}

function toCells(row: readonly unknown[], index: number): Cell[] {
  return row.map((value, column) => ({ ...cellContent(value), line: index + 1, column: column + 1 }));
}

/** The text that a person sees, as far as the file holds it. */
function cellContent(value: unknown): { readonly text: string; readonly fault?: string } {
  if (value === null || value === undefined) return { text: "" };
  if (value instanceof Date) return dateContent(value);
  if (typeof value === "number") return { text: shortestDecimal(value) };
  const text = String(value);
  if (!/^#(NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|SPILL!|CALC!|GETTING_DATA)$/.test(text)) return { text };
  return { text, fault: `a formula failed here (${text}); allowed is a value` };
}

function dateContent(date: Date): { readonly text: string; readonly fault: string } {
  const text = Number.isNaN(date.getTime()) ? "a date" : date.toISOString().slice(0, 10);
  const fault = `the spreadsheet made a date of what was typed here (${text}); format the column as text and type it again`;
  return { text, fault };
}

/** 15 digits, as a spreadsheet shows at most; no exponent. */
function shortestDecimal(value: number): string {
  const rounded = Number(value.toPrecision(15));
  const text = String(rounded);
  return text.includes("e") ? rounded.toFixed(20).replace(/\.?0+$/, "") : text;
}

/** Why a workbook was not read: a sheet that is not there, or a workbook that is damaged, whose sheets cannot be told either. */
async function refuseUnread(
  error: unknown,
  readable: ArrayBuffer,
  file: string,
  sheet: string,
): Promise<Outcome<Table>> {
  if (!(error instanceof SheetNotFoundError)) return refuse(file, "bad-workbook", reasonOf(error));
  try {
    return await refuseSheet(readable, file, sheet);
  } catch (other) {
    return refuse(file, "bad-workbook", reasonOf(other));
  }
}

async function refuseSheet(readable: ArrayBuffer, file: string, sheet: string): Promise<Outcome<Table>> {
  const sheets = (await readWorkbook(readable)).map((one) => one.sheet);
  const near = nearestWord(sheet, sheets);
  const message = `there is no sheet "${sheet}"; allowed are ${sheets.map((name) => `"${name}"`).join(", ")}`;
  return refuse(file, "missing-sheet", message, near === undefined ? undefined : `did you mean ${near}?`);
}

function reasonOf(error: unknown): string {
  if (error instanceof InvalidInputError) return "the file is not a workbook; allowed is .xlsx, or CSV";
  return "the workbook cannot be read: it is damaged, too large, or not written as spreadsheets write it; open it in one and save it again as .xlsx, or as CSV";
}

function refuse(file: string, code: string, message: string, hint?: string): Outcome<Table> {
  const finding: Finding = { code, severity: "error", at: { file }, message };
  return { ok: false, findings: [hint === undefined ? finding : { ...finding, hint }] };
}
