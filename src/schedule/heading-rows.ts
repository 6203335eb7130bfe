/** Which rows of a sheet are the headings of a table: decided by what the rows are, so that no row of data is taken for one. */

import type { SheetGrid } from "./sheet-grid.js";
import type { KnownHeading } from "./sheet-words.js";
import {
  endsMark,
  headsNotes,
  isPartOfMark,
  isTitle,
  isValueWord,
  isWordy,
  markHeading,
  oneLine,
  plainText,
  standsOver,
  standsUnder,
  unitNamed,
} from "./sheet-words.js";

/** Rows and columns that headings stand in, both ends included, and the column of the marks. */
export interface HeadingRange {
  readonly grid: SheetGrid;
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
  readonly mark: number;
}

/** Most rows of headings, one over the other. */
const MOST_HEADING_ROWS = 3;
/** Blank columns between columns of one table, at most. */
const MOST_BLANK_COLUMNS = 3;
/** Texts that are no headings, one after the other, end the search for more headings. */
const MOST_OTHERS = 12;
/** Columns of one table, at most. */
const MOST_COLUMNS = 1000;

/** The headings around the marks' heading in `row`; none left of `leftmost`. */
export function rangeAround(
  grid: SheetGrid,
  row: number,
  mark: number,
  leftmost: number,
  known: KnownHeading,
): HeadingRange {
  let range = widen({ grid, top: row, bottom: row, left: mark, right: mark, mark }, leftmost, known);
  while (range.bottom - range.top + 1 < MOST_HEADING_ROWS && isLowerRow(range, leftmost, known))
    range = widen({ ...range, bottom: range.bottom + 1 }, leftmost, known);
  while (range.bottom - range.top + 1 < MOST_HEADING_ROWS && isUpperRow(range, known))
    range = widen({ ...range, top: range.top - 1 }, leftmost, known);
  return range;
}

/** Texts over a column in the rows of a range, the upper first; those of merges for each column that they cover. */
export function stackOf(
  { grid, top, bottom }: Pick<HeadingRange, "grid" | "top" | "bottom">,
  column: number,
): readonly string[] {
  const texts: string[] = [];
  for (let row = top; row <= bottom; row++) {
    const span = grid.span(row, column);
    const isCovered = span !== null && (span.top === row || (row === top && span.top < row));
    const text = isCovered ? grid.text(span.top, span.left) : grid.text(row, column);
    if (text !== "") texts.push(oneLine(text));
  }
  return texts;
}

type ColumnState = "blank" | "known" | "wordy" | "other";

function stateOf(range: HeadingRange, column: number, known: KnownHeading): ColumnState {
  const texts = stackOf(range, column);
  if (texts.length === 0) return "blank";
  if (texts.some((text) => headsNotes(text))) return "other";
  if (isKnownStack(texts, known)) return "known";
  return texts.every((text) => isWordy(text) || unitNamed(text) !== null) ? "wordy" : "other";
}

function isKnownStack(texts: readonly string[], known: KnownHeading): boolean {
  const [last = "", above] = [texts.at(-1), texts.slice(0, -1).join(" ")];
  if (known(last, above)) return true;
  return above !== "" && [`${above} ${last}`, last, texts[0] ?? ""].some((words) => known(words, ""));
}

/** The columns of a table: what stands beside the mark's heading without a gap, and what is known beyond one. */
function widen(range: HeadingRange, leftmost: number, known: KnownHeading): HeadingRange {
  const right = reach(range, 1, leftmost, known);
  return { ...range, right, left: reach(range, -1, leftmost, known) };
}

/** Columns side by side without a blank one between. */
interface Segment {
  /** Farthest column from the mark that belongs to it. */
  readonly end: number;
  /** Of those that are known. */
  readonly words: readonly string[];
  /** Where the search goes on. */
  readonly next: number;
  readonly isLast: boolean;
}

/** One stretch without known headings may stand between others that are known. */
function reach(range: HeadingRange, step: 1 | -1, leftmost: number, known: KnownHeading): number {
  let segment = readSegment(range, range.mark, step, leftmost, known);
  let end = segment.end;
  const seen = new Set(segment.words);
  for (let unknown = 0; !segment.isLast && unknown < 2; ) {
    const start = afterBlanks(range, segment.next, step, leftmost);
    if (start === null) break;
    segment = readSegment(range, start, step, leftmost, known);
    if (segment.words.some((word) => seen.has(word))) break;
    unknown = segment.words.length === 0 ? unknown + 1 : 0;
    if (unknown === 0) end = segment.end;
    for (const word of segment.words) seen.add(word);
  }
  return end;
}

function afterBlanks(range: HeadingRange, from: number, step: 1 | -1, leftmost: number): number | null {
  for (let blanks = 0, column = from; blanks <= MOST_BLANK_COLUMNS; blanks++, column += step) {
    if (!isInside(range, column, leftmost)) return null;
    if (stackOf(range, column).length > 0) return startsOther(range, column, true) ? null : column;
  }
  return null;
}

function isInside({ grid, mark }: HeadingRange, column: number, leftmost: number): boolean {
  return column >= leftmost && column < grid.width && Math.abs(column - mark) < MOST_COLUMNS;
}

/** True where another table's marks begin: the same heading again, or a mark's heading after a blank column. */
function startsOther(range: HeadingRange, column: number, isAfterBlank: boolean): boolean {
  if (column === range.mark) return false;
  const [words, own] = [stackOf(range, column).join(" "), stackOf(range, range.mark).join(" ")];
  return markHeading(words) === "sure" && (isAfterBlank || plainText(words) === plainText(own));
}

