/** Tables that run through the free paper of a set of sheets, split between rows where they must be. */

import { type ColumnWidths, columnWidths, type FittedTable, fitTable } from "./fit-table.js";
import type { SceneItem } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";
import { headHeight, type Piece, rowHeight, type TableText, tablePiece } from "./table.js";

/** Tables that are set piece by piece. */
export interface Flow {
  /** Pieces of the width that fit the height, taken out of what is left; parts of a table have at least `least` rows. */
  take(width: number, height: number, least?: number): readonly Piece[];
  readonly isEmpty: boolean;
  /** Width at which no cell of the first table that is left is broken. */
  readonly next: number;
}

/** How tables are set. */
export interface FlowOptions {
  /** Natural widths of each table, where they are known already. */
  readonly widths?: readonly ColumnWidths[];
  /** Tables that need no more than this are set only where no cell of theirs is broken; 0: none is kept back. Millimetres. */
  readonly wholeUpTo: number;
  /** No table is broken to less than this. Millimetres. */
  readonly leastWidth: number;
}

/** Between two tables. */
export const TABLE_GAP = 3;
/** A table is not split into parts of fewer rows where there is a choice. */
const LEAST_ROWS = 8;

interface Waiting {
  readonly table: TableText;
  readonly widths: ColumnWidths;
  /** First row that is not set yet. */
  from: number;
}

/** The tables in their order; a later one is set first only where the next one does not fit. */
export function startFlow(
  tables: readonly TableText[],
  lettering: Lettering,
  { widths = tables.map(columnWidths), wholeUpTo, leastWidth }: FlowOptions = { wholeUpTo: 0, leastWidth: 0 },
): Flow {
  const queue = tables.map((table, i): Waiting => ({ table, widths: widths[i] ?? columnWidths(table), from: 0 }));
  const natural = (waiting: Waiting) => totalOf(waiting.widths.natural) * lettering.small;
  const isKeptBack = (waiting: Waiting, width: number) => {
    const wanted = natural(waiting);
    return wanted > width && (wanted <= wholeUpTo || width < leastWidth);
  };
  return {
    get isEmpty() {
      return queue.length === 0;
    },
    get next() {
      const [first] = queue;
      return first === undefined ? 0 : natural(first);
    },
    take(width, height, least = LEAST_ROWS) {
      const pieces: Piece[] = [];
      let room = height;
      for (let i = 0; i < queue.length; ) {
        const waiting = queue[i];
        if (waiting === undefined) break;
        const part = isKeptBack(waiting, width) ? null : partThatFits(waiting, width, room, least, lettering);
        if (part === null) {
          i += 1;
          continue;
        }
        pieces.push(part.piece);
        room -= part.piece.height + TABLE_GAP;
        waiting.from = part.to;
        if (part.to >= waiting.table.rows.length) queue.splice(i, 1);
      }
      return pieces;
    },
  };
}

function totalOf(widths: readonly number[]): number {
  return widths.reduce((sum, each) => sum + each, 0);
}

/** All rows that are left where they fit, else as many as fit when the part is long enough; null: none. */
function partThatFits(
  { table, widths, from }: Waiting,
  width: number,
  room: number,
  least: number,
  lettering: Lettering,
): { readonly piece: Piece; readonly to: number } | null {
  const fitted = fitTable(table, widths, width, lettering);
  const most = Math.floor((room - headHeight(lettering) - 1) / rowHeight(lettering));
  let [to, lines] = [from, 0];
  while (to < table.rows.length) {
    const more = fitted.linesOf(to).length;
    if (lines + more > most) break;
    lines += more;
    to += 1;
  }
  const isWhole = to >= table.rows.length && lines + fitted.foot.length <= most;
  if (!isWhole) to = Math.min(to, table.rows.length - Math.min(least, Math.floor(table.rows.length / 2)));
  if (to <= from || (!isWhole && to - from < least)) return null;
  return { piece: tablePiece(partOf(fitted, from, to, isWhole), width, lettering), to };
}

/** Rows `from` up to `to`; the foot stands under the last part. */
function partOf({ table, linesOf, foot }: FittedTable, from: number, to: number, isWhole: boolean): TableText {
  const rows: (readonly string[])[] = [];
  const strong = new Set<number>();
  for (let i = from; i < to; i++)
    for (const line of linesOf(i)) {
      if (table.strong.has(i)) strong.add(rows.length);
      rows.push(line);
    }
  const heading = from === 0 ? table.heading : `${table.heading.split(/[:(]/)[0]?.trim() ?? ""} (CONTINUED)`;
  return { ...table, heading, rows, foot: isWhole ? foot : [], strong };
}

/** Pieces under each other. */
export function stack(pieces: readonly Piece[], x: number, top: number): readonly SceneItem[] {
  let y = top;
  return pieces.map((piece) => {
    const item = piece.draw(x, y);
    y -= piece.height + TABLE_GAP;
    return item;
  });
}
