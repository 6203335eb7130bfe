/** What every spreadsheet asks of its reader: a row of headings, units in their brackets, stray cells, cells by their form. */
import type { Finding } from "../diagnostics/finding.js";
import { allowedOrNearest, nearestWord } from "../diagnostics/nearest.js";
import { columnLetters, placeOfCell } from "../readers/cell-place.js";
import type { Cell, Table } from "../readers/inputs.js";
import type { SourceNode, SourcePlace } from "../readers/source.js";
import { errorAt } from "../readers/source.js";
import type { Unit } from "../units/index.js";
import type { CellForm } from "./cell-forms.js";

/** What a column is called and how its cells are read. */
export interface SheetHeading {
  readonly name: string;
  /** length: one length a cell, so that a unit in the heading's brackets holds for bare numbers. */
  readonly measure: "length" | "lengths" | "none";
  readonly form: CellForm;
}

/** The headings that a kind of spreadsheet has. */
export interface HeadingSet<H extends SheetHeading> {
  readonly all: readonly H[];
  find(text: string): H | undefined;
  /** Rows that hold something, at most. */
  readonly mostRows: number;
}

/** A column of a sheet, counted from 0, under the heading that was found for it. */
export interface Column<H extends SheetHeading> {
  readonly index: number;
  readonly heading: H;
  /** Unit in the heading's brackets, where there is one. */
  readonly unit: string | null;
}

/** One row with its cells under their headings. */
export interface SheetRow<H extends SheetHeading> {
  readonly place: SourcePlace;
  readonly values: readonly { readonly heading: H; readonly node: SourceNode }[];
}

const HEADING_ROWS = 20;
/** Unknown headings, and columns without a heading, that are told one by one. */
const MOST_UNKNOWN = 50;
/** So many faults end the reading. */
const MOST_FAULTY = 1000;
/** A number without a unit; an elevation may have `EL.` before it. */
const BARE = /^(el(ev)?\.?)?[\d\s./+-]+$/i;
const BLANK = new Set(["", "-", "\u2013", "\u2014"]);

/** Rows of a spreadsheet with the cell that each value stands in, and everything that is wrong with them. */
export interface SheetReading<H extends SheetHeading> {
  readonly rows: readonly SheetRow<H>[];
  readonly findings: readonly Finding[];
  /** Letters of the column under a heading of this name; null where there is none. */
  readonly columnOf: (name: string | null) => string | null;
}

/** Reads a spreadsheet. `isFirst` tells the heading that every such sheet has; `wanted` names some of them. */
export function readSheet<H extends SheetHeading>(
  table: Table,
  file: string,
  unit: Unit,
  headings: HeadingSet<H>,
  isFirst: (heading: H) => boolean,
  wanted: string,
): SheetReading<H> {
  const start = findHeadingRow(table, headings, isFirst);
  if (start === null) {
    const message = `no row of headings; allowed is a row that has ${wanted}`;
    return { ...NO_ROWS, findings: [errorAt({ file, line: 1, column: 1 }, "no-headings", message)] };
  }
  const reading = new Reading(table.sheet, file, unit, headings);
  const columns = reading.readHeadings(table.rows[start] ?? []);
  const rows: SheetRow<H>[] = [];
  for (let index = start + 1; index < table.rows.length && reading.findings.length < MOST_FAULTY; index++) {
    const row = reading.takeRow(table.rows[index] ?? [], columns, index + 1);
    if (row !== null) rows.push(row);
    if (rows.length > headings.mostRows) return tooManyRows({ file, line: index + 1, column: 1 }, headings.mostRows);
  }
  reading.finish(table.rows[start] ?? []);
  const letters = new Map(columns.map(({ index, heading }) => [heading.name, columnLetters(index + 1)]));
  return { rows, findings: reading.findings, columnOf: (name) => letters.get(name ?? "") ?? null };
}

const NO_ROWS = { rows: [], columnOf: () => null } as const;

function tooManyRows(place: SourcePlace, most: number): SheetReading<never> {
  const message = `the sheet has more than ${most} rows that hold something; at most ${most} are read`;
  return { ...NO_ROWS, findings: [errorAt(place, "too-many-rows", message)] };
}

/** The first row with the first heading among the first rows: a print's title may stand above it. */
function findHeadingRow<H extends SheetHeading>(
  table: Table,
  headings: HeadingSet<H>,
  isFirst: (heading: H) => boolean,
): number | null {
  const known = (cells: readonly Cell[]) =>
    cells.map(({ text }) => headings.find(text)).filter((heading) => heading !== undefined);
  const row = table.rows
    .slice(0, HEADING_ROWS)
    .map(known)
    .findIndex((found) => found.some(isFirst) && found.length > 1);
  return row < 0 ? null : row;
}

class Reading<H extends SheetHeading> {
  readonly findings: Finding[] = [];
  private readonly refusedColumns = new Set<number>();
  private unknown = 0;
  private stray = 0;

  constructor(
    private readonly sheet: string,
    private readonly file: string,
    private readonly unit: Unit,
    private readonly headings: HeadingSet<H>,
  ) {}

