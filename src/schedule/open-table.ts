/** A file that stands for a spreadsheet -> its table. */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { nearestWord } from "../diagnostics/nearest.js";
import type { InputFile, Table, Workbook } from "../readers/inputs.js";
import { contentOf } from "../readers/inputs.js";
import { readSheetText } from "../readers/sheet-text.js";
import { spreadsheetFault, spreadsheetKind } from "../readers/spreadsheet-kind.js";

/** A workbook that was opened is its tables, of which `sheet` is meant, else the first that is shown; any other content is read as text. */
export function openTable(file: InputFile, name: string, sheet?: string): Outcome<Table> {
  if (typeof file === "object" && "kind" in file && file.kind === "workbook") return openSheet(file, name, sheet);
  if (typeof file === "object" && "kind" in file && file.kind === "table")
    return { ok: true, value: file, findings: file.remarks ?? [] };
  const content = contentOf(file) ?? "";
  const kind = spreadsheetKind(name, content);
  if (kind === null) return readSheetText(content, name);
  const instead =
    kind === "xlsx"
      ? "open it with openWorkbook"
      : "allowed is .xlsx or CSV: open it in a spreadsheet and save it as .xlsx";
  return { ok: false, findings: [spreadsheetFault(name, kind, instead)] };
}

function openSheet({ sheets }: Workbook, file: string, sheet: string | undefined): Outcome<Table> {
  const isMeant = (each: Table) => (sheet === undefined ? each.isHidden !== true : each.sheet === sheet);
  const table = sheets.find(isMeant);
  if (table !== undefined) return { ok: true, value: table, findings: table.remarks ?? [] };
  return { ok: false, findings: [sheet === undefined ? nothingShown(file) : missingSheet(sheets, file, sheet)] };
}

function nothingShown(file: string): Finding {
  const message = "the workbook shows no sheet of cells; allowed is one";
  return { code: "bad-workbook", severity: "error", at: { file }, message };
}

function missingSheet(sheets: readonly Table[], file: string, sheet: string): Finding {
  const names = sheets.map((each) => each.sheet);
  const near = nearestWord(sheet, names);
  const allowed = names.map((name) => JSON.stringify(name)).join(", ");
  return {
    ...{ code: "missing-sheet", severity: "error", at: { file } },
    message: `there is no sheet "${sheet}"; allowed are ${allowed}`,
    ...(near === undefined ? {} : { hint: `did you mean ${near}?` }),
  };
}
