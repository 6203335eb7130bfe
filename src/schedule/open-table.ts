/** A file that stands for a spreadsheet -> its tables, one a sheet. */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { nearestWord } from "../diagnostics/nearest.js";
import type { InputFile, Table, Workbook } from "../readers/inputs.js";
import { contentOf } from "../readers/inputs.js";
import { readSheetText } from "../readers/sheet-text.js";
import type { SpreadsheetKind } from "../readers/spreadsheet-kind.js";
import { spreadsheetFault, spreadsheetKind } from "../readers/spreadsheet-kind.js";

/** A workbook that was opened is its sheets, or the one that is named; any other content is read as text. */
export function openTables(file: InputFile, name: string, sheet?: string): Outcome<readonly Table[]> {
  if (typeof file === "object" && "kind" in file && file.kind === "workbook") return openSheets(file, name, sheet);
  if (typeof file === "object" && "kind" in file && file.kind === "table")
    return { ok: true, value: [file], findings: [] };
  if (typeof file === "object" && "kind" in file && file.kind === "unopened")
    return { ok: false, findings: file.findings };
  const content = contentOf(file) ?? "";
  const kind = spreadsheetKind(name, content);
  if (kind === null) {
    const table = readSheetText(content, name);
    return table.ok ? { ok: true, value: [table.value], findings: table.findings } : table;
  }
  return { ok: false, findings: [spreadsheetFault(name, kind, insteadOf(kind))] };
}

function insteadOf(kind: SpreadsheetKind): string {
  if (kind === "xlsx") return "open it with openWorkbook";
  if (kind === "picture")
    return "allowed is .xlsx or CSV: ask for the sheet that it was taken of, or type its cells into one";
  if (kind === "pdf") return "allowed is .xlsx or CSV: ask for the sheet that it was printed from";
  return "allowed is .xlsx or CSV: open it in a spreadsheet and save it as .xlsx";
}

function openSheets({ sheets }: Workbook, file: string, sheet: string | undefined): Outcome<readonly Table[]> {
  const meant = sheets.filter((each) => (sheet === undefined ? each.isHidden !== true : each.sheet === sheet));
  if (meant.length > 0) return { ok: true, value: meant, findings: [] };
  return { ok: false, findings: [sheet === undefined ? nothingShown(file) : missingSheet(sheets, file, sheet)] };
}

function nothingShown(file: string): Finding {
  const message = "the workbook shows no sheet of cells; allowed is one";
  return { code: "bad-workbook", severity: "error", at: { file }, message };
}

function missingSheet(sheets: readonly Table[], file: string, sheet: string): Finding {
  const names = sheets.map((each) => each.sheet);
  const near = nearestWord(sheet, names);
  const message = `there is no sheet "${sheet}"; allowed are ${names.map((name) => `"${name}"`).join(", ")}`;
  const finding: Finding = { code: "missing-sheet", severity: "error", at: { file }, message };
  return near === undefined ? finding : { ...finding, hint: `did you mean ${near}?` };
}
