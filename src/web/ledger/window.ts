/** Which rows of a long table are drawn, which are asked for, and where the arrow keys lead. Rows count from 0. */

/** From, and as many. */
export interface Span {
  readonly from: number;
  readonly count: number;
}

/** Rows in sight, and some beyond each end so that a turn of the wheel shows no gap. */
export function rowsInSight(
  { top, height }: { readonly top: number; readonly height: number },
  rowHeight: number,
  total: number,
): Span {
  const from = Math.max(0, Math.min(total, Math.floor(top / rowHeight)) - BEYOND);
  const end = Math.min(total, Math.ceil((top + height) / rowHeight) + BEYOND);
  return { from, count: Math.max(0, end - from) };
}

const BEYOND = 12;

/** Rows to ask for so that those in sight are among them: whole blocks, so that a small turn asks for nothing new. */
export function rowsToAsk({ from, count }: Span): Span {
  const first = Math.floor(from / BLOCK) * BLOCK;
  return { from: first, count: Math.ceil(Math.max(1, from + count - first) / BLOCK) * BLOCK };
}

const BLOCK = 60;

/** Where a key leads from a row; null where it is none of those that move. `page`: rows in sight. */
export function rowAfter(key: string, row: number, page: number, total: number): number | null {
  const last = total - 1;
  const steps: Readonly<Record<string, number>> = {
    ArrowDown: row + 1,
    ArrowUp: row - 1,
    PageDown: row + Math.max(1, page - 1),
    PageUp: row - Math.max(1, page - 1),
    Home: 0,
    End: last,
  };
  const next = Object.hasOwn(steps, key) ? steps[key] : undefined;
  return next === undefined ? null : Math.max(0, Math.min(last, next));
}

/** Where the table is scrolled so that the row is in sight, moved as little as it takes. */
export function topFor(
  row: number,
  rowHeight: number,
  { top, height }: { readonly top: number; readonly height: number },
): number {
  const [above, below] = [row * rowHeight, (row + 1) * rowHeight];
  if (above < top) return above;
  return below > top + height ? below - height : top;
}
