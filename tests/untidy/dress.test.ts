/** The same rows in every layout, as a sheet, as CSV and as a workbook: the same table is found. */
import { describe, expect, it } from "vitest";
import { readCsv } from "../../src/readers/csv.js";
import type { Table } from "../../src/readers/inputs.js";
import { openWorkbook } from "../../src/readers/workbook.js";
import { findTables } from "../../src/schedule/find-tables.js";
import { knownHeading } from "../unit/schedule/drawn-sheet.js";
import { csvOf, dress } from "./dress.js";
import { layouts } from "./layouts.js";
import { xlsxOf } from "./workbook.js";

const HEADINGS = [
  ...["MARK", "QTY", "ANCHOR RODS / SIZE", "ANCHOR RODS / GRADE", "ANCHOR RODS / EMBED"],
  ...["BASE PLATE / X", "BASE PLATE / Y", "BASE PLATE / THK", "REMARKS"],
];
const UNITS = {
  MARK: "",
  "ANCHOR RODS / SIZE": "in",
  "ANCHOR RODS / EMBED": "(IN.)",
  "BASE PLATE / X": "in",
  "BASE PLATE / Y": "in",
  "BASE PLATE / THK": "in",
};
const ROWS = [
  ["B1", "4", "3/4", "36", "12", "14", "14", "1", "HDG"],
  ["B2", "2", "1", "55", "18", "16", "18", "1-1/4", "DO"],
  ["B3", "6", "1-1/4", "HEAVY HEX", "18", "20", "18", "1-1/4", ""],
  ["A", "1", "M24", "8.8", "300", "350", "350", "30", "PLAIN"],
].map((texts) => Object.fromEntries(HEADINGS.map((heading, at) => [heading, texts[at] ?? ""])));
const WANTED = ROWS.map((row) => HEADINGS.map((heading) => row[heading]));

function found(table: Table): { headings: string[]; rows: string[][]; tables: number } {
  const tables = findTables(table, knownHeading);
  const [first] = tables;
  const headings = first?.columns.map(({ group, words }) => `${group} ${words}`.trim()) ?? [];
  return { headings, rows: first?.rows.map((row) => row.map(({ text }) => text)) ?? [], tables: tables.length };
}

const ALIKE = { headings: HEADINGS.map((heading) => heading.replace(" / ", " ")), rows: WANTED, tables: 1 };

describe.each(Object.entries(layouts(UNITS)))("%s", (_, how) => {
  const table = dress(HEADINGS, ROWS, how);

  it("as a sheet", () => {
    expect(found(table)).toEqual(ALIKE);
  });

  it("as CSV", () => {
    const read = readCsv(csvOf(table), "s.csv");
    expect(read.ok && found(read.value)).toEqual(ALIKE);
  });

  it("as a workbook", async () => {
    const read = await openWorkbook(await xlsxOf([{ ...table, sheet: "Cover", rows: [] }, table]), "s.xlsx");
    const sheet = read.ok ? read.value.sheets.find(({ sheet }) => sheet === table.sheet) : undefined;
    expect(sheet === undefined ? null : found(sheet)).toEqual(ALIKE);
  });
});

it("equal texts that are merged mean each row", () => {
  const table = dress(HEADINGS, ROWS, { mergesEqual: ["BASE PLATE / THK", "ANCHOR RODS / EMBED"] });
  expect(table.merges?.length).toBeGreaterThan(3);
  expect(found(table).rows).toEqual(WANTED);
});

it("the same dress is the same sheet", () => {
  for (const how of Object.values(layouts(UNITS)))
    expect(dress(HEADINGS, ROWS, how)).toEqual(dress(HEADINGS, ROWS, how));
});
