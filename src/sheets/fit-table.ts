/** Tables set to the width they are given: columns as wide as their words need, longer words in further lines. */

import { greatestOf } from "../units/extremes.js";
import type { Lettering } from "./sheet-sizes.js";
import type { TableText } from "./table.js";
import { textWidth, wrap } from "./text-metrics.js";

/** A table whose columns are set, its rows not yet broken into lines. */
export interface FittedTable {
  readonly table: TableText;
  /** Lines of row `i`, each a list of cells. */
  linesOf(row: number): readonly (readonly string[])[];
  /** Lines of the foot. */
  readonly foot: readonly string[];
}

/** Beside the words of a cell, in cap heights: what the table itself keeps clear, and a little. */
const PAD = 0.66;
/** A cell of no more letters than this is a name or a figure: it is broken only where sentences alone do not give enough. */
const UNBROKEN = 18;
/** A word as wide as its column is not broken for a rounding; millimetres. */
const SLACK = 0.01;

/** Widths that the columns of a table need, in cap heights, titles included. */
export interface ColumnWidths {
  /** No cell is broken. */
  readonly natural: readonly number[];
  /** No short cell is broken. */
  readonly whole: readonly number[];
  /** No word is broken. */
  readonly least: readonly number[];
}

/** Measures every cell once. */
export function columnWidths({ columns, rows, strong }: TableText): ColumnWidths {
  const natural = columns.map(({ title }) => textWidth(title, 1) + PAD);
  const [whole, least] = [[...natural], [...natural]];
  rows.forEach((row, k) => {
    row.forEach((words, i) => {
      const width = textWidth(words, 1, strong.has(k)) + PAD;
      natural[i] = Math.max(natural[i] ?? 0, width);
      if (width <= (least[i] ?? 0)) return;
      const longest = words.includes(" ") ? longestWord(words, strong.has(k)) : width;
      least[i] = Math.max(least[i] ?? 0, longest);
      whole[i] = Math.max(whole[i] ?? 0, words.length <= UNBROKEN ? width : longest);
    });
  });
  return { natural, whole, least };
}

function longestWord(words: string, bold: boolean): number {
  return greatestOf(words.split(" ").map((word) => textWidth(word, 1, bold) + PAD));
}

/** Where the widths do not fit, the widest columns give way and their words are broken. */
export function fitTable(
  table: TableText,
  { natural, whole, least }: ColumnWidths,
  width: number,
  { small }: Lettering,
): FittedTable {
  const room = width / small;
  const titles = table.columns.map(({ title }) => textWidth(title, 1) + PAD);
  const low = [whole, least].find((widths) => widths.reduce((sum, each) => sum + each, 0) <= room) ?? titles;
  const cap = capFor(natural, low, room);
  const widths = natural.map((each, i) => Math.max(low[i] ?? 0, Math.min(each, cap)));
  const set = widths.reduce((sum, each) => sum + each, 0);
  const columns = table.columns.map((column, i) => ({ ...column, share: (widths[i] ?? 0) / set }));
  const broken = (words: string, i: number, bold: boolean) =>
    (natural[i] ?? 0) > (widths[i] ?? 0)
      ? wrap(words, ((widths[i] ?? 0) * width) / set - PAD * small + SLACK, small, bold)
      : [words];
  return {
    table: { ...table, columns },
    foot: table.foot.flatMap((words) => wrap(words, width - PAD * small, small)),
    linesOf: (row) => {
      const cells = (table.rows[row] ?? []).map((words, i) => broken(words, i, table.strong.has(row)));
      const count = greatestOf(
        cells.map(({ length }) => length),
        1,
      );
      return Array.from({ length: count }, (_, k) => cells.map((lines) => lines[k] ?? ""));
    },
  };
}

/** The width at which wider columns are cut, though never narrower than these least ones, so that the sum is the room. */
function capFor(natural: readonly number[], low: readonly number[], room: number): number {
  const total = (cap: number) => natural.reduce((sum, each, i) => sum + Math.max(low[i] ?? 0, Math.min(each, cap)), 0);
  if (total(Infinity) <= room) return Infinity;
  let [less, more] = [0, greatestOf(natural)];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (less + more) / 2;
    if (total(middle) <= room) less = middle;
    else more = middle;
  }
  return less;
}

const HALVINGS = 30;
