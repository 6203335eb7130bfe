/** The sheets of a file -> the one table that is meant, or what to tell instead. */
import type { Finding } from "../diagnostics/finding.js";
import { listed } from "../diagnostics/listed.js";
import { nameCell } from "../readers/cell-place.js";
import type { Table } from "../readers/inputs.js";
import type { TableKind } from "./choose-table.js";
import { chooseTable, countRows, placeOfTable } from "./choose-table.js";
import { findTables } from "./find-tables.js";
import type { FoundTable, ReadQuestion, TableAnswers } from "./model.js";
import { explainNoTable } from "./no-table.js";
import type { KnownHeading } from "./sheet-words.js";

/** A table, and the sheet that it stands on. */
export interface TableOnSheet {
  readonly table: FoundTable;
  readonly sheet: Table;
}

/** The table, or why there is none. */
export type MeantTable =
  | { readonly kind: "one"; readonly found: TableOnSheet; readonly findings: readonly Finding[] }
  | { readonly kind: "none"; readonly finding: Finding; readonly questions: readonly ReadQuestion[] };

/** Looks on every sheet that is shown, or on the one that is named. */
export function meantTable(
  sheets: readonly Table[],
  file: string,
  answers: TableAnswers,
  kind: TableKind,
  known: KnownHeading,
): MeantTable {
  const shown = sheets.filter(({ sheet, isHidden }) => isHidden !== true || sheet === answers.sheet);
  const found = shown.flatMap((sheet) => findTables(sheet, known).map((table): TableOnSheet => ({ table, sheet })));
  if (found.length === 0) return { kind: "none", finding: noHeadings(shown, file, kind, known), questions: [] };
  const choice = chooseTable(found, answers, kind);
  switch (choice.kind) {
    case "one":
      return { ...choice, findings: otherTables(choice.found, found, file, kind) };
    case "asked":
      return { kind: "none", finding: askedTable(choice.question, file, kind), questions: [choice.question] };
    case "none":
      return { kind: "none", finding: faultOf("no-table", file, choice.message, choice.hint), questions: [] };
  }
}

/** What is a table of the kind too, and is not read since the job names another: its bases are told as missing. */
function otherTables(
  chosen: TableOnSheet,
  found: readonly TableOnSheet[],
  file: string,
  { isMeant, wanted }: TableKind,
): readonly Finding[] {
  const others = found.filter((other) => other !== chosen && isMeant(other.table)).map(({ table }) => table);
  if (others.length === 0) return [];
  const places = others.map((table) => `${placeOfTable(table)} with ${countRows(table)}`);
  const verb = others.length === 1 ? "has" : "have";
  const message = `${listed(places, MOST_TABLES)} ${verb} ${wanted} too and ${others.length === 1 ? "is" : "are"} not read; the job means the table at ${placeOfTable(chosen.table)}`;
  const hint = "where they hold too, put them into one table";
  return [{ code: "other-tables", severity: "warning", at: { file }, message, hint }];
}

const MOST_TABLES = 6;

function faultOf(code: string, file: string, message: string, hint: string): Finding {
  return { code, severity: "error", at: { file }, message, ...(hint === "" ? {} : { hint }) };
}

function noHeadings(sheets: readonly Table[], file: string, kind: TableKind, known: KnownHeading): Finding {
  const { message, hint, sheet, cell } = explainNoTable(sheets, known, kind);
  const finding = faultOf("no-headings", file, message, hint);
  if (cell === null) return finding;
  const { line, column } = cell;
  return { ...finding, at: { file, line, column, cell: nameCell(sheet, cell) } };
}

function askedTable({ text, choices }: ReadQuestion, file: string, { key }: TableKind): Finding {
  const lines = choices.map(({ line, means }) => `${key}: { file: ${JSON.stringify(file)}, ${line} } where ${means}`);
  return faultOf("asked-table", file, text, `answer in the job: ${lines.join("; or ")}`);
}
