/** Tables as they are found on a sheet, made of a few lines; and what is settled of them, as short texts. */

import type { SettleContext, SettledHeadings } from "../../../src/schedule/index.js";
import { settleHeadings } from "../../../src/schedule/index.js";
import type { FoundTable, TableAnswers } from "../../../src/schedule/model.js";

/** Headings as `GROUP / WORDS`, or `WORDS`; rows of texts below. The headings stand in row 5, the rows from row 6 on. */
export function foundTable(headings: readonly string[], ...rows: readonly (readonly string[])[]): FoundTable {
  const columns = headings.map((heading, index) => {
    const [words = "", group = ""] = heading.split(" / ").reverse();
    const unit = /\(([a-z]+)\)$/.exec(words)?.[1] ?? null;
    return { words, group, unit, cell: { text: words, line: 5, column: index + 1 } };
  });
  return {
    sheet: "Bases",
    title: "",
    upperLeft: "A5",
    isTurned: false,
    columns,
    rows: rows.map((texts, row) =>
      headings.map((_, index) => ({ text: texts[index] ?? "", line: row + 6, column: index + 1 })),
    ),
    leftOut: [],
    notes: new Map(),
  };
}

/** Answers of a job for columns. */
export function answersOf(columns: Readonly<Record<string, string>> = {}): TableAnswers {
  return { columns: new Map(Object.entries(columns)), notes: new Map(), cells: new Map() };
}

/** Settles in inches. */
export function settle(
  table: FoundTable,
  columns: Readonly<Record<string, string>> = {},
  context: Partial<SettleContext> = {},
): SettledHeadings {
  return settleHeadings(table, answersOf(columns), { file: "b.xlsx", unit: "in", ...context });
}

/** What each column became: the name of its heading, or note, left out, asked. */
export function settledAs({ columns }: SettledHeadings): readonly string[] {
  return columns.map(({ heading, as }) => (as === "value" ? (heading?.name ?? "") : as));
}
