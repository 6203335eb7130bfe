/** A file that stands for a spreadsheet -> its table. */
import type { Outcome } from "../diagnostics/finding.js";
import { readCsv } from "../readers/csv.js";
import type { InputFile, Table } from "../readers/inputs.js";
import { contentOf } from "../readers/inputs.js";
import { spreadsheetFault, spreadsheetKind } from "../readers/spreadsheet-kind.js";

/** A workbook that was opened is its table; any other content is read as CSV. */
export function openTable(file: InputFile, name: string): Outcome<Table> {
  if (typeof file === "object" && "kind" in file && file.kind === "table")
    return { ok: true, value: file, findings: file.remarks ?? [] };
  const content = contentOf(file) ?? "";
  const kind = spreadsheetKind(name, content);
  if (kind === null) return readCsv(content, name);
  const instead =
    kind === "xlsx"
      ? "open it with openWorkbook"
      : "allowed is .xlsx or CSV: open it in a spreadsheet and save it as .xlsx";
  return { ok: false, findings: [spreadsheetFault(name, kind, instead)] };
}
