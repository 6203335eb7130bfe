/** A file that stands for a spreadsheet -> its table. */
import type { Outcome } from "../diagnostics/finding.js";
import { readCsv } from "../readers/csv.js";
import type { InputFile, Table } from "../readers/inputs.js";
import { contentOf } from "../readers/inputs.js";

/** A workbook that was opened is its table; any other content is read as CSV. */
export function openTable(file: InputFile, name: string): Outcome<Table> {
  if (typeof file === "object" && "kind" in file && file.kind === "table")
    return { ok: true, value: file, findings: file.remarks ?? [] };
  return readCsv(contentOf(file) ?? "", name);
}
