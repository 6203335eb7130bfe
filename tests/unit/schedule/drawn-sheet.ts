/** Small sheets drawn as lines of text for tests, and what was found on them in few words. */

import { columnNumber } from "../../../src/readers/cell-place.js";
import type { Cell, Merge, Table } from "../../../src/readers/inputs.js";
import { findTables } from "../../../src/schedule/find-tables.js";
import { meaningsOf } from "../../../src/schedule/heading-meanings.js";
import type { FoundColumn, FoundTable } from "../../../src/schedule/model.js";
import { placementMeaningsOf } from "../../../src/schedule/settle-placements.js";

/** What is special about some cells: places as `B5`, ranges as `B5:B7`. */
export interface SheetLooks {
  readonly merges?: readonly string[];
  readonly struck?: readonly string[];
  readonly hidden?: readonly string[];
  readonly sheet?: string;
}

/** A sheet of lines, a cell between two `|`; `/` with spaces around it is no line break, `\n` in a cell is one. */
export function drawSheet(lines: readonly string[], looks: SheetLooks = {}): Table {
  const cells = lines.map((line) =>
    line === "" ? [] : line.split("|").map((text) => text.trim().replace(/\\n/g, "\n")),
  );
  return sheetOf(cells, looks);
}

/** A sheet of texts. */
export function sheetOf(texts: readonly (readonly string[])[], looks: SheetLooks = {}): Table {
  const width = Math.max(0, ...texts.map((row) => row.length));
  const [struck, hidden] = [(looks.struck ?? []).map(mergeOf), (looks.hidden ?? []).map(mergeOf)];
  const isIn = (ranges: readonly Merge[], row: number, column: number) =>
    ranges.some(({ top, left, bottom, right }) => row >= top && row <= bottom && column >= left && column <= right);
  const rows = texts.map((row, r) =>
    Array.from({ length: width }, (_, c): Cell => {
      const [line, column] = [r + 1, c + 1];
      const isStruck = isIn(struck, line, column) ? { isStruck: true } : {};
      const isHidden = isIn(hidden, line, column) ? { isHidden: true } : {};
      return { text: row[c] ?? "", line, column, ...isStruck, ...isHidden };
    }),
  );
  return { kind: "table", sheet: looks.sheet ?? "Bases", rows, merges: (looks.merges ?? []).map(mergeOf) };
}

/** `B5:B7`, or one cell. */
export function mergeOf(range: string): Merge {
  const [first = "", last = first] = range.split(":");
  const place = (text: string) => {
    const [, letters = "", digits = ""] = /^([A-Z]+)(\d+)$/.exec(text) ?? [];
    return { row: Number(digits), column: columnNumber(letters) };
  };
  const [from, to] = [place(first), place(last)];
  return { top: from.row, left: from.column, bottom: to.row, right: to.column };
}

/** Headings of schedules and of placement lists, and some that prints have beside. */
export function knownHeading(words: string, group: string): boolean {
  const whole = group === "" ? words : `${group} ${words}`;
  if (meaningsOf(whole, "").length > 0 || placementMeaningsOf(whole, "").length > 0) return true;
  if (group === "") return /^(?:size|gage|location)$/i.test(words);
  return /\b(?:rod|bolt|plate|pier|pattern|template)/i.test(group) && GROUPED.test(words);
}

const GROUPED =
  /^(?:qty|no\.?|size|dia\.?|grade|embed(?:ment)?\.?|proj(?:ection)?\.?|length|finish|x|y|thk\.?|thickness|hole|width|depth|n|b|t)$/i;

/** One line for each thing that was found. */
export function told(found: FoundTable): {
  readonly at: string;
  readonly headings: string;
  readonly rows: readonly string[];
  readonly out: readonly string[];
  readonly notes: Readonly<Record<string, string>>;
} {
  return {
    at: `${found.title === "" ? "" : `${found.title} `}${found.upperLeft}${found.isTurned ? " turned" : ""}`,
    headings: found.columns.map(headingOf).join(" | "),
    rows: found.rows.map((row) => row.map(({ text }) => text).join(" | ")),
    out: found.leftOut.map(({ cell, why }) => `${cell.text}: ${why}`),
    notes: Object.fromEntries(found.notes),
  };
}

function headingOf({ words, group, unit }: FoundColumn): string {
  return `${group === "" ? "" : `${group} / `}${words}${unit === null ? "" : ` [${unit}]`}`;
}

/** What is found on a drawn sheet. */
export function findOn(lines: readonly string[], looks: SheetLooks = {}) {
  return findTables(drawSheet(lines, looks), knownHeading).map(told);
}
