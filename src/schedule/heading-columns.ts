/** The rows of headings -> the columns of a table: words, the group over them, unit; and the rows of units and numbers below. */
import type { HeadingRange } from "./heading-rows.js";
import { stackOf } from "./heading-rows.js";
import type { SheetGrid } from "./sheet-grid.js";
import type { KnownHeading } from "./sheet-words.js";
import { isForeign, markHeading, oneLine, plainText, splitUnit, standsOver, unitNamed } from "./sheet-words.js";

/** A column of a table; rows and columns of the grid count from 0. */
export interface HeadingColumn {
  readonly index: number;
  readonly words: string;
  readonly group: string;
  readonly unit: string | null;
  /** Where its words stand. */
  readonly at: { readonly row: number; readonly column: number };
  readonly isKnown: boolean;
  /** Set where its words are a text over several columns: it has none of its own. */
  readonly isShared: boolean;
}

/** A text over a column and how many columns it stands over. */
interface Over {
  readonly text: string;
  readonly at: { readonly row: number; readonly column: number };
  readonly isWide: boolean;
}

/** Reads the columns that have a heading, from left to right. */
export function columnsOf(range: HeadingRange, known: KnownHeading): readonly HeadingColumn[] {
  const rows: ReadonlyMap<number, Over>[] = [];
  for (let row = range.top; row <= range.bottom; row++) rows.push(textsOver(range, row, known));
  const columns: HeadingColumn[] = [];
  for (let index = range.left; index <= range.right; index++) {
    const stack = rows.flatMap((row) => row.get(index) ?? []);
    const column = columnOf(index, stack, known);
    if (column !== null) columns.push(column);
  }
  return columns;
}

function columnOf(index: number, stack: readonly Over[], known: KnownHeading): HeadingColumn | null {
  const last = stack.at(-1);
  if (last === undefined) return null;
  const over = stack.slice(0, -1);
  const wide = joined(over.filter(({ isWide }) => isWide));
  const narrow = joined(over.filter(({ isWide }) => !isWide));
  const { words, group } = wordsAndGroup(last.text, narrow, wide, known);
  const own = splitUnit(words, (rest) => known(rest, group));
  const above = splitUnit(group, () => false);
  return {
    index,
    words: own.words,
    group: above.words,
    unit: own.unit ?? above.unit,
    at: last.at,
    isKnown: known(own.words, above.words),
    isShared: last.isWide,
  };
}

function joined(over: readonly Over[]): string {
  return over.map(({ text }) => text).join(" ");
}

/** Over one column only, the upper text is the first half of its heading, unless it is known as a group. */
function wordsAndGroup(last: string, narrow: string, wide: string, known: KnownHeading) {
  if (narrow === "") return { words: last, group: wide };
  const whole = `${narrow} ${last}`;
  const group = wide === "" ? narrow : `${wide} ${narrow}`;
  const isGroup = !known(whole, wide) && known(last, group);
  return isGroup ? { words: last, group } : { words: whole, group: wide };
}

/** What stands over each column in one row of headings: merged, standing there, or reaching there from the left. */
function textsOver(range: HeadingRange, row: number, known: KnownHeading): ReadonlyMap<number, Over> {
  const over = new Map<number, Over>();
  const loose: { column: number; text: string }[] = [];
  for (let column = range.left; column <= range.right; column++) {
    const span = range.grid.span(row, column);
    if (span !== null && (span.top === row || (row === range.top && span.top < row))) {
      const text = oneLine(range.grid.text(span.top, span.left));
      const isWide = span.right > span.left;
      if (text !== "") over.set(column, { text, at: { row: span.top, column: span.left }, isWide });
    } else if (range.grid.text(row, column) !== "") loose.push({ column, text: oneLine(range.grid.text(row, column)) });
  }
  const groups = loose.filter(({ column }) => lowerWords(range, row, column) !== "");
  const reaches = groupReaches(range, row, groups, over, known);
  for (const { column, text } of loose) {
    const columns = reaches.get(column) ?? [column];
    const isWide = columns.length > 1 || isRepeatedBeside(loose, column, text);
    for (const each of columns) over.set(each, { text, at: { row, column }, isWide });
  }
  return over;
}

