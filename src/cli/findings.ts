/** Findings as the shell shows them: as lines on standard error, or in machine form on standard output. */

import { counted } from "../checks/words.js";
import { formatCause } from "../diagnostics/cause-words.js";
import type { Finding } from "../diagnostics/finding.js";
import { hasErrors } from "../diagnostics/finding.js";
import type { Cause } from "../diagnostics/gather.js";
import { gatherFindings } from "../diagnostics/gather.js";
import type { Printable } from "../diagnostics/printable.js";
import { joinPrintable, terminalJson, terminalLine } from "../diagnostics/printable.js";
import type { Shell } from "./shell.js";

export { fileFault } from "../diagnostics/finding.js";

/** So many findings are told in machine form, those that forbid going on first; the others are counted. */
const MOST_TOLD = 200;

/** So many causes are told on a terminal: a screen of them. */
const MOST_CAUSES = 20;

/** Where all findings may be had. */
export interface FaultsFile {
  /** The command and its job, as typed: `check job.yaml`. */
  readonly command: string;
  /** The file that they were written to; null where none was asked for. */
  readonly written: string | null;
}

/** Shows findings, each cause once, and how many forbid going on. `faultsFile` is given where the command writes all of them on request. */
export async function showFindings(
  findings: readonly Finding[],
  json: boolean,
  { out, err }: Shell,
  faultsFile?: FaultsFile,
): Promise<void> {
  if (json && hasErrors(findings)) {
    const told = firstOf(findings);
    const untold = findings.length - told.length;
    await out.write(terminalJson({ findings: told, ...(untold > 0 ? { untold } : {}) }));
    return;
  }
  const causes = gatherFindings(findings);
  const told = firstCauses(causes);
  for (const cause of told) {
    const word = cause.first.severity === "warning" ? "warning: " : "";
    await err.write(joinPrintable([terminalLine`${word}`, formatCause(cause), terminalLine`\n`]));
  }
  if (told.length < causes.length) await err.write(untoldLine(causes, told, faultsFile));
  if (faultsFile?.written != null)
    await err.write(terminalLine`${faultsFile.written}: ${counted(findings.length, "finding")} written\n`);
  const errors = findings.filter(({ severity }) => severity === "error");
  const inInput = errors.filter(({ code }) => !RESULT_FOLDERS.has(code)).length;
  const where = inInput > 0 ? `${counted(inInput, "fault")} in the input; ` : "";
  const nothing = faultsFile?.written == null ? "nothing" : "nothing else";
  if (errors.length > 0) await err.write(terminalLine`${where}${nothing} was written\n`);
}

function untoldLine(causes: readonly Cause[], told: readonly Cause[], faultsFile: FaultsFile | undefined): Printable {
  const untold = causes.filter((cause) => !told.includes(cause));
  const places = untold.reduce((sum, { all }) => sum + all.length, 0);
  const more = `and ${untold.length} more ${untold.length === 1 ? "cause" : "causes"} (${counted(places, "place")})`;
  if (faultsFile === undefined) return terminalLine`${more}, which are not shown\n`;
  if (faultsFile.written !== null) return terminalLine`${more}, which stand in ${faultsFile.written}\n`;
  return terminalLine`${more}; rodplate ${faultsFile.command} --faults FILE writes all\n`;
}

/** Codes of findings about the place of a result, which is no input: a full disk is none of the job's faults. */
const RESULT_FOLDERS: ReadonlySet<string> = new Set(["budget-folder", "survey-folder", "faults-file"]);

/** In their order; where there are too many, warnings give way to errors. */
function firstOf(findings: readonly Finding[]): readonly Finding[] {
  if (findings.length <= MOST_TOLD) return findings;
  const errors = findings.filter(({ severity }) => severity === "error");
  const warnings = findings.filter(({ severity }) => severity !== "error");
  return [...errors, ...warnings].slice(0, MOST_TOLD);
}

function firstCauses(causes: readonly Cause[]): readonly Cause[] {
  if (causes.length <= MOST_CAUSES) return causes;
  const isError = ({ first }: Cause) => first.severity === "error";
  return [...causes.filter(isError), ...causes.filter((cause) => !isError(cause))].slice(0, MOST_CAUSES);
}
