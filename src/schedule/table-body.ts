/** The rows below the headings: data, or what stands between and below it. */
import type { Cell } from "../readers/inputs.js";
import { NoteReading } from "./footnotes.js";
import type { HeadingColumn } from "./heading-columns.js";
import type { LeftOut } from "./model.js";
import type { SheetGrid } from "./sheet-grid.js";
import { hasFigure, NOTE_START, NOTES_HEAD, oneLine, plainText } from "./sheet-words.js";

/** Where a body's rows may stand; `last` is the last of them. */
export interface BodyRange {
  readonly grid: SheetGrid;
  readonly columns: readonly HeadingColumn[];
  readonly mark: number;
  readonly first: number;
  readonly last: number;
  /** Texts of the rows of headings, by column: what is the same again further below is the next page of a print. */
  readonly headings: readonly ReadonlyMap<number, string>[];
}

/** What was read of the rows below the headings. */
export interface Body {
  readonly rows: readonly (readonly Cell[])[];
  readonly leftOut: readonly LeftOut[];
  readonly notes: ReadonlyMap<string, string>;
}

/** Reads the rows from `first` to `last`. */
export function readBody(range: BodyRange): Body {
  const reading = new BodyReading(range);
  for (let row = range.first; row <= range.last; row++) reading.takeRow(row);
  return reading.finish();
}

interface Filled {
  readonly column: number;
  readonly text: string;
  readonly cell: Cell;
  /** Columns of the table that it is merged over. */
  readonly width: number;
}

class BodyReading {
  private readonly rows: (readonly Cell[])[] = [];
  private readonly leftOut: LeftOut[] = [];
  private readonly notes = new NoteReading();
  private readonly shapes: ReadonlySet<string>;
  private inNotes = false;
  private isAfterBlank = true;
  private isAfterHeadings = false;

  constructor(private readonly range: BodyRange) {
    this.shapes = markShapes(range);
  }

  takeRow(row: number): void {
    if (this.isSurelyData(row)) this.takeData(row);
    else this.takeOther(row);
  }

  private takeOther(row: number): void {
    const filled = this.filledIn(row);
    if (filled.length === 0) {
      this.isAfterBlank = true;
      this.notes.end();
      return;
    }
    for (const { column } of filled) this.range.grid.take(row, column);
    const why = this.whyLeftOut(filled, row);
    if (why === null) this.rows.push(this.dataRow(row));
    else for (const { cell } of filled) this.leftOut.push({ cell, why });
    this.isAfterBlank = false;
  }

  /** A mark with a figure and three more filled cells are no note, no title and no headings: most rows need no closer look. */
  private isSurelyData(row: number): boolean {
    const { grid, mark, columns } = this.range;
    const own = grid.text(row, mark);
    if (this.isAfterHeadings || own.length > 12 || !hasFigure(own) || /\s|total/i.test(own)) return false;
    let filled = 0;
    for (const { index } of columns) {
      if (grid.text(row, index) === "") continue;
      if (grid.cell(row, index).isStruck === true) return false;
      filled++;
    }
    return filled > 3;
  }

  private takeData(row: number): void {
    for (const { index } of this.range.columns) this.range.grid.take(row, index);
    this.rows.push(this.dataRow(row));
    this.inNotes = false;
    this.isAfterBlank = false;
    this.notes.end();
  }

  finish(): Body {
    return { rows: this.rows, leftOut: this.leftOut, notes: this.notes.finish() };
  }

  private filledIn(row: number): readonly Filled[] {
    const { grid, columns } = this.range;
    const filled: Filled[] = [];
    columns.forEach(({ index: column }, order) => {
      const text = grid.text(row, column);
      if (text === "") return;
      const right = grid.span(row, column)?.right ?? column;
      let width = 1;
      while ((columns[order + width]?.index ?? Number.POSITIVE_INFINITY) <= right) width++;
      filled.push({ column, text: oneLine(text), cell: grid.cell(row, column), width });
    });
    return filled;
  }

  /** null for data. */
  private whyLeftOut(filled: readonly Filled[], row: number): string | null {
    if (filled.every(({ cell }) => cell.isStruck === true)) return "struck out";
    if (filled.every(({ text }) => /^[-\u2013\u2014_=.*\s]+$/.test(text))) return "a line without values";
    if (this.isHeadingsAgain(filled)) {
      [this.inNotes, this.isAfterHeadings] = [false, true];
      return "the headings again";
    }
    const isFirst = this.isAfterHeadings || this.rows.length === 0;
    this.isAfterHeadings = false;
    if (this.goesOnBelowMark(row)) return null;
    if (this.isTotal(filled)) return "a total";
    if (this.isNote(filled)) return this.takeNote(filled);
    if (this.isSection(filled, isFirst)) return "stands over the rows below it: no base";
    this.inNotes = false;
    return null;
  }

  /** True where the mark is merged down into the row. */
  private goesOnBelowMark(row: number): boolean {
    const { grid, mark } = this.range;
    const span = grid.span(row, mark);
    return span !== null && span.top < row && grid.text(span.top, span.left) !== "";
  }

  /** As many texts as not the same as in a row of headings, under the same columns. */
  private isHeadingsAgain(filled: readonly Filled[]): boolean {
    if (filled.length < 2 && !this.isAfterHeadings) return false;
    return this.range.headings.some((texts) => {
      const same = filled.filter(({ column, text }) => texts.get(column) === plainText(text)).length;
      return same === filled.length || (same >= 3 && same * 5 >= filled.length * 4);
    });
  }

