/**
 * Dresses plain rows as the sheets that people send: titles, groups, two rows of headings, units, notes, merges, bases across.
 * The same dress of the same rows is the same sheet. Invented data only.
 */
import type { Cell, Merge, Table } from "../../src/readers/inputs.js";

/** Heading -> text, as `Grade`; a heading with a group over it is written `ANCHOR RODS / SIZE`. */
export type PlainRow = Readonly<Record<string, string>>;

/**
 * How groups are written: merged over their columns, over the first or the middle one alone, over every one, joined to the
 * heading in one cell, or not at all (the heading's words alone).
 */
export type GroupStyle = "merged" | "first" | "middle" | "every" | "joined" | "dropped";

/** What is put on a plain table; whatever is left out is not there. */
export interface Dress {
  readonly sheet?: string;
  /** Rows of one text above; "" is a blank row. */
  readonly titles?: readonly string[];
  readonly groups?: GroupStyle;
  /** The second word of each heading stands in a row of its own (`ROD` over `DIA`). */
  readonly isBroken?: boolean;
  /** Marks and other headings without a group are merged down over both rows. */
  readonly isMergedDown?: boolean;
  /** By heading: a row of units below. */
  readonly units?: PlainRow;
  /** Numbers of the columns below the headings. */
  readonly isNumbered?: boolean;
  /** Blank rows after each so many rows. */
  readonly blankEvery?: number;
  /** The headings again after each so many rows, below the first title. */
  readonly pageEvery?: number;
  /** A text over all columns before the row of that number, from 0. */
  readonly sections?: Readonly<Record<number, string>>;
  /** Equal texts below each other are merged. */
  readonly mergesEqual?: readonly string[];
  /** Blank columns before and between: in front of the columns of these numbers. */
  readonly blankColumns?: readonly number[];
  /** Rows of one text below; "" is a blank row. */
  readonly notes?: readonly string[];
  /** Bases across the columns. */
  readonly isTurned?: boolean;
}

/** A sheet while it is written. */
interface Draft {
  readonly texts: string[][];
  readonly merges: Merge[];
}

/** The sheet; places of its cells are those that a spreadsheet would have. */
export function dress(headings: readonly string[], rows: readonly PlainRow[], how: Dress = {}): Table {
  const table: Draft = { texts: [], merges: [] };
  const headingRows = headingTexts(headings, how);
  putHeadings(table, headings, headingRows, how);
  const firstRow = table.texts.length;
  putRows(table, headings, rows, headingRows, how);
  if (how.mergesEqual !== undefined) mergeEqual(table, firstRow, headings, how.mergesEqual);
  const spaced = withBlankColumns(table, how.blankColumns ?? []);
  const laid = how.isTurned === true ? turn(spaced) : spaced;
  return tableOf(framed(laid, how), how.sheet ?? "Bases");
}

function split(heading: string): { readonly group: string; readonly words: string } {
  const at = heading.indexOf(" / ");
  return at < 0 ? { group: "", words: heading } : { group: heading.slice(0, at), words: heading.slice(at + 3) };
}

function headingTexts(headings: readonly string[], { groups = "merged", isBroken = false }: Dress): string[][] {
  const parts = headings.map(split);
  if (isBroken) return broken(headings.map((heading) => heading.replace(" / ", " ")));
  if (groups === "dropped") return [parts.map(({ words }) => words)];
  if (groups === "joined") return [parts.map(({ group, words }) => `${group} ${words}`.trim())];
  if (parts.every(({ group }) => group === "")) return [parts.map(({ words }) => words)];
  return [
    groupRow(
      parts.map(({ group }) => group),
      groups,
    ),
    parts.map(({ words }) => words),
  ];
}

function broken(headings: readonly string[]): string[][] {
  const cut = headings.map((heading) => heading.lastIndexOf(" "));
  return [
    headings.map((heading, index) => heading.slice(0, Math.max(0, cut[index] ?? 0))),
    headings.map((heading, index) => heading.slice((cut[index] ?? -1) + 1)),
  ];
}

/** First and last column of each group. */
function groupSpans(groups: readonly string[]): readonly { group: string; first: number; last: number }[] {
  const spans: { group: string; first: number; last: number }[] = [];
  groups.forEach((group, index) => {
    const before = spans.at(-1);
    if (before?.group === group) before.last = index;
    else spans.push({ group, first: index, last: index });
  });
  return spans.filter(({ group }) => group !== "");
}

function groupRow(groups: readonly string[], style: GroupStyle): string[] {
  const row = groups.map(() => "");
  for (const { group, first, last } of groupSpans(groups)) {
    if (style === "every") for (let index = first; index <= last; index++) row[index] = group;
    else row[style === "middle" ? Math.floor((first + last) / 2) : first] = group;
  }
  return row;
}

