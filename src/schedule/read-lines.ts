/** What was understood of every cell of a sheet, a line each, in the order of the sheet. */
import { nameCell } from "../readers/cell-place.js";
import type { Cell, Table } from "../readers/inputs.js";
import type { Unit } from "../units/index.js";
import type { FoundTable, ReadLine } from "./model.js";
import { leavesOf } from "./node-text.js";
import { HELD_AGAINST } from "./settle-pattern.js";
import type { NotTaken, ReadColumn, SheetCell, Taken } from "./sheet-cell.js";

/** What became of a cell, for the marks that it is about. */
export type CellFate =
  | { readonly kind: "taken"; readonly taken: Taken; readonly key: string }
  | { readonly kind: "kept"; readonly from: SheetCell; readonly words: string; readonly isInNote: boolean }
  | ({ readonly kind: "not taken" } & NotTaken);

/** Fates of the cells of one base. */
export interface BaseFates {
  readonly mark: string;
  /** Set where its row stands for several bases. */
  readonly isShared: boolean;
  readonly fates: readonly CellFate[];
}

/** What the lines are made of. */
export interface LineSource {
  readonly table: Table;
  readonly found: FoundTable;
  readonly columns: readonly ReadColumn[];
  readonly bases: readonly BaseFates[];
  readonly unit: Unit;
  /** Keys whose values are lengths. */
  readonly isLength: (key: string) => boolean;
}

/** A line for all that was taken, and one for every other cell that holds something. */
export function readLines(source: LineSource): readonly ReadLine[] {
  const lines: PlacedLine[] = [];
  const shared = new Map<string, PlacedLine>();
  for (const { mark, isShared, fates } of source.bases) {
    for (const fate of fates)
      for (const line of fateLines(fate, mark, source)) {
        if (isShared) shareLine(shared, line);
        else lines.push(line);
      }
  }
  for (const line of shared.values()) lines.push(line);
  const told = new Set(lines.map(placeNumber));
  for (const line of otherLines(source, told)) lines.push(line);
  return lines.sort(bySheet).map(({ line }) => line);
}

interface PlacedLine {
  readonly row: number;
  readonly column: number;
  readonly line: ReadLine;
}

/** More columns than a sheet has. */
const COLUMNS = 20_000;

function placeNumber({ row, column }: { readonly row: number; readonly column: number }): number {
  return row * COLUMNS + column;
}

/** Bases of one row share its lines, and are named in them. */
function shareLine(lines: Map<string, PlacedLine>, placed: PlacedLine): void {
  const { mark, ...same } = placed.line;
  const key = JSON.stringify(same);
  const known = lines.get(key);
  if (known === undefined) lines.set(key, placed);
  else if (!known.line.mark.split(", ").includes(mark))
    lines.set(key, { ...known, line: { ...known.line, mark: `${known.line.mark}, ${mark}` } });
}

function bySheet(a: PlacedLine, b: PlacedLine): number {
  return a.row - b.row || a.column - b.column;
}

function placed({ line, row = line, column }: Cell, read: ReadLine): PlacedLine {
  return { row, column, line: read };
}

function fateLines(fate: CellFate, mark: string, { unit, isLength }: LineSource): readonly PlacedLine[] {
  const from = fate.kind === "taken" ? fate.taken.from : fate.from;
  const { cell, column } = from;
  const name = from.place.cell ?? "";
  const about = { mark, cell: name, heading: column.heading, written: cell.text };
  if (fate.kind === "taken") {
    const { taken, key } = fate;
    if (taken.key === HELD_AGAINST || taken.origin === "asked" || key.startsWith("check.")) {
      const origin = taken.origin === "asked" ? "asked" : "left out";
      const remark = withCell(
        taken.origin === "asked"
          ? taken.remark
          : taken.remark || "held against the other columns, nothing is taken of it",
        cell,
      );
      return [placed(cell, { ...about, key: "", taken: "", unit: "", origin, remark })];
    }
    return leavesOf(key, taken.node).map(([leaf, text]) =>
      placed(cell, {
        ...{ ...about, key: leaf, taken: text, origin: taken.origin, remark: withCell(taken.remark, cell) },
        unit: isLength(leaf) ? unitOf(text, unit) : "",
      }),
    );
  }
  if (fate.kind === "kept") {
    const why = fate.isInNote ? "kept as a note of the base" : "kept here alone: the note of the base is full";
    const [key, taken] = fate.isInNote ? ["note", fate.words] : ["", ""];
    return [placed(cell, { ...about, key, taken, unit: "", origin: "kept", remark: withCell(why, cell) })];
  }
  const remark = withCell(fate.remark, cell);
  return [placed(cell, { ...about, key: "", taken: "", unit: "", origin: fate.origin, remark })];
}

function withCell(remark: string, { remark: own = "", isHidden }: Cell): string {
  return [remark, own, isHidden === true ? "hidden in the sheet" : ""].filter((words) => words !== "").join("; ");
}

const OWN_UNIT: readonly (readonly [RegExp, string])[] = [
  [/(\d|\s)mm\.?$|^M ?\d/i, "mm"],
  [/(\d|\s)cm\.?$/i, "cm"],
  [/(\d|\s)m$/, "m"],
  [/'-? ?\d.*("|in\.?)?$/, "ft-in"],
  [/('|ft\.?|foot|feet)$/i, "ft"],
  [/("|in\.?|inch(es)?)$/i, "in"],
];

/** The unit that the value itself carries, else the job's. */
function unitOf(text: string, unit: Unit): string {
  return OWN_UNIT.find(([form]) => form.test(text.trim()))?.[1] ?? unit;
}

/** Headings, titles, footnotes, and all that stands outside the table. */
function otherLines({ table, found, columns }: LineSource, told: ReadonlySet<number>): readonly PlacedLine[] {
  const why = new Map(found.leftOut.map(({ cell, why: reason }) => [placeKey(cell), reason]));
  const headings = new Map(columns.map((column) => [placeKey(column.found.cell), column]));
  return table.rows.flatMap((row) =>
    row.flatMap((cell) => {
      if (cell.text.trim() === "" || told.has(placeNumber({ row: cell.row ?? cell.line, column: cell.column })))
        return [];
      const column = headings.get(placeKey(cell));
      const name = nameCell(table.sheet, cell);
      const remark = column === undefined ? (why.get(placeKey(cell)) ?? "outside the table") : headingRemark(column);
      const about = { mark: "", cell: name, heading: column?.heading ?? "", written: cell.text };
      return [placed(cell, { ...about, key: "", taken: "", unit: "", origin: "left out", remark })];
    }),
  );
}

function headingRemark({ role, name, how }: ReadColumn): string {
  switch (role.kind) {
    case "value":
      return how === "" ? `heading: ${name}` : `heading: ${name}; ${how}`;
    case "note":
      return `heading: its cells are kept as notes; ${how}`;
    case "left out":
      return `heading: ${role.why}`;
    case "asked":
      return "heading: what it stands for is asked";
  }
}

function placeKey({ line, column }: Cell): string {
  return `${line}:${column}`;
}
