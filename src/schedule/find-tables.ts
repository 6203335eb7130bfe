/** Every table on a sheet that has marks and other headings, whichever way it lies there. */
import type { Table } from "../readers/inputs.js";
import { NoteReading } from "./footnotes.js";
import type { HeadingColumn, RowsBelow } from "./heading-columns.js";
import { columnsOf, rowsBelow } from "./heading-columns.js";
import type { HeadingRange } from "./heading-rows.js";
import { rangeAround } from "./heading-rows.js";
import type { FoundColumn, FoundTable, LeftOut } from "./model.js";
import type { SheetGrid, StrayText } from "./sheet-grid.js";
import { gridOf } from "./sheet-grid.js";
import type { KnownHeading } from "./sheet-words.js";
import {
  isForeign,
  isTitle,
  isWordy,
  knownWithUnits,
  markHeading,
  NOTE_START,
  oneLine,
  plainText,
  standsOver,
} from "./sheet-words.js";
import { readBody } from "./table-body.js";
import { isSameTitle, titleAbove } from "./table-title.js";

/** Tables of one sheet, at most. */
const MOST_TABLES = 500;

/** Headings that were found, before their body is read. */
interface Headed {
  readonly range: HeadingRange;
  readonly columns: readonly HeadingColumn[];
  readonly below: RowsBelow;
  /** Different headings that are known. */
  readonly known: number;
  /** Set where they are those of the table above again, on its next page. */
  readonly isRepeat: boolean;
}

/** Rows and columns of the sheet itself, from 0, both ends included. */
interface Rectangle {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/**
 * Finds the tables of a sheet in reading order. `known` says whether words, with the group over them, are a heading that is
 * known. Of two ways to read the same headings, across and down, the one with more known ones is taken; both where they are equal.
 */
export function findTables(table: Table, known: KnownHeading): readonly FoundTable[] {
  const { grid, strays } = gridOf(table);
  const once = knownWithUnits(known);
  const marks = marksOf(grid);
  const upright = findHeaded(grid, marks.rows, once);
  const turned = findHeaded(grid.turned(), marks.columns, once);
  const all = betterProven(upright, turned).sort(inReadingOrder);
  const drafts = all.map((headed) => draftTable(headed, all, table.sheet));
  return withStrays(drafts, strays());
}

type Marks = ReadonlyMap<number, readonly number[]>;

/** Where a mark's heading may stand: columns by row, and rows by column. */
function marksOf(grid: SheetGrid): { readonly rows: Marks; readonly columns: Marks } {
  const [rows, columns] = [new Map<number, number[]>(), new Map<number, number[]>()];
  const isMark = rememberedMark();
  for (let row = 0; row < grid.height; row++)
    for (let column = 0; column < grid.lengthOf(row); column++) {
      if (!isMark(grid.cell(row, column).text) || grid.text(row, column) === "") continue;
      push(rows, row, column);
      push(columns, column, row);
    }
  return { rows, columns };
}

function rememberedMark(): (text: string) => boolean {
  const answers = new Map<string, boolean>();
  return (text) => {
    if (text.length === 0 || text.length > 40 || !/^\s*[\p{L}#]/u.test(text)) return false;
    const before = answers.get(text);
    if (before !== undefined) return before;
    const answer = markHeading(text) !== null;
    answers.set(text, answer);
    return answer;
  };
}

function push(lists: Map<number, number[]>, key: number, value: number): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [value]);
  else list.push(value);
}

/** Tables with their headings in rows of the grid, from above. */
function findHeaded(grid: SheetGrid, marks: Marks, known: KnownHeading): readonly Headed[] {
  const found: Headed[] = [];
  const vain = new VainTries();
  for (const row of [...marks.keys()].sort((a, b) => a - b)) {
    let leftmost = 0;
    for (const mark of marksToTry(grid, row, marks)) {
      if (found.length >= MOST_TABLES) return found;
      if (mark < leftmost || found.some((other) => isInHeadings(other, row, mark))) continue;
      if (vain.areMany(row, mark)) continue;
      const headed = readHeadings(rangeAround(grid, row, mark, leftmost, known), known);
      if (headed === null) {
        vain.note(row, mark);
        continue;
      }
      leftmost = headed.range.right + 1;
      found.push({ ...headed, isRepeat: isRepeated(headed, found) });
    }
  }
  return found;
}

/** What fails so often in one row or column is the value of a base, as "column" in every row, and no heading. */
const MOST_VAIN = 50;

class VainTries {
  private readonly inRow = new Map<number, number>();
  private readonly inColumn = new Map<number, number>();

