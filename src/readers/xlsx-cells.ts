/** Cells of a sheet -> the texts that a person sees, as far as the file holds them. */
import { cellInSheet } from "./cell-place.js";
import type { Cell } from "./inputs.js";
import { faultOfText, showNumber } from "./number-format.js";
import { type Day, dayOf, dayOfText, dayText, fractionsOf } from "./spreadsheet-date.js";
import { MOST_COLUMNS, type SheetCell, type SheetContent } from "./xlsx-sheet.js";
import type { CellStyle, CellText } from "./xlsx-styles.js";
import { readText } from "./xlsx-text.js";

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
  /** Cells that hold more decimals than they show. */
  readonly rounded: readonly { readonly cell: Cell; readonly shown: string }[];
}

/** Reads the cells of a sheet. */
export function readContent(content: SheetContent, sources: CellSources): ReadContent {
  const read: Cell[] = [];
  const rounded: { cell: Cell; shown: string }[] = [];
  const isHidden = hiddenPlaces(content);
  let [lastRow, lastColumn] = [0, 0];
  for (const each of content.cells) {
    const { shown, isStruck, ...held } = readCell(each, sources.styles[each.style] ?? PLAIN, sources);
    if (held.text === "" && held.fault === undefined) continue;
    const marks = { ...(isStruck ? { isStruck } : {}), ...(isHidden(each) ? { isHidden: true } : {}) };
    const cell: Cell = { ...held, line: each.row, column: each.column, ...marks };
    read.push(cell);
    lastRow = each.row;
    lastColumn = Math.max(lastColumn, each.column);
    if (shown !== undefined) rounded.push({ cell, shown });
  }
  return { cells: read, lastRow, lastColumn, rounded };
}

function hiddenPlaces(content: SheetContent): (cell: SheetCell) => boolean {
  const [rows, columns] = [new Set(content.hiddenRows), hiddenColumns(content)];
  return ({ row, column }) => rows.has(row) || columns.has(column);
}

/** The columns that are hidden, in time that grows with their spans, however far these reach. */
export function hiddenColumns({ hiddenColumns: spans }: SheetContent): ReadonlySet<number> {
  const changes = new Map<number, number>();
  const change = (column: number, by: number) => changes.set(column, (changes.get(column) ?? 0) + by);
  for (const { first, last } of spans) {
    if (!(first >= 1 && first <= last)) continue;
    change(first, 1);
    change(Math.min(last, MOST_COLUMNS) + 1, -1);
  }
  const hidden = new Set<number>();
  let depth = 0;
  for (let column = 1; changes.size > 0 && column <= MOST_COLUMNS; column++) {
    depth += changes.get(column) ?? 0;
    if (depth > 0) hidden.add(column);
  }
  return hidden;
}

const PLAIN: CellStyle = { format: "General", isStruck: false };

interface Content {
  readonly text: string;
  readonly fault?: string;
  readonly remark?: string;
  readonly isStruck?: boolean;
  /** What is shown where that is less exact than the text. */
  readonly shown?: string;
}

function readCell(cell: SheetCell, style: CellStyle, sources: CellSources): Content {
  if (cell.isFormula && cell.value === null && cell.inline === null) return { text: "", fault: UNCOMPUTED };
  const read = contentOf(cell, style, sources);
  return style.isStruck && read.isStruck === undefined ? { ...read, isStruck: true } : read;
}

function contentOf(cell: SheetCell, style: CellStyle, sources: CellSources): Content {
  const at = cellInSheet({ line: cell.row, column: cell.column });
  switch (cell.type) {
    case "s":
      return textContent(sources.shared[Number(cell.value)] ?? null, style, at);
    case "inlineStr":
      return textContent(cell.inline, style, at);
    case "str":
      return textContent([{ text: cell.value ?? "", isStruck: null, isRaised: false }], style, at);
    case "b":
      return { text: cell.value === "1" || cell.value === "true" ? "true" : "false" };
    case "e":
      return failedContent(cell.value ?? "#VALUE!");
    case "d":
      return { text: cell.value ?? "", fault: madeDate(dayOfText(cell.value ?? ""), cell.value ?? "a date", at) };
    default:
      return numberContent(cell, style, sources.from1904, at);
  }
}

const UNCOMPUTED =
  "a formula without its value stands here; open the workbook in a spreadsheet and save it, or type the value";

function textContent(held: CellText | null, style: CellStyle, at: string): Content {
  if (held === null) return { text: "", fault: "the text of this cell is missing in the workbook; type it again" };
  const { fault, ...read } = readText(held, style.isStruck);
  const { text } = read;
  if (/^#(NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|SPILL!|CALC!|GETTING_DATA)$/.test(text))
    return failedContent(text);
  const how = text === "" ? null : faultOfText(style.format);
  if (how !== null) return { ...read, fault: otherwise(text, how) };
  return fault === undefined
    ? read
    : { ...read, fault: `${fault}; allowed is the text that holds${byAnswer(at, "9")}` };
}

/** The line of the job that says what is meant. */
function byAnswer(at: string, example: string): string {
  return `, in the cell or in the job, as cells: { ${at}: ${example} }`;
}

function failedContent(text: string): Content {
  return { text, fault: `a formula failed here (${text}); allowed is a value` };
}

function otherwise(text: string, how: string): string {
  return `${text} is held here and ${how}; allowed is a number format without letters or %, or the unit typed in the cell`;
}

function madeDate(day: Day | null, text: string, at: string): string {
  const date = day === null ? text : dayText(day);
  const meant = day === null ? [] : fractionsOf(day);
  const question = meant.length === 0 ? ";" : `: ${meant.join(" or ")}?`;
  const allowed = `what is meant in the job, as cells: { ${at}: ${meant[0] ?? "3/4"} }`;
  return `the spreadsheet made a date of what was typed here (${date})${question} allowed is ${allowed}, or the column formatted as text and the value typed again`;
}

const NUMBER = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d{1,3})?$/i;

function numberContent({ value, isFormula }: SheetCell, { format }: CellStyle, from1904: boolean, at: string): Content {
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
      return dateContent(number, from1904, at);
    case "otherwise":
      return { text: held, fault: otherwise(held, shown.how) };
  }
}

function dateContent(serial: number, from1904: boolean, at: string): Content {
  const day = dayOf(serial, from1904);
  return { text: day === null ? "a date" : dayText(day), fault: madeDate(day, "a date", at) };
}

/** 15 digits, as a spreadsheet shows at most; no exponent. */
function shortestDecimal(value: number): string {
  const rounded = Number(value.toPrecision(15));
  const text = String(rounded);
  return text.includes("e") ? rounded.toFixed(20).replace(/\.?0+$/, "") : text;
}
