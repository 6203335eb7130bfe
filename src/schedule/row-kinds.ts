/** What each row of a table is: a base or several, more rods for the base above, more words for its note. */
import type { Cell } from "../readers/inputs.js";
import type { SheetCell, TableRow } from "./sheet-cell.js";
import { isOfGroup } from "./sheet-cell.js";

/** A row without a mark that fills what a base alone has is asked about; it is read as more rods meanwhile. */
export type RowKind = "base" | "more rods" | "asked" | "more words";

/** A row with what it is. */
export interface KnownRow extends TableRow {
  readonly kind: RowKind;
  /** Marks of the bases that it stands for; of a row of more rods, none. */
  readonly marks: readonly string[];
  readonly markCell: SheetCell | null;
}

/** Every row with its kind. While no column is known to hold the marks, each row is taken for a base. */
export function rowKinds(rows: readonly TableRow[], hasMarks = true): readonly KnownRow[] {
  if (!hasMarks) return rows.map((row) => ({ ...row, kind: "base", marks: [], markCell: null }));
  const known: KnownRow[] = [];
  let above: KnownRow | null = null;
  for (const row of rows) {
    const next = knownRow(row, above);
    known.push(next);
    if (next.kind === "base") above = next;
  }
  return known;
}

function knownRow(row: TableRow, above: KnownRow | null): KnownRow {
  const markCell = row.cells.find((cell) => isMark(cell) && saysSomething(cell)) ?? null;
  const isRepeated = markCell !== null && isSameCell(above?.markCell?.cell, markCell.cell);
  if (markCell !== null && !isRepeated) return { ...row, kind: "base", marks: marksIn(markCell), markCell };
  if (above === null) return { ...row, kind: "base", marks: [], markCell: null };
  const own = isRepeated ? withoutRepeated(row, above) : row;
  return { ...own, kind: kindWithoutMark(own), marks: [], markCell: null };
}

/** Of cells merged down over several rows, what holds for the whole base is taken in the first of them alone. */
function withoutRepeated(row: TableRow, above: TableRow): TableRow {
  const isFirst = ({ cell }: SheetCell) => above.cells.some((other) => isSameCell(other.cell, cell));
  return { ...row, cells: row.cells.filter((cell) => isGroupColumn(cell.column) || !isFirst(cell)) };
}

function isSameCell(a: Cell | undefined, b: Cell): boolean {
  return a?.line === b.line && a.column === b.column;
}

function isGroupColumn({ role }: SheetCell["column"]): boolean {
  return role.kind === "value" && isOfGroup(role.key);
}

function isMark({ column: { role } }: SheetCell): boolean {
  return role.kind === "value" && role.key === "mark";
}

/** True for a cell that is read for a value and is not a sign for none. */
export function saysSomething({ reading }: SheetCell): boolean {
  return reading !== null && reading.kind !== "blank";
}

function marksIn({ reading }: SheetCell): readonly string[] {
  if (reading?.kind !== "value") return [];
  return reading.parts.flatMap(({ key, node }) => (key === "mark" && node.kind === "scalar" ? [node.text] : []));
}

/** Keys that make a row without a mark look like a base whose mark was forgotten. */
const OF_WHOLE_BASE = 3;

function kindWithoutMark({ cells }: TableRow): RowKind {
  const keys = cells.filter(saysSomething).map(({ column: { role } }) => (role.kind === "value" ? role.key : "note"));
  if (keys.every((key) => key === "note")) return "more words";
  const whole = keys.filter((key) => key !== "note" && !isOfGroup(key));
  return whole.includes("quantity") || whole.length >= OF_WHOLE_BASE ? "asked" : "more rods";
}
