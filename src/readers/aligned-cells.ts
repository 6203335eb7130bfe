/** Columns parted by two blanks and more, as text is pasted from a print or a mail: a blank cell is told by where the others stand. */
import type { SplitRow } from "./quoted-cells.js";
import { commonCount, isRule, piecesOf } from "./separator.js";

/** The rows, or the first line whose cells cannot be told. */
export type AlignedRows =
  | { readonly ok: true; readonly rows: readonly SplitRow[] }
  | { readonly ok: false; readonly line: number; readonly cells: number; readonly expected: number };

interface Column {
  readonly from: number;
  readonly to: number;
}

/**
 * Splits lines. Above the first and below the last line that has as many cells as most, a line is one text, a title or a note;
 * but below, one that looks like a row is a row, its blank cells at the end as elsewhere.
 */
export function splitAligned(lines: readonly string[]): AlignedRows {
  const pieces = lines.map((line) => (isRule(line) ? [] : piecesOf(line)));
  const expected = commonCount(pieces.map(({ length }) => length)) ?? 1;
  const isWhole = (index: number) => pieces[index]?.length === expected;
  const whole = lines.flatMap((_, index) => (isWhole(index) ? [index] : []));
  const [first = 0, last = 0] = [whole[0], whole.at(-1)];
  const columns = columnsOf(
    whole.map((index) => pieces[index] ?? []),
    expected,
  );
  const rows: SplitRow[] = [];
  for (const [index, found] of pieces.entries()) {
    const texts = found.map(({ text }) => text);
    const isOutside = index < first || (index > last && !looksLikeRow(texts));
    const row = isWhole(index) ? texts : isOutside ? asOneText(lines[index] ?? "", texts) : placeIn(columns, found);
    if (row === null) return { ok: false, line: index + 1, cells: found.length, expected };
    rows.push({ texts: row, line: index + 1 });
  }
  return { ok: true, rows };
}

/** Three cells and more, or a mark as C12 with one beside it. */
function looksLikeRow(texts: readonly string[]): boolean {
  return texts.length >= 3 || (texts.length === 2 && /^\p{L}{1,4}[-.]?\d{1,4}\p{L}?$/u.test(texts[0] ?? ""));
}

function asOneText(line: string, texts: readonly string[]): readonly string[] {
  return texts.length === 0 ? [] : [line.trim()];
}

type Pieces = readonly { readonly text: string; readonly start: number }[];

/** Where the columns stand; null where they do not stand apart. */
function columnsOf(rows: readonly Pieces[], count: number): readonly Column[] | null {
  const columns = Array.from({ length: count }, (_, index): Column => {
    const cells = rows.flatMap((row) => row[index] ?? []);
    const from = cells.reduce((least, { start }) => Math.min(least, start), Number.POSITIVE_INFINITY);
    const to = cells.reduce((most, { start, text }) => Math.max(most, start + text.length), 0);
    return { from, to };
  });
  const isApart = columns.every(({ to }, index) => to <= (columns[index + 1]?.from ?? to));
  return isApart ? columns : null;
}

/** A line with blank cells: each of its pieces stands under one column alone. */
function placeIn(columns: readonly Column[] | null, pieces: Pieces): readonly string[] | null {
  if (pieces.length === 0) return [];
  if (columns === null) return null;
  const row = columns.map(() => "");
  for (const { text, start } of pieces) {
    const under = columns.flatMap(({ from, to }, index) => (start < to && from < start + text.length ? [index] : []));
    const [index] = under;
    if (index === undefined || under.length > 1 || row[index] !== "") return null;
    row[index] = text;
  }
  return row;
}
