/** Tables that run through the free paper of a set of sheets, split between rows where they must be. */
import type { Lettering } from "../sheet-sizes.js";
import { headHeight, type Piece, rowHeight, type TableText, tablePiece } from "../table.js";

export interface Flow {
  /** Pieces of the width that fit the height, taken out of what is left. */
  take(width: number, height: number): readonly Piece[];
  readonly isEmpty: boolean;
}

/** Between two tables. */
export const TABLE_GAP = 3;
/** A table is not split into parts of fewer rows. */
const LEAST_ROWS = 8;

/** The tables in their order; a later one is set first only where the next one does not fit. */
export function startFlow(tables: readonly TableText[], lettering: Lettering): Flow {
  const queue = tables.map((table) => ({ table, from: 0 }));
  return {
    get isEmpty() {
      return queue.length === 0;
    },
    take(width, height) {
      const pieces: Piece[] = [];
      let room = height;
      for (let i = 0; i < queue.length; ) {
        const entry = queue[i];
        if (entry === undefined) break;
        const left = entry.table.rows.length - entry.from;
        const count = rowsThatFit(entry.table, left, room, lettering);
        if (count === 0) {
          i += 1;
          continue;
        }
        const piece = tablePiece(partOf(entry.table, entry.from, count), width, lettering);
        pieces.push(piece);
        room -= piece.height + TABLE_GAP;
        entry.from += count;
        if (entry.from >= entry.table.rows.length) queue.splice(i, 1);
      }
      return pieces;
    },
  };
}

/** All that are left where they fit, else as many as fit when the part is long enough; 0: none. */
function rowsThatFit(table: TableText, left: number, room: number, lettering: Lettering): number {
  const row = rowHeight(lettering);
  const spare = room - headHeight(lettering) - 1;
  if (spare >= (left + table.foot.length) * row) return left;
  const count = Math.floor(spare / row);
  return count >= LEAST_ROWS && left - count >= 1 ? Math.min(count, left - 1) : 0;
}

/** Rows `from` on; the foot stands under the last part. */
function partOf(table: TableText, from: number, count: number): TableText {
  const to = from + count;
  const strong = [...table.strong].filter((i) => i >= from && i < to).map((i) => i - from);
  return {
    ...table,
    heading: from === 0 ? table.heading : `${table.heading.split(":")[0]?.split(" (")[0] ?? ""} (CONTINUED)`,
    rows: table.rows.slice(from, to),
    foot: to >= table.rows.length ? table.foot : [],
    strong: new Set(strong),
  };
}
