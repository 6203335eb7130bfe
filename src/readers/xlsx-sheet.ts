/** The XML of a sheet -> its cells as they stand in the file, and which rows and columns are hidden. */
import { columnNumber } from "./cell-place.js";
import type { Merge } from "./inputs.js";
import { type CellText, isOn, TextRuns } from "./xlsx-styles.js";
import { scanXml, type XmlAttributes } from "./xml-scan.js";

/** A spreadsheet's own limits. */
export const [MOST_ROWS, MOST_COLUMNS] = [1_048_576, 16_384];

/** A cell that holds something; rows and columns count from 1. */
export interface SheetCell {
  readonly row: number;
  readonly column: number;
  /** s: a shared text by number; str, inlineStr: a text; b, d, e; n: a number. */
  readonly type: string;
  readonly style: number;
  /** What stands in `v`; null where there is none. */
  readonly value: string | null;
  /** The text of an `inlineStr`. */
  readonly inline: CellText | null;
  readonly isFormula: boolean;
}

/** Rows or columns from `first` to `last`. */
export interface Span {
  readonly first: number;
  readonly last: number;
}

/** What a sheet's XML holds. */
export interface SheetContent {
  /** Row by row, each from left to right; empty cells are left out. */
  readonly cells: readonly SheetCell[];
  readonly hiddenRows: readonly number[];
  readonly hiddenColumns: readonly Span[];
  /** As the sheet lists them; they may reach beyond the cells that hold something. */
  readonly merges: readonly Merge[];
}

/** Why a sheet is not read: it is no whole XML, its cells do not ascend, lie outside a sheet, or are too many. */
export type SheetFault = "damaged" | "disorder" | "outside" | "too-many";

/** Reads a sheet's XML; `most` cells at most. */
export function readSheetXml(xml: string, most: number): SheetContent | SheetFault {
  const reading = new SheetReading(most);
  const isWhole = scanXml(xml, reading);
  if (reading.fault !== null) return reading.fault;
  return isWhole ? reading : "damaged";
}

const MERGED = /^\$?([A-Z]{1,3})\$?(\d{1,7}):\$?([A-Z]{1,3})\$?(\d{1,7})$/i;

class SheetReading implements SheetContent {
  readonly cells: SheetCell[] = [];
  readonly hiddenRows: number[] = [];
  readonly hiddenColumns: Span[] = [];
  readonly merges: Merge[] = [];
  fault: SheetFault | null = null;
  private row = 0;
  private column = 0;
  private readonly inline = new TextRuns();
  private isInline = false;
  private isValue = false;
  private type = "n";
  private style = 0;
  private value: string | null = null;
  private isFormula = false;
  private inCell = false;

  constructor(private readonly most: number) {}

  open(name: string, attributes: XmlAttributes): void {
    if (name === "row") this.openRow(attributes);
    else if (name === "c") this.openCell(attributes);
    else if (name === "col") this.openColumns(attributes);
    else if (name === "mergeCell") this.takeMerge(attributes.get("ref") ?? "");
    else if (!this.inCell) return;
    else if (name === "v") this.openValue();
    else if (name === "f") this.isFormula = true;
    else if (name === "is") this.isInline = true;
    else if (this.isInline) this.inline.open(name, attributes);
  }

  close(name: string): void {
    if (name === "c") this.closeCell();
    else if (name === "v") this.isValue = false;
    else if (this.isInline) this.inline.close(name);
  }

  text(text: string): void {
    if (this.isValue) this.value = `${this.value ?? ""}${text}`;
    else if (this.isInline) this.inline.text(text);
  }

  private openRow(attributes: XmlAttributes): void {
    const row = placeOf(attributes.get("r"), this.row + 1);
    if (row <= this.row) this.fault ??= "disorder";
    if (!(row <= MOST_ROWS)) this.fault ??= "outside";
    this.row = row;
    this.column = 0;
    if (isOn(attributes.get("hidden")) || Number(attributes.get("ht") ?? 1) === 0) this.hiddenRows.push(row);
  }

  private openColumns(attributes: XmlAttributes): void {
    if (!isOn(attributes.get("hidden")) && Number(attributes.get("width") ?? 1) !== 0) return;
    this.hiddenColumns.push({ first: Number(attributes.get("min")), last: Number(attributes.get("max")) });
  }

  /** `A1:C2`; what is no range of cells is passed over. */
  private takeMerge(range: string): void {
    const [, from = "", top = "", to = "", bottom = ""] = MERGED.exec(range) ?? [];
    if (from === "" || this.merges.length >= this.most) return;
    this.merges.push({ top: Number(top), left: columnNumber(from), bottom: Number(bottom), right: columnNumber(to) });
  }

  /** A cell without a place stands right of the one before. */
  private openCell(attributes: XmlAttributes): void {
    const place = attributes.get("r");
    const [, letters = "", digits = ""] = /^([A-Z]{1,3})(\d{1,7})$/i.exec(place ?? "") ?? [];
    const column = place === undefined ? this.column + 1 : columnNumber(letters);
    if (place !== undefined && (letters === "" || Number(digits) > MOST_ROWS)) this.fault ??= "outside";
    else if (column > MOST_COLUMNS) this.fault ??= "outside";
    else if (column <= this.column || (place !== undefined && Number(digits) !== this.row)) this.fault ??= "disorder";
    this.column = column;
    this.inCell = true;
    this.type = attributes.get("t") ?? "n";
    this.style = Number(attributes.get("s") ?? 0);
    this.value = null;
    this.isFormula = false;
  }

  private openValue(): void {
    this.isValue = true;
    this.value = "";
  }

  private closeCell(): void {
    const inline = this.isInline ? this.inline.take() : null;
    const { row, column, type, style, value, isFormula } = this;
    if (value !== null || inline !== null || isFormula)
      this.cells.push({ row, column, type, style, value, inline, isFormula });
    if (this.cells.length > this.most) {
      this.fault ??= "too-many";
      this.cells.length = 0;
    }
    this.isInline = false;
    this.inCell = false;
  }
}

function placeOf(text: string | undefined, otherwise: number): number {
  if (text === undefined) return otherwise;
  return /^\d{1,7}$/.test(text) ? Number(text) : Number.NaN;
}
