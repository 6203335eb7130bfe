/** Tables set to the width they are given: columns as wide as their words need, longer words in further lines. */

import { greatestOf } from "../../units/extremes.js";
import type { Lettering } from "../sheet-sizes.js";
import type { TableText } from "../table.js";
import { textWidth, wrap } from "../text-metrics.js";

/** A table whose columns are set, its rows not yet broken into lines. */
export interface FittedTable {
  readonly table: TableText;
  /** Lines of row `i`, each a list of cells. */
  linesOf(row: number): readonly (readonly string[])[];
  /** Lines of the foot. */
  readonly foot: readonly string[];
}

/** Beside the words of a cell, in cap heights: what the table itself keeps clear, and a little. */
const PAD = 0.8;

/** Widths that a table's columns need, in cap heights, titles included. */
export function naturalWidths({ columns, rows, strong }: TableText): readonly number[] {
  return columns.map(({ title }, i) =>
    rows.reduce(
      (most, row, k) => Math.max(most, textWidth(row[i] ?? "", 1, strong.has(k)) + PAD),
      textWidth(title, 1) + PAD,
    ),
  );
}

/** Where the widths do not fit, the widest columns give way and their words are broken. */
export function fitTable(
  table: TableText,
  natural: readonly number[],
  width: number,
  { small }: Lettering,
): FittedTable {
  const room = width / small;
  const titles = table.columns.map(({ title }) => textWidth(title, 1) + PAD);
  const cap = capFor(natural, titles, room);
  const widths = natural.map((each, i) => Math.max(titles[i] ?? 0, Math.min(each, cap)));
  const set = widths.reduce((sum, each) => sum + each, 0);
  const columns = table.columns.map((column, i) => ({ ...column, share: (widths[i] ?? 0) / set }));
  const broken = (words: string, i: number, bold: boolean) =>
    (natural[i] ?? 0) > cap ? wrap(words, ((widths[i] ?? 0) * width) / set - PAD * small, small, bold) : [words];
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

/** The width at which wider columns are cut, though never narrower than their titles, so that the sum is the room. */
function capFor(natural: readonly number[], titles: readonly number[], room: number): number {
  const total = (cap: number) =>
    natural.reduce((sum, each, i) => sum + Math.max(titles[i] ?? 0, Math.min(each, cap)), 0);
  if (total(Infinity) <= room) return Infinity;
  let [low, high] = [0, greatestOf(natural)];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (total(middle) <= room) low = middle;
    else high = middle;
  }
  return low;
}

const HALVINGS = 30;
