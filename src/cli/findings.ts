/** Findings as the shell shows them: as lines on standard error, or in machine form on standard output. */

import { counted } from "../checks/words.js";
import type { Finding } from "../diagnostics/finding.js";
import { formatFinding, hasErrors } from "../diagnostics/finding.js";
import { joinPrintable, terminalJson, terminalLine } from "../diagnostics/printable.js";
import type { Shell } from "./shell.js";

/** Shows every finding, and how many forbid going on. */
export async function showFindings(findings: readonly Finding[], json: boolean, { out, err }: Shell): Promise<void> {
  if (json && hasErrors(findings)) {
    await out.write(terminalJson({ findings }));
    return;
  }
  for (const finding of findings) {
    const word = finding.severity === "warning" ? "warning: " : "";
    await err.write(joinPrintable([terminalLine`${word}`, formatFinding(finding), terminalLine`\n`]));
  }
  const errors = findings.filter(({ severity }) => severity === "error").length;
  if (errors > 0) await err.write(terminalLine`${counted(errors, "fault")} in the input; nothing was written\n`);
}

/** An error about a file or folder as a whole. */
export function fileFault(file: string, code: string, message: string): Finding {
  return { code, severity: "error", at: { file }, message };
}
