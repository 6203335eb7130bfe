/** Cells of a sheet -> the texts that a person sees, as far as the file holds them. */
import type { Cell } from "./inputs.js";
import { faultOfText, showNumber } from "./number-format.js";
import type { SheetCell, SheetContent } from "./xlsx-sheet.js";
import type { CellStyle, CellText } from "./xlsx-styles.js";

/** What cells refer to. */
export interface CellSources {
  readonly styles: readonly CellStyle[];
  readonly shared: readonly CellText[];
  readonly from1904: boolean;
}

/** The cells that hold something, and what is to be told of them. */
export interface ReadContent {
  readonly cells: readonly Cell[];
  readonly lastRow: number;
  readonly lastColumn: number;
  /** Cells whose whole text is struck out. */
  readonly struck: readonly Cell[];
  /** Cells that hold more decimals than they show. */
  readonly rounded: readonly { readonly cell: Cell; readonly shown: string }[];
}

/** Reads the cells of a sheet. */
export function readContent({ cells }: SheetContent, sources: CellSources): ReadContent {
  const read: Cell[] = [];
  const struck: Cell[] = [];
  const rounded: { cell: Cell; shown: string }[] = [];
  let [lastRow, lastColumn] = [0, 0];
  for (const each of cells) {
    const style = sources.styles[each.style] ?? PLAIN;
    const { text, fault, isStruck, shown } = readCell(each, style, sources);
    if (text === "" && fault === undefined) continue;
    const cell: Cell = { text, line: each.row, column: each.column, ...(fault === undefined ? {} : { fault }) };
    read.push(cell);
    lastRow = each.row;
    lastColumn = Math.max(lastColumn, each.column);
    if (isStruck || style.isStruck) struck.push(cell);
    if (shown !== undefined) rounded.push({ cell, shown });
  }
  return { cells: read, lastRow, lastColumn, struck, rounded };
}

const PLAIN: CellStyle = { format: "General", isStruck: false };

interface Content {
  readonly text: string;
  readonly fault?: string;
  readonly isStruck?: boolean;
  /** What is shown where that is less exact than the text. */
  readonly shown?: string;
}

function readCell(cell: SheetCell, style: CellStyle, sources: CellSources): Content {
  if (cell.isFormula && cell.value === null) return { text: "", fault: UNCOMPUTED };
  switch (cell.type) {
    case "s":
      return textContent(sources.shared[Number(cell.value)] ?? null, style);
    case "inlineStr":
      return textContent(cell.inline, style);
    case "str":
      return textContent({ text: cell.value ?? "", struck: "no" }, style);
    case "b":
      return { text: cell.value === "1" || cell.value === "true" ? "true" : "false" };
    case "e":
      return failedContent(cell.value ?? "#VALUE!");
    case "d":
      return { text: cell.value ?? "", fault: madeDate(cell.value ?? "a date") };
    default:
      return numberContent(cell, style, sources.from1904);
  }
}

const UNCOMPUTED =
  "a formula without its value stands here; open the workbook in a spreadsheet and save it, or type the value";

function textContent(held: CellText | null, style: CellStyle): Content {
  if (held === null) return { text: "", fault: "the text of this cell is missing in the workbook; type it again" };
  const text = held.text.trim();
  if (/^#(NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|SPILL!|CALC!|GETTING_DATA)$/.test(text))
    return failedContent(text);
  const how = text === "" ? null : faultOfText(style.format);
  if (how !== null) return { text, fault: otherwise(text, how) };
  if (held.struck === "part")
    return { text, fault: `a part of "${text}" is struck out; allowed is the text that holds` };
  return { text, isStruck: held.struck === "whole" };
}

function failedContent(text: string): Content {
  return { text, fault: `a formula failed here (${text}); allowed is a value` };
}

function otherwise(text: string, how: string): string {
  return `${text} is held here and ${how}; allowed is a number format without letters or %, or the unit typed in the cell`;
}

function madeDate(text: string): string {
  return `the spreadsheet made a date of what was typed here (${text}); format the column as text and type it again`;
}

const NUMBER = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d{1,3})?$/i;

function numberContent({ value, isFormula }: SheetCell, { format }: CellStyle, from1904: boolean): Content {
  const written = (value ?? "").trim();
  if (written === "") return isFormula ? { text: "", fault: UNCOMPUTED } : { text: "" };
  if (!NUMBER.test(written))
    return { text: written, fault: `${written} is no number, though the workbook calls it one` };
  const number = Number(written);
  const held = shortestDecimal(number);
  const shown = showNumber(number, held, format);
  switch (shown.kind) {
    case "number":
      return { text: shown.text, ...(shown.rounded === null ? {} : { shown: shown.rounded }) };
    case "date":
      return dateContent(number, from1904);
    case "otherwise":
      return { text: held, fault: otherwise(held, shown.how) };
  }
}

/** Days from the first of March of the year 0 to what is day 0 of a spreadsheet: the last of 1899, or the first of 1904. */
const [TO_1900, TO_1904] = [693_900, 695_361];

/** A spreadsheet takes 1900 for a leap year: from March on its days are one too many. Nothing lies beyond the year 9999. */
function dateContent(serial: number, from1904: boolean): Content {
  const days = Math.floor(serial);
  const isKnown = days >= 0 && days < 2_958_466;
  const text = isKnown ? dayText(from1904 ? TO_1904 + days : TO_1900 + days - (days > 59 ? 1 : 0)) : "a date";
  return { text, fault: madeDate(text) };
}

/** YYYY-MM-DD of the Gregorian calendar, by days since the first of March of the year 0. */
function dayText(days: number): string {
  const era = Math.floor(days / 146_097);
  const ofEra = days - era * 146_097;
  const year = Math.floor(
    (ofEra - Math.floor(ofEra / 1460) + Math.floor(ofEra / 36_524) - Math.floor(ofEra / 146_096)) / 365,
  );
  const ofYear = ofEra - (365 * year + Math.floor(year / 4) - Math.floor(year / 100));
  const fromMarch = Math.floor((5 * ofYear + 2) / 153);
  const day = ofYear - Math.floor((153 * fromMarch + 2) / 5) + 1;
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  const padded = (value: number, length: number) => String(value).padStart(length, "0");
  return `${padded(year + 400 * era + (month < 3 ? 1 : 0), 4)}-${padded(month, 2)}-${padded(day, 2)}`;
}

/** 15 digits, as a spreadsheet shows at most; no exponent. */
function shortestDecimal(value: number): string {
  const rounded = Number(value.toPrecision(15));
  const text = String(rounded);
  return text.includes("e") ? rounded.toFixed(20).replace(/\.?0+$/, "") : text;
}