  areMany(row: number, column: number): boolean {
    return (this.inRow.get(row) ?? 0) >= MOST_VAIN || (this.inColumn.get(column) ?? 0) >= MOST_VAIN;
  }

  note(row: number, column: number): void {
    this.inRow.set(row, (this.inRow.get(row) ?? 0) + 1);
    this.inColumn.set(column, (this.inColumn.get(column) ?? 0) + 1);
  }
}

/** The sure headings of a row; the others only where neither it nor the rows of headings below it have a sure one. */
function marksToTry(grid: SheetGrid, row: number, marks: Marks): readonly number[] {
  const isSure = (at: number) => (column: number) => markHeading(grid.text(at, column)) === "sure";
  const columns = marks.get(row) ?? [];
  const sure = columns.filter(isSure(row));
  if (sure.length > 0) return sure;
  return [row + 1, row + 2].some((below) => marks.get(below)?.some(isSure(below))) ? [] : columns;
}

/** True in the rows of headings and of units below them: NR there heads no marks. */
function isInHeadings({ range, below }: Headed, row: number, column: number): boolean {
  return row >= range.top && row < below.first && column >= range.left && column <= range.right;
}

/** null where the headings are too few or too little known to be some. */
function readHeadings(range: HeadingRange, known: KnownHeading): Headed | null {
  const all = columnsOf(range, known);
  const below = rowsBelow(range, all);
  const columns = trimmed(
    all.filter(
      ({ at, words }) =>
        (range.grid.span(at.row, at.column)?.bottom ?? at.row) < below.first ||
        (range.grid.isTurned && standsOver(words)),
    ),
    range,
    below.first,
    known,
  );
  const different = (some: readonly HeadingColumn[]) =>
    new Set(some.map(({ words, group }) => plainText(`${group} ${words}`))).size;
  const count = different(columns.filter(({ isKnown }) => isKnown));
  const mark = columns.find(({ index }) => index === range.mark);
  if (mark === undefined || columns.length < 2 || different(columns) * 2 < columns.length) return null;
  const ends = { left: columns[0]?.index ?? range.left, right: columns.at(-1)?.index ?? range.right };
  const headed = { range: { ...range, ...ends }, columns, below, known: count, isRepeat: false };
  const isSure = markHeading(mark.words) === "sure" || markHeading(`${mark.group} ${mark.words}`) === "sure";
  return (isSure ? isEnoughBesideMark(headed) : isEnoughAlone(headed)) ? headed : null;
}

/** Without blank columns below a merged group; turned, without the title above and the notes below, which look like headings. */
function trimmed(
  columns: readonly HeadingColumn[],
  { grid, mark }: HeadingRange,
  first: number,
  known: KnownHeading,
): readonly HeadingColumn[] {
  const isBlank = ({ index }: HeadingColumn) => grid.lastFilled(index) < first;
  const isSpacer = (column: HeadingColumn) =>
    column.isShared &&
    (column.at.column !== column.index || columns.some(({ group }) => group === column.words)) &&
    isBlank(column);
  const own = columns.filter((column) => !isSpacer(column));
  if (!grid.isTurned) return own;
  const start = own.findIndex((column) => column.index === mark || !isBlank(column));
  const last = own.findLastIndex((column) => column.isKnown || !isBlank(column));
  return start < 0 ? [] : groupedBelow(own.slice(start, last + 1), isBlank, known);
}

/** Turned, words as BASE PLATE without a value stand over the headings below them, down to the next such words. */
function groupedBelow(
  columns: readonly HeadingColumn[],
  isBlank: (column: HeadingColumn) => boolean,
  known: KnownHeading,
): readonly HeadingColumn[] {
  let group = "";
  return columns.flatMap((column, at) => {
    const next = columns[at + 1];
    const isHead = column.group === "" && standsOver(column.words) && isBlank(column);
    if (isHead && next !== undefined && goesBelow(next, column.words, known)) {
      group = column.words;
      return [];
    }
    if (group !== "" && !goesBelow(column, group, known)) group = "";
    return group === "" ? [column] : [{ ...column, group, isKnown: known(column.words, group) }];
  });
}

function goesBelow({ words, group }: HeadingColumn, over: string, known: KnownHeading): boolean {
  return group === "" && !isForeign(words, over) && (known(words, over) || !known(words, ""));
}

/** Beside a sure mark: one other that is known, or short words only. Down the sheet any column of words would look so. */
function isEnoughBesideMark({ range, columns, known }: Headed): boolean {
  if (known >= 2 && (known >= 3 || known * 2 >= columns.length)) return true;
  return !range.grid.isTurned && columns.every(({ words }) => isWordy(words) && !isTitle(words));
}

/** Without a sure mark at least half are known; of two, both. */
function isEnoughAlone({ columns, known }: Headed): boolean {
  return known >= 3 ? known * 2 >= columns.length : known === 2 && columns.length === 2;
}

/** The same headings again under the same columns, without a title of their own: the next page of a print. */
function isRepeated(headed: Headed, found: readonly Headed[]): boolean {
  const before = found.findLast(({ range, isRepeat }) => !isRepeat && overlaps(range, headed.range));
  if (before === undefined) return false;
  const isSame = signature(before) === signature(headed) && before.range.left === headed.range.left;
  if (!isSame) return false;
  const title = titleAbove(headed.range, before.below.first);
  return title.text === "" || isSameTitle(title.text, titleAbove(before.range, 0).text);
}

function signature({ columns, range }: Headed): string {
  return columns
    .map(({ index, words, group }) => `${index - range.left} ${plainText(group)} ${plainText(words)}`)
    .join("|");
}

function overlaps(a: { left: number; right: number }, b: { left: number; right: number }): boolean {
  return a.left <= b.right && b.left <= a.right;
}

/** Where headings across and headings down share cells, those of which more are known. */
function betterProven(upright: readonly Headed[], turned: readonly Headed[]): Headed[] {
  const clash = (a: Headed, b: Headed) => {
    const [one, other] = [onSheet(a.range), onSheet(b.range)];
    return overlaps(one, other) && one.top <= other.bottom && other.top <= one.bottom;
  };
  const isBeaten = (one: Headed, others: readonly Headed[]) =>
    others.some((other) => other.known > one.known && clash(one, other));
  const isOfOther = (one: Headed) =>
    !isSureOfMark(one) && [...upright, ...turned].some((other) => other.known > one.known && isInBody(one, other));
  const free = [...upright.filter((one) => !isBeaten(one, turned)), ...turned.filter((one) => !isBeaten(one, upright))];
  return free.filter((one) => !one.isRepeat && !isOfOther(one));
}

/** A word that may head marks, as `column`, is a cell like others below headings that are better known. */
function isSureOfMark({ columns, range }: Headed): boolean {
  const mark = columns.find(({ index }) => index === range.mark);
  return mark !== undefined && markHeading(mark.words) === "sure";
}

/** True where headings stand among the other's rows: below its columns, and right below a row of several cells. */
function isInBody(one: Headed, { range }: Headed): boolean {
  const { grid, left, right, bottom } = range;
  const inner = onSheet(one.range);
  const [top, from, to] = grid.isTurned ? [inner.left, inner.top, inner.bottom] : [inner.top, inner.left, inner.right];
  if (top <= bottom || from < left || to > right) return false;
  let filled = 0;
  for (let column = left; column <= right; column++) if (grid.text(top - 1, column) !== "") filled++;
  return filled >= 3;
}

function onSheet({ grid, top, left, bottom, right }: HeadingRange): Rectangle {
  return grid.isTurned ? { top: left, left: top, bottom: right, right: bottom } : { top, left, bottom, right };
}

function inReadingOrder(a: Headed, b: Headed): number {
  const [one, other] = [onSheet(a.range), onSheet(b.range)];
  return one.top - other.top || one.left - other.left || Number(a.range.grid.isTurned) - Number(b.range.grid.isTurned);
}

/** A table, and the rows of the sheet that it begins and ends in. */
interface Draft {
  readonly table: FoundTable;
  readonly top: number;
}

function draftTable(headed: Headed, all: readonly Headed[], sheet: string): Draft {
  const { range, columns, below } = headed;
  const title = titleAbove(range, 0);
  const body = readBody({
    ...{ grid: range.grid, columns, mark: range.mark, first: below.first },
    last: lastRow(headed, all),
    headings: headingTexts(headed),
  });
  const leftOut = [...headingRest(headed), ...body.leftOut];
  return {
    top: onSheet(range).top,
    table: {
      ...{ sheet, title: title.text, upperLeft: upperLeft(range), isTurned: range.grid.isTurned },
      columns: columns.map((column) => foundColumn(column, headed)),
      rows: body.rows,
      leftOut,
      notes: body.notes,
    },
  };
}

function foundColumn({ words, group, unit, at, index }: HeadingColumn, { range, below }: Headed): FoundColumn {
  range.grid.take(at.row, at.column);
  return { words, group, unit: unit ?? below.units.get(index) ?? null, cell: range.grid.cell(at.row, at.column) };
}

/** The row above the next table's title, of those that stand below this one. */
function lastRow({ range }: Headed, all: readonly Headed[]): number {
  const { grid } = range;
  let last = grid.height - 1;
  for (const other of all) {
    if (other.range === range) continue;
    const rectangle = onSheet(other.range);
    const [top, left, right] = grid.isTurned
      ? [rectangle.left, rectangle.top, rectangle.bottom]
      : [rectangle.top, rectangle.left, rectangle.right];
    if (top <= range.bottom || top > last + 1 || !overlaps({ left, right }, range)) continue;
    last = titleTop(other, grid, top, range.bottom + 1) - 1;
  }
  return last;
}

function titleTop({ range }: Headed, grid: SheetGrid, top: number, highest: number): number {
  return range.grid.isTurned === grid.isTurned ? titleAbove(range, highest).top : top;
}

function upperLeft({ grid, top, bottom, left }: HeadingRange): string {
  for (let row = top; row <= bottom; row++) if (grid.text(row, left) !== "") return grid.place(row, left);
  return grid.place(top, left);
}

/** Texts of each row of headings, by column. */
function headingTexts({ range, below }: Headed): readonly ReadonlyMap<number, string>[] {
  const rows: ReadonlyMap<number, string>[] = [];
  for (let row = range.top; row < below.first; row++) {
    const texts = new Map<number, string>();
    for (let column = range.left; column <= range.right; column++) {
      const text = range.grid.text(row, column);
      if (text !== "") texts.set(column, plainText(text));
    }
    rows.push(texts);
  }
  return rows;
}

/** What stands in the rows of headings beside the words of the columns: groups, first halves, units, numbers. */
function headingRest({ range, columns, below }: Headed): readonly LeftOut[] {
  const { grid } = range;
  const words = new Set(columns.map(({ at }) => `${at.row} ${at.column}`));
  const rest: LeftOut[] = [];
  for (let row = range.top; row < below.first; row++) {
    const why = below.rows.find((each) => each.row === row)?.why ?? "stands over headings";
    for (let column = range.left; column <= range.right; column++) {
      if (grid.text(row, column) === "" || words.has(`${row} ${column}`)) continue;
      grid.take(row, column);
      rest.push({ cell: grid.cell(row, column), why });
    }
  }
  return rest;
}

/** What no table took is told with the table above it, or with the first. */
function withStrays(drafts: readonly Draft[], strays: readonly StrayText[]): readonly FoundTable[] {
  const lists = drafts.map((): StrayText[] => []);
  let at = 0;
  for (const stray of strays) {
    while ((drafts[at + 1]?.top ?? Number.POSITIVE_INFINITY) <= stray.row) at++;
    lists[at]?.push(stray);
  }
  return drafts.map(({ table, top }, index) => withBeside(table, top, lists[index] ?? []));
}

function withBeside(table: FoundTable, top: number, strays: readonly StrayText[]): FoundTable {
  if (strays.length === 0) return table;
  const leftOut = strays.map(({ row, cell }) => ({
    cell,
    why: row < top ? "stands above the table" : "stands beside the table, under no heading",
  }));
  const notes = new Map([...notesBeside(strays), ...table.notes]);
  const title = table.isTurned && table.title === "" ? titleAmong(strays.filter(({ row }) => row < top)) : table.title;
  return { ...table, title, leftOut: [...table.leftOut, ...leftOut], notes };
}

function titleAmong(above: readonly StrayText[]): string {
  const texts = above.map(({ cell }) => oneLine(cell.text));
  return texts.find((text) => /schedule|table|list/i.test(text)) ?? texts.at(-1) ?? "";
}

/** Notes that are written beside a table, each column of texts from above. */
function notesBeside(strays: readonly StrayText[]): ReadonlyMap<string, string> {
  const reading = new NoteReading();
  const sorted = withNumbers(strays).sort((a, b) => a.column - b.column || a.row - b.row);
  let before: StrayText | undefined;
  for (const stray of sorted) {
    if (before === undefined || before.column !== stray.column || before.row + 1 !== stray.row) reading.end();
    if (NOTE_START.test(oneLine(stray.cell.text)) || before !== undefined) reading.take([stray.cell]);
    before = stray;
  }
  return reading.finish();
}

/** A number that stands in a cell before its text is joined to it. */
function withNumbers(strays: readonly StrayText[]): StrayText[] {
  const joined: StrayText[] = [];
  for (const stray of strays) {
    const before = joined.at(-1);
    const isNumbered = before?.row === stray.row && /^(?:\(?\d{1,2}[.)]\)?|\*+)$/.test(oneLine(before.cell.text));
    if (before === undefined || !isNumbered) joined.push(stray);
    else joined.splice(-1, 1, { ...stray, cell: { ...stray.cell, text: `${before.cell.text} ${stray.cell.text}` } });
  }
  return joined;
}