  private isTotal(filled: readonly Filled[]): boolean {
    const [first] = filled;
    const mark = filled.find(({ column }) => column === this.range.mark);
    const isTotal = ({ text }: Filled) => /^(?:sub-?\s*|grand\s*)?totals?\b/i.test(text);
    if (first === undefined || (mark !== undefined && !isTotal(mark))) return false;
    return mark !== undefined || isTotal(first) || (filled.length <= 2 && filled.some(isTotal));
  }

  private isNote(filled: readonly Filled[]): boolean {
    const [first, second] = filled;
    if (first === undefined || filled.length > 3) return false;
    const isMarkFree = first.column === this.range.mark || !filled.some(({ column }) => column === this.range.mark);
    if (!isMarkFree || this.shapes.has(shapeOf(first.text))) return false;
    if (second === undefined) return this.isLoneNote(first);
    if (NOTES_HEAD.test(first.text)) return true;
    if (NOTE_START.test(`${first.text} `)) return filled.length === 2 && /\p{L}{2}.*\s/u.test(second.text);
    if (filled.length > 2) return false;
    if (/:\s*$/.test(first.text) || isSentence(first.text)) return true;
    return this.inNotes && !filled.some(({ text }) => hasFigure(text));
  }

  private isLoneNote(only: Filled): boolean {
    if (this.isMarkAlone(only) && (!this.inNotes || this.isAfterBlank)) return false;
    return this.inNotes || NOTES_HEAD.test(only.text) || NOTE_START.test(only.text) || isSentence(only.text);
  }

  private takeNote(filled: readonly Filled[]): string {
    this.inNotes = true;
    this.notes.take(filled.map(({ cell }) => cell));
    return "a note";
  }

  /** One text for the whole width: what belongs to a base stands beside its mark or below a filled cell. */
  private isSection(filled: readonly Filled[], isFirst: boolean): boolean {
    const [only, ...others] = filled;
    if (only === undefined || others.length > 0 || this.isMarkAlone(only)) return false;
    const { columns, mark } = this.range;
    if (only.width * 2 > columns.length && columns.length > 1) return true;
    if (only.column === mark || only.column === columns[0]?.index) return !/^\d+$/.test(only.text);
    return (this.isAfterBlank || isFirst) && !hasFigure(only.text);
  }

  /** A base of which nothing but its mark is written, or that it is not used. */
  private isMarkAlone({ column, text, width }: Filled): boolean {
    if (column !== this.range.mark || width > 1) return false;
    if (this.shapes.has(shapeOf(text))) return true;
    const [head = "", ...rest] = text.split(/[\s,;:&(-]+/).filter((part) => part !== "");
    if (!this.looksLikeMark(head)) return false;
    const isList = rest.every((part) => this.looksLikeMark(part) || /^(?:and|to|thru|through|\d{1,4})$/i.test(part));
    return isList || (rest.length <= 4 && !text.includes(":"));
  }

  private looksLikeMark(word: string): boolean {
    return this.shapes.has(shapeOf(word)) || /^[a-z]{1,4}[-.]?\d{1,4}[a-z]?$/i.test(word);
  }

  private dataRow(row: number): readonly Cell[] {
    return this.range.columns.map(({ index }) => this.dataCell(row, index));
  }

  private dataCell(row: number, column: number): Cell {
    const { grid } = this.range;
    const span = grid.span(row, column);
    const own = grid.cell(row, column);
    if (span === null) return own;
    const first = grid.cell(span.top, span.left);
    const [from, to] = [grid.place(span.top, span.left), grid.place(span.bottom, span.right)];
    if (column > span.left) return { ...own, text: "", remark: joinRemarks(own.remark, `merged into ${from}`) };
    return { ...first, remark: joinRemarks(first.remark, `merged ${from} to ${to}`) };
  }
}

function joinRemarks(before: string | undefined, remark: string): string {
  return before === undefined || before === "" ? remark : `${before}; ${remark}`;
}

/** More than four words; a list of marks is none. */
function isSentence(text: string): boolean {
  return text.length > 30 && text.split(/\s+/).filter((word) => /\p{L}{2}/u.test(word) && !hasFigure(word)).length > 4;
}

/** B7 and B12 have one shape, MAIN and A have not. */
function shapeOf(text: string): string {
  if (text.length > 30) return text;
  const letters = text.toUpperCase().replace(/\d+/g, "9");
  return /^\p{L}+$/u.test(letters) && letters.length > 2 ? letters : letters.replace(/\p{L}+/gu, "A");
}

/** Shapes of the marks in rows of which more than two cells are filled. */
function markShapes({ grid, columns, mark, first, last }: BodyRange): ReadonlySet<string> {
  const shapes = new Set<string>();
  const least = Math.min(3, columns.length);
  for (let row = first; row <= last && shapes.size < 1000; row++) {
    const text = oneLine(grid.text(row, mark));
    if (text === "" || text.length > 12 || /\s|:$/.test(text) || NOTES_HEAD.test(text)) continue;
    let filled = 0;
    for (const { index } of columns) if (grid.text(row, index) !== "" && ++filled >= least) break;
    if (filled >= least) shapes.add(shapeOf(text));
  }
  return shapes;
}