  readHeadings(cells: readonly Cell[]): Column<H>[] {
    const seen = new Set<H>();
    const columns = cells.flatMap((cell, index) => {
      if (cell.text === "") return [];
      const heading = this.headings.find(cell.text);
      if (heading === undefined) this.refuseHeading(cell);
      else if (seen.has(heading)) this.refuse(cell, "heading-twice", `the heading ${heading.name} stands twice`);
      if (heading === undefined || seen.has(heading)) {
        this.refusedColumns.add(index);
        return [];
      }
      seen.add(heading);
      return [{ index, heading, unit: this.readUnit(cell, heading) }];
    });
    this.tellMore(this.unknown, cells, "unknown-heading", "headings are not known");
    return columns;
  }

  private tellMore(count: number, cells: readonly Cell[], code: string, words: string): void {
    const [first] = cells;
    if (count <= MOST_UNKNOWN || first === undefined) return;
    this.refuse({ ...first, column: 1 }, code, `${count - MOST_UNKNOWN} more ${words}`);
  }

  /** The nearest known name is looked for a few times only; of more unknown headings their number is told. */
  private refuseHeading(cell: Cell): void {
    this.unknown += 1;
    if (this.unknown > MOST_UNKNOWN) return;
    const names = this.headings.all.map(({ name }) => name);
    const message = `"${cell.text}" is not a known heading; ${allowedOrNearest(cell.text, names, "README")}`;
    this.refuse(cell, "unknown-heading", message, nearestWord(cell.text, names));
  }

  private refuse(cell: Cell, code: string, message: string, near?: string): void {
    const place = placeOfCell(this.file, this.sheet, cell);
    this.findings.push(errorAt(place, code, message, near === undefined ? undefined : `did you mean ${near}?`));
  }

  /** A unit in brackets holds for the bare numbers below it; columns of several lengths name theirs in the cells. */
  private readUnit(cell: Cell, heading: H): string | null {
    const unit = /[([]\s*(in|inch|inches|ft|feet|mm|cm|m|"|')\.?\s*[)\]]/i.exec(cell.text)?.[1]?.toLowerCase();
    if (unit === undefined || heading.measure === "none") return null;
    const isJobUnit = unit === this.unit || (this.unit === "in" && ["inch", "inches", '"'].includes(unit));
    if (heading.measure === "length") return unit;
    if (isJobUnit) return null;
    this.refuse(
      cell,
      "heading-unit",
      `${heading.name} in ${unit} beside units ${this.unit}; allowed is the job's unit, or a unit in each cell`,
    );
    return null;
  }

  /** null for a row that is blank under the headings. */
  takeRow(cells: readonly Cell[], columns: readonly Column<H>[], row: number): SheetRow<H> | null {
    const filled = columns.flatMap((column) => {
      const cell = cells[column.index];
      return cell === undefined || BLANK.has(cell.text) ? [] : [{ column, cell }];
    });
    if (filled.length > 0) this.refuseStray(cells, columns, row);
    const first = filled[0];
    if (first === undefined) return null;
    const place: SourcePlace = placeOfCell(this.file, this.sheet, first.cell, `row ${row}`);
    const values = filled.map(({ column: under, cell }) => ({
      heading: under.heading,
      node: this.readCell(under, cell, row),
    }));
    return { place, values };
  }

  /** Text under no heading, told once a column. */
  private refuseStray(cells: readonly Cell[], columns: readonly Column<H>[], row: number): void {
    cells.forEach((cell, index) => {
      if (BLANK.has(cell.text) || this.refusedColumns.has(index) || columns.some((column) => column.index === index))
        return;
      this.refusedColumns.add(index);
      this.stray += 1;
      if (this.stray > MOST_UNKNOWN) return;
      const place = placeOfCell(this.file, this.sheet, cell, `row ${row}`);
      this.findings.push(errorAt(place, "no-heading", `"${cell.text}" stands in a column without a heading`));
    });
  }

  /** Tells how many more columns without a heading hold something, and whether all rows were read. */
  finish(headings: readonly Cell[]): void {
    this.tellMore(this.stray, headings, "no-heading", "columns without a heading hold something");
    const [first] = headings;
    if (this.findings.length < MOST_FAULTY || first === undefined) return;
    const words = `${MOST_FAULTY} and more faults: what stands further below is not read`;
    this.refuse({ ...first, column: 1 }, "many-faults", words);
  }

  private readCell({ heading, unit }: Column<H>, cell: Cell, row: number): SourceNode {
    const place = placeOfCell(this.file, this.sheet, cell, `row ${row} ${heading.name}`);
    const fallback: SourceNode = { kind: "scalar", text: cell.text, style: "quoted", place };
    if (cell.fault !== undefined) {
      this.findings.push(errorAt(place, "cell-fault", cell.fault));
      return fallback;
    }
    const text = unit !== null && BARE.test(cell.text) ? `${cell.text} ${unit}` : cell.text;
    const reading = heading.form(text, place, this.unit);
    if (reading.ok) return reading.node;
    this.findings.push(errorAt(place, "cell-fault", reading.message));
    return fallback;
  }
}
