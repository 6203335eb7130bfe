/** A file that a job names, as the job's readers take it: workbooks are opened beforehand, their reader is asynchronous. */
import type { Finding } from "../diagnostics/finding.js";
import type { RequestedFile } from "../job/index.js";
import type { InputFile } from "../readers/inputs.js";

/** Opens it; the reader of workbooks is loaded where there is one. */
export async function openRequested(content: string | Uint8Array, request: RequestedFile): Promise<InputFile> {
  const { name, sheet } = request;
  if (typeof content === "string" || !/\.xlsx$/i.test(name)) return content;
  const { openWorkbook } = await import("../readers/workbook.js");
  const opened = await openWorkbook(content, name, sheet);
  if (opened.ok) return opened.value;
  return { kind: "unopened", findings: opened.findings.map((finding) => atSheet(finding, request)) };
}

/** A sheet that is not there is told where the job names it. */
function atSheet(finding: Finding, { sheetAt }: RequestedFile): Finding {
  return finding.code === "missing-sheet" && sheetAt !== undefined ? { ...finding, at: sheetAt } : finding;
}
