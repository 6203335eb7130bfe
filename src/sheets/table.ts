/** Tables of short texts under a heading: heavy line under the column names, fine line at the end. */
import { at, group, line, stroke, text } from "./items.js";
import type { SceneItem } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";
import { shorten, textWidth, wrap } from "./text-metrics.js";

/** A piece of the column of tables: its height, and how it is drawn from its upper left corner down. */
export interface Piece {
  readonly height: number;
  readonly draw: (x: number, top: number) => SceneItem;
}

/** Widths are shares of the table's width. */
export interface Column {
  readonly title: string;
  readonly share: number;
  readonly align: "start" | "end";
}

/** A table as text, before it has a width. */
export interface TableText {
  readonly name: string;
  readonly heading: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
  /** Lines under the table. */
  readonly foot: readonly string[];
  /** A line under each row, by index; empty: rows of one line. */
  readonly under: readonly string[];
  /** Rows whose text is bold, by index. */
  readonly strong: ReadonlySet<number>;
}

/** Height of one row, millimetres. */
export function rowHeight(lettering: Lettering): number {
  return lettering.small * 1.8;
}

/** Height of a table's heading and column names together. */
export function headHeight(lettering: Lettering): number {
  return lettering.body * 2 + rowHeight(lettering);
}

/** What a cell keeps clear beside its words: no more than a third of a small letter, for the finest. */
const cellPad = (small: number): number => Math.min(0.8, small * 0.32);

/** A table as a piece of a panel, `width` wide. */
export function tablePiece(table: TableText, width: number, lettering: Lettering): Piece {
  const row = rowHeight(lettering);
  const height = headHeight(lettering) + (table.rows.length + table.under.length + table.foot.length) * row + 1;
  return { height, draw: (x, top) => group(table.name, tableItems(table, width, lettering, x, top)) };
}

/** Width of a table in which no cell is cut short, mm. */
export function leastWidth(table: TableText, { small }: Lettering): number {
  return cellWidths(table, small).reduce((sum, each) => sum + each, 0);
}

/** By column: its widest cell with the pads. A cell that is set to the right takes the room of the empty ones before it. */
function cellWidths({ columns, rows, strong }: TableText, small: number): readonly number[] {
  const widths = columns.map(({ title }) => textWidth(title, small) + 2 * cellPad(small));
  rows.forEach((row, k) => {
    row.forEach((words, i) => {
      if (columns[i]?.align === "end" && row[i - 1] === "") return;
      widths[i] = Math.max(widths[i] ?? 0, textWidth(words, small, strong.has(k)) + 2 * cellPad(small));
    });
  });
  return widths;
}

/** Columns as they are shared out where every cell fits; else, where there is room for all, as wide as their cells and a like share more. */
function fitted(table: TableText, width: number, small: number): readonly Column[] {
  const { columns } = table;
  const widths = cellWidths(table, small);
  const spare = width - widths.reduce((sum, each) => sum + each, 0);
  if (spare < 0 || widths.every((each, i) => each <= (columns[i]?.share ?? 0) * width)) return columns;
  return columns.map((column, i) => ({ ...column, share: ((widths[i] ?? 0) + spare / columns.length) / width }));
}

function tableItems(
  table: TableText,
  width: number,
  lettering: Lettering,
  x: number,
  top: number,
): readonly SceneItem[] {
  const row = rowHeight(lettering);
  const { small } = lettering;
  const names = top - lettering.body * 2;
  const body = names - row;
  const columns = fitted(table, width, small);
  const cells = (words: readonly string[], y: number, bold: boolean) =>
    rowItems(columns, words, x, y, width, small, bold);
  const base = (y: number) => y - (row + small) / 2;
  const lines = table.under.length > 0 ? 2 : 1;
  const end = body - table.rows.length * row * lines;
  return [
    ...headingItems(table.heading, x, top, width, lettering),
    ...cells(
      table.columns.map(({ title }) => title),
      base(names),
      false,
    ),
    stroke("table", line(at(x, body), at(x + width, body))),
    ...table.rows.flatMap((words, i) => cells(words, base(body - i * row * lines), table.strong.has(i))),
    ...table.under.map((words, i) =>
      text(
        "table",
        shorten(words, width - 4 * cellPad(small) - small, small),
        at(x + cellPad(small) + small, base(body - (2 * i + 1) * row) + row * 0.12),
        small,
      ),
    ),
    stroke("table", line(at(x, end), at(x + width, end))),
    ...table.foot.map((words, i) =>
      text(
        "table",
        shorten(words, width - 2 * cellPad(small), small),
        at(x + cellPad(small), base(end - i * row)),
        small,
      ),
    ),
  ];
}

/** A bold heading over a heavy line: takes twice the body letter. One that is too long is lettered small. */
export function headingItems(
  words: string,
  x: number,
  top: number,
  width: number,
  lettering: Lettering,
): readonly SceneItem[] {
  const y = top - lettering.body * 2;
  const room = width - cellPad(lettering.small);
  const letter = textWidth(words, lettering.body, true) <= room ? lettering.body : lettering.small;
  return [
    text("heading", shorten(words, room, letter, true), at(x, y + letter * 0.55), letter, { bold: true }),
    stroke("table-heavy", line(at(x, y), at(x + width, y))),
  ];
}

/** The cells of a row; an empty one gives its room to the next, where that is set to the right. */
function rowItems(
  columns: readonly Column[],
  words: readonly string[],
  x: number,
  y: number,
  width: number,
  letter: number,
  bold: boolean,
): readonly SceneItem[] {
  let left = x;
  let spare = 0;
  return columns.flatMap(({ share, align }, i) => {
    const room = share * width - 2 * cellPad(letter) + (align === "end" ? spare : 0);
    const place = align === "start" ? left + cellPad(letter) : left + share * width - cellPad(letter);
    left += share * width;
    const cell = shorten(words[i] ?? "", room, letter, bold);
    spare = cell === "" ? spare + share * width : 0;
    return cell === "" ? [] : [text("table", cell, at(place, y), letter, { anchor: align, bold })];
  });
}

/** Paragraphs under a heading, each after a dash-free hanging indent of its number. */
export function notesPiece(
  name: string,
  heading: string,
  notes: readonly string[],
  width: number,
  lettering: Lettering,
): Piece {
  const { small } = lettering;
  const indent = small * 2.4;
  const paragraphs = notes.map((note) => wrap(note, width - indent, small));
  const row = small * 1.6;
  const lines = paragraphs.reduce((sum, paragraph) => sum + paragraph.length, 0);
  const height = lettering.body * 2 + lines * row + 2;
  const draw = (x: number, top: number) => {
    let y = top - lettering.body * 2 - 0.6;
    const items = paragraphs.flatMap((paragraph, i) =>
      paragraph.flatMap((words, k) => {
        y -= row;
        const number = k === 0 ? [text("note", `${i + 1}`, at(x, y + small * 0.3), small)] : [];
        return [...number, text("note", words, at(x + indent, y + small * 0.3), small)];
      }),
    );
    return group(name, [...headingItems(heading, x, top, width, lettering), ...items]);
  };
  return { height, draw };
}