function readSegment(range: HeadingRange, from: number, step: 1 | -1, leftmost: number, known: KnownHeading): Segment {
  let [end, others, column] = [from, 0, from];
  const words: string[] = [];
  for (; isInside(range, column, leftmost) && others < MOST_OTHERS; column += step) {
    const state = stateOf(range, column, known);
    if (state === "blank") break;
    if (startsOther(range, column, false)) return { end, words, next: column, isLast: true };
    if (state === "other") others++;
    if (state === "known" || (state === "wordy" && others === 0)) end = column;
    if (state !== "known") continue;
    others = 0;
    words.push(plainText(stackOf(range, column).join(" ")));
  }
  const isLast = others >= MOST_OTHERS || !isInside(range, column, leftmost);
  return { end, words, next: column, isLast };
}

interface RowText {
  readonly column: number;
  readonly text: string;
}

function textsIn(grid: SheetGrid, row: number, left: number, right: number): readonly RowText[] {
  const texts: RowText[] = [];
  for (let column = left; column <= right; column++) {
    const text = grid.text(row, column);
    if (text !== "") texts.push({ column, text: oneLine(text) });
  }
  return texts;
}

/** True where the row below the range holds headings too: its mark is blank, merged, or the other half of the mark's heading. */
function isLowerRow(range: HeadingRange, leftmost: number, known: KnownHeading): boolean {
  const { grid, bottom, mark } = range;
  const row = bottom + 1;
  if (row >= grid.height) return false;
  const { left, right } = widenBelow(range, row, leftmost);
  const texts = textsIn(grid, row, left, right);
  const span = grid.span(bottom, mark);
  const isMerged = span !== null && span.bottom >= row && span.bottom - span.top < MOST_HEADING_ROWS;
  if (texts.every(({ text }) => unitNamed(text) !== null)) return isMerged && texts.length === 0;
  if (isMerged) return true;
  if (!mayHoldHeadings(texts, range, known)) return false;
  const isOverHalf = (column: number) => (grid.span(bottom, column)?.right ?? column) > column;
  return texts.some(({ column, text }) => {
    const above = stackOf(range, column).join(" ");
    if (known(text, "")) return true;
    if (above !== "" && (known(text, above) || known(`${above} ${text}`, ""))) return true;
    if (column === mark) return texts.length === 1 || standsUnder(text);
    return texts.length > 1 && (standsUnder(text) || isOverHalf(column));
  });
}

/** What a cell says instead of its value. */
const REFERS = /^(?:do\.?|ditto|same\b.*|see\b.*|n\/?a|["\u2033\u201d\u3003-]+)$/i;

/** No cell may look like a value; a filled mark must be the rest of the mark's heading. */
function mayHoldHeadings(
  texts: readonly RowText[],
  { grid, top, bottom, mark }: HeadingRange,
  known: KnownHeading,
): boolean {
  const own = stackOf({ grid, top, bottom }, mark).join(" ");
  return texts.every(({ column, text }) => {
    if (column === mark) return endsMark(text) && plainText(text) !== plainText(own);
    if (REFERS.test(text)) return false;
    return !isValueWord(text) && (isWordy(text) || unitNamed(text) !== null || known(text, ""));
  });
}

/** Groups may stand over their first column only, so that the row below reaches farther. */
function widenBelow(range: HeadingRange, row: number, leftmost: number): { left: number; right: number } {
  const { grid } = range;
  const isFilled = (column: number) => {
    const text = grid.text(row, column);
    return text === "" ? stackOf(range, column).length > 0 : isWordy(oneLine(text)) || unitNamed(text) !== null;
  };
  let { left, right } = range;
  while (isInside(range, right + 1, leftmost) && isFilled(right + 1) && !startsOther(range, right + 1, true)) right++;
  while (isInside(range, left - 1, leftmost) && isFilled(left - 1) && !startsOther(range, left - 1, true)) left--;
  return { left, right };
}

/** True where the row above the range holds headings too, and is no title. */
function isUpperRow(range: HeadingRange, known: KnownHeading): boolean {
  const { grid, top, left, right, mark } = range;
  const row = top - 1;
  if (row < 0) return false;
  const texts = textsIn(grid, row, left, right);
  if (texts.length === 0 || texts.some(({ text }) => isTitle(text))) return false;
  if (texts.some(({ column }) => (grid.span(row, column)?.bottom ?? row) >= top)) return true;
  if (!isMarkFree(range, row) || isLoneTitle(range, row, texts)) return false;
  if (!texts.every(({ text }) => isWordy(text) || known(text, ""))) return false;
  return texts.some(({ column, text }) => {
    const below = stackOf(range, column).join(" ");
    if (column === mark) return texts.length > 1 && isPartOfMark(text);
    if (standsOver(text) || (below !== "" && known(`${text} ${below}`, ""))) return true;
    return below !== "" && known(below, text) && !known(below, "");
  });
}

/** Over the mark's heading stands nothing, its first half, or a group of less than half of the table. */
function isMarkFree({ grid, left, right, mark }: HeadingRange, row: number): boolean {
  const span = grid.span(row, mark);
  if (span !== null && span.right > span.left) return (span.right - span.left + 1) * 2 <= right - left + 1;
  const text = oneLine(grid.text(row, mark));
  return text === "" || isPartOfMark(text);
}

/** One text that is merged over more than half of the table or stands at its first column heads the whole of it. */
function isLoneTitle({ grid, left, right, mark }: HeadingRange, row: number, texts: readonly RowText[]): boolean {
  const [only, ...others] = texts;
  if (only === undefined || others.length > 0) return false;
  const span = grid.span(row, only.column);
  if (span !== null && span.right > span.left) return (span.right - span.left + 1) * 3 > (right - left + 1) * 2;
  return only.column === left || only.column === mark;
}