/** The same group is written over each of its columns. */
function isRepeatedBeside(loose: readonly Loose[], column: number, text: string): boolean {
  const at = loose.findIndex((each) => each.column === column);
  return [loose[at - 1], loose[at + 1]].some(
    (beside) => beside !== undefined && plainText(beside.text) === plainText(text),
  );
}

function lowerWords(range: HeadingRange, row: number, column: number): string {
  return row >= range.bottom ? "" : stackOf({ ...range, top: row + 1 }, column).join(" ");
}

interface Loose {
  readonly column: number;
  readonly text: string;
}
type Reaches = ReadonlyMap<number, readonly number[]>;

/** The columns of each group that is not merged: from its word on to the right, or, where only that fits, around it. */
function groupReaches(
  range: HeadingRange,
  row: number,
  groups: readonly Loose[],
  taken: ReadonlyMap<number, Over>,
  known: KnownHeading,
): Reaches {
  const reading = new GroupReading(range, row, taken, known);
  const fromLeft = new Map(groups.map((group) => [group.column, reading.toTheRight(group)]));
  const last = groups.at(-1)?.column ?? 0;
  if (taken.size > 0 || !reading.foreign.some((column) => column < last)) return fromLeft;
  return reading.centred(groups) ?? reading.withRefused(groups, fromLeft);
}

class GroupReading {
  /** Columns right of a group's word that belong to another part. */
  readonly foreign: number[] = [];

  constructor(
    private readonly range: HeadingRange,
    private readonly row: number,
    private readonly taken: ReadonlyMap<number, Over>,
    private readonly known: KnownHeading,
  ) {}

  toTheRight({ column, text }: Loose): readonly number[] {
    const columns = [column];
    for (let at = column + 1; at <= this.range.right && this.isFree(at); at++) {
      const words = lowerWords(this.range, this.row, at);
      if (words === "") continue;
      if (!this.goesWith(words, text)) {
        if (isForeign(words, text)) this.foreign.push(at);
        break;
      }
      columns.push(at);
    }
    return columns;
  }

  /** Each word in the middle of its columns, one group after the other; null where that does not fit everywhere. */
  centred(groups: readonly Loose[]): Reaches | null {
    const first = groups[0]?.column ?? 0;
    for (let start = this.range.left; start < first; start++) {
      const reaches = this.centredFrom(start, groups);
      if (reaches !== null) return reaches;
    }
    return null;
  }

  /** What does not go with the group before it, and with the group after it, is the latter's, unless that has such a column. */
  withRefused(groups: readonly Loose[], reaches: Reaches): Reaches {
    const widened = new Map(reaches);
    groups.slice(1).forEach(({ column, text }, index) => {
      const before = groups[index];
      const own = [...(reaches.get(column) ?? [])];
      const words = new Set(own.map((at) => plainText(this.wordsAt(at))));
      for (let at = column - 1; before !== undefined && at > before.column && this.isFree(at); at--) {
        const each = this.wordsAt(at);
        if (each === "") continue;
        if (!isForeign(each, before.text) || !this.goesWith(each, text) || words.has(plainText(each))) break;
        own.unshift(at);
      }
      widened.set(column, own);
    });
    return widened;
  }

  private centredFrom(start: number, groups: readonly Loose[]): Reaches | null {
    const reaches = new Map<number, readonly number[]>();
    let from = start;
    for (const { column, text } of groups) {
      const last = 2 * column - from;
      if (from > column || last > this.range.right) return null;
      const columns = Array.from({ length: last - from + 1 }, (_, index) => from + index);
      if (!columns.every((at) => (at === column || this.isFree(at)) && this.isSurelyOf(this.wordsAt(at), text)))
        return null;
      if (new Set(columns.map((at) => plainText(this.wordsAt(at)))).size < columns.length) return null;
      reaches.set(column, columns);
      from = last + 1;
    }
    const beyond = from <= this.range.right && this.wordsAt(from) !== "" && this.isFree(from);
    return beyond && this.goesWith(this.wordsAt(from), groups.at(-1)?.text ?? "") ? null : reaches;
  }

