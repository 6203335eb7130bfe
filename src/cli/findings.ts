/** Findings as the shell shows them: as lines on standard error, or in machine form on standard output. */

import { counted } from "../checks/words.js";
import type { Finding } from "../diagnostics/finding.js";
import { formatFinding, hasErrors } from "../diagnostics/finding.js";
import { joinPrintable, terminalJson, terminalLine } from "../diagnostics/printable.js";
import type { Shell } from "./shell.js";

/** So many findings are told, those that forbid going on first; the others are counted. */
const MOST_TOLD = 200;

/** Shows findings, and how many forbid going on. */
export async function showFindings(findings: readonly Finding[], json: boolean, { out, err }: Shell): Promise<void> {
  const told = firstOf(findings);
  const untold = findings.length - told.length;
  if (json && hasErrors(findings)) {
    await out.write(terminalJson({ findings: told, ...(untold > 0 ? { untold } : {}) }));
    return;
  }
  for (const finding of told) {
    const word = finding.severity === "warning" ? "warning: " : "";
    await err.write(joinPrintable([terminalLine`${word}`, formatFinding(finding), terminalLine`\n`]));
  }
  if (untold > 0) await err.write(terminalLine`and ${untold} more, which are not shown\n`);
  const errors = findings.filter(({ severity }) => severity === "error");
  const inInput = errors.filter(({ code }) => !RESULT_FOLDERS.has(code)).length;
  const where = inInput > 0 ? `${counted(inInput, "fault")} in the input; ` : "";
  if (errors.length > 0) await err.write(terminalLine`${where}nothing was written\n`);
}

/** Codes of findings about the place of a result, which is no input: a full disk is none of the job's faults. */
const RESULT_FOLDERS: ReadonlySet<string> = new Set(["budget-folder", "survey-folder"]);

/** In their order; where there are too many, warnings give way to errors. */
function firstOf(findings: readonly Finding[]): readonly Finding[] {
  if (findings.length <= MOST_TOLD) return findings;
  const errors = findings.filter(({ severity }) => severity === "error");
  const warnings = findings.filter(({ severity }) => severity !== "error");
  return [...errors, ...warnings].slice(0, MOST_TOLD);
}

/** An error about a file or folder as a whole. */
export function fileFault(file: string, code: string, message: string): Finding {
  return { code, severity: "error", at: { file }, message };
}