function putHeadings({ texts, merges }: Draft, headings: readonly string[], rows: string[][], how: Dress): void {
  const top = texts.length;
  const parts = headings.map(split);
  const isInTwo = rows.length === 2 && how.isBroken !== true;
  const copied = rows.map((row) => [...row]);
  if (isInTwo && (how.groups ?? "merged") === "merged")
    for (const { first, last } of groupSpans(parts.map(({ group }) => group)))
      if (last > first) merges.push({ top: top + 1, bottom: top + 1, left: first + 1, right: last + 1 });
  if (isInTwo && how.isMergedDown === true)
    parts.forEach(({ group, words }, index) => {
      if (group !== "") return;
      for (const [at, row] of copied.entries()) row[index] = at === 0 ? words : "";
      merges.push({ top: top + 1, bottom: top + 2, left: index + 1, right: index + 1 });
    });
  texts.push(...copied);
  if (how.units !== undefined) texts.push(headings.map((heading) => how.units?.[heading] ?? ""));
  if (how.isNumbered === true) texts.push(headings.map((_, index) => `(${index + 1})`));
}

function putRows(
  table: Draft,
  headings: readonly string[],
  rows: readonly PlainRow[],
  headingRows: string[][],
  how: Dress,
): void {
  rows.forEach((row, index) => {
    if (index > 0 && how.blankEvery !== undefined && index % how.blankEvery === 0) table.texts.push([]);
    if (index > 0 && how.pageEvery !== undefined && index % how.pageEvery === 0)
      putHeadings(table, headings, headingRows, how);
    const section = how.sections?.[index];
    if (section !== undefined) table.texts.push([section]);
    table.texts.push(headings.map((heading) => row[heading] ?? ""));
  });
}

function mergeEqual(
  { texts, merges }: Draft,
  first: number,
  headings: readonly string[],
  which: readonly string[],
): void {
  headings.forEach((heading, column) => {
    if (!which.includes(heading)) return;
    for (let top = first; top < texts.length; ) {
      const text = texts[top]?.[column] ?? "";
      let bottom = top;
      while (text !== "" && (texts[bottom + 1]?.length ?? 0) > 1 && texts[bottom + 1]?.[column] === text) {
        bottom++;
        texts[bottom]?.splice(column, 1, "");
      }
      if (bottom > top) merges.push({ top: top + 1, bottom: bottom + 1, left: column + 1, right: column + 1 });
      top = bottom + 1;
    }
  });
}

function withBlankColumns({ texts, merges }: Draft, before: readonly number[]): Draft {
  const moved = (column: number) => column + before.filter((at) => at < column).length;
  const rows = texts.map((row) =>
    row.flatMap((text, column) => [...before.filter((at) => at === column).map(() => ""), text]),
  );
  return {
    texts: rows,
    merges: merges.map((merge) => ({ ...merge, left: moved(merge.left), right: moved(merge.right) })),
  };
}

function turn({ texts, merges }: Draft): Draft {
  const width = Math.max(0, ...texts.map((row) => row.length));
  const rows = Array.from({ length: width }, (_, column) => texts.map((row) => row[column] ?? ""));
  const turned = merges.map(({ top, left, bottom, right }) => ({ top: left, left: top, bottom: right, right: bottom }));
  return { texts: rows, merges: turned };
}

/** Titles above and notes below lie across the sheet, whichever way the table lies. */
function framed({ texts, merges }: Draft, { titles = [], notes = [] }: Dress): Draft {
  const line = (text: string) => (text === "" ? [] : [text]);
  const down = (merge: Merge) => ({ ...merge, top: merge.top + titles.length, bottom: merge.bottom + titles.length });
  return { texts: [...titles.map(line), ...texts, ...notes.map(line)], merges: merges.map(down) };
}

function tableOf({ texts, merges }: Draft, sheet: string): Table {
  const width = Math.max(0, ...texts.map((row) => row.length));
  const rows = texts.map((row, at) =>
    Array.from({ length: width }, (_, index): Cell => ({ text: row[index] ?? "", line: at + 1, column: index + 1 })),
  );
  return { kind: "table", sheet, rows, ...(merges.length === 0 ? {} : { merges }) };
}

/** The sheet as CSV; merges are lost, as they are where a spreadsheet saves it. */
export function csvOf(table: Table, separator: "," | ";" | "\t" = ","): string {
  const quoted = (text: string) => (/[",;\t\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  return table.rows.map((row) => `${row.map(({ text }) => quoted(text)).join(separator)}\n`).join("");
}