  private wordsAt(column: number): string {
    return lowerWords(this.range, this.row, column);
  }

  private isFree(column: number): boolean {
    const { grid, mark } = this.range;
    const span = grid.span(this.row, column);
    const isCovered = span !== null && grid.text(span.top, span.left) !== "";
    return column !== mark && !isCovered && grid.text(this.row, column) === "" && !this.taken.has(column);
  }

  private isSurelyOf(words: string, group: string): boolean {
    return this.goesWith(words, group) && this.known(words, group);
  }

  /** Words go with a group where they are not better known without it; as the marks' heading they are not wanted there. */
  private goesWith(words: string, group: string): boolean {
    if (isForeign(words, group)) return false;
    const isKnownWith = this.known(words, group);
    if (!standsOver(group)) return isKnownWith && !this.known(words, "");
    return isKnownWith || markHeading(words) !== null || !this.known(words, "");
  }
}

/** The rows between the headings and the first row of data. */
export interface RowsBelow {
  /** First row that may be data. */
  readonly first: number;
  readonly units: ReadonlyMap<number, string>;
  readonly rows: readonly { readonly row: number; readonly why: string }[];
}

/** A row of units and a row that numbers the columns, in either order. */
export function rowsBelow(range: HeadingRange, columns: readonly HeadingColumn[]): RowsBelow {
  const units = new Map<number, string>();
  const rows: { row: number; why: string }[] = [];
  let row = range.bottom + 1;
  for (; row < range.grid.height && rows.length < 2; row++) {
    if (isUnitsRow(range.grid, row, columns, range.mark)) {
      for (const { index } of columns) {
        const unit = unitNamed(range.grid.text(row, index));
        if (unit !== null) units.set(index, unit);
      }
      rows.push({ row, why: "the units of the columns" });
    } else if (isIndexRow(range.grid, row, columns)) rows.push({ row, why: "numbers of the columns" });
    else break;
  }
  return { first: row, units, rows };
}

/** Units under the headings, and nothing under the marks' heading: a base could be called M. */
function isUnitsRow(grid: SheetGrid, row: number, columns: readonly HeadingColumn[], mark: number): boolean {
  const texts = columns.map(({ index }) => oneLine(grid.text(row, index)));
  const ofMark = oneLine(grid.text(row, mark));
  if (ofMark !== "" && !/^(?:[-\u2013\u2014]+|\(?units?\)?:?|\([^)]*\)|n\/a)$/i.test(ofMark)) return false;
  const isFiller = (text: string) =>
    /^(?:[-\u2013\u2014]*|\(?(?:no|nr|#|text|type)\.?\)?|\(?units?\)?:?|n\/a)$/i.test(text);
  return (
    texts.every((text) => isFiller(text) || unitNamed(text) !== null) && texts.some((text) => unitNamed(text) !== null)
  );
}

/** 1, 2, 3 ... or A, B, C ... in every column: a base with just these values is none. */
function isIndexRow(grid: SheetGrid, row: number, columns: readonly HeadingColumn[]): boolean {
  const texts = columns.map(({ index }) => oneLine(grid.text(row, index)));
  const bare = texts.map((text) => text.replace(/^[([](.*)[)\]]$/, "$1"));
  const isBracketed = bare.every((text, index) => text !== texts[index]);
  if (columns.length < (isBracketed ? 3 : 5)) return false;
  const first = bare[0] ?? "";
  if (/^\d{1,3}$/.test(first)) return bare.every((text, index) => text === String(Number(first) + index));
  if (!/^[a-z]$/i.test(first)) return false;
  return bare.every((text, index) => text === String.fromCharCode(first.charCodeAt(0) + index));
}
