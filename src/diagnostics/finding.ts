/**
 * A user's mistake is a value, never an exception: stages collect findings and the shell shows all of them at once.
 * A bug is an exception.
 */
import type { Printable } from "./printable.js";
import { terminalText } from "./printable.js";

/** Where a finding was made. Lines and columns count from 1; `path` is the place inside the document, as `bases[2].rods.diameter`. */
export interface Place {
  readonly file: string;
  readonly line?: number;
  readonly column?: number;
  readonly path?: string;
  /** Place of a cell as its spreadsheet names it: `Bases!E7`, or `E7` in a text file. */
  readonly cell?: string;
}

/** error: what the finding is about cannot be used. warning: it is used as read. */
export type FindingSeverity = "error" | "warning";

/** What is wrong or doubtful in what the user handed over, and where. */
export interface Finding {
  /** Stable identifier in kebab case, for programs. */
  readonly code: string;
  readonly severity: FindingSeverity;
  readonly at: Place;
  /** What is wrong, with the offending value, its unit, and what is allowed. One sentence, no trailing newline. */
  readonly message: string;
  /** What would put it right, when that is known: the nearest known key, a unit. */
  readonly hint?: string;
}

/** A value, or the findings that prevented it. Warnings may accompany a value. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T; readonly findings: readonly Finding[] }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** `file:line:column`, or `file Bases!E7` for a cell, for a text that names a second place. */
export function placeWords({ file, line, column, cell }: Place): string {
  if (cell !== undefined) return `${file} ${cell}`;
  return [file, ...(line === undefined ? [] : [line, ...(column === undefined ? [] : [column])])].join(":");
}

/** What a place is about, as `bases[2].rods.diameter` or `Rod dia`: a cell's own name tells its row. */
export function subjectOf({ path = "", cell }: Place): string {
  return cell === undefined ? path : path.replace(/^row \d+ ?/, "");
}

/** `file:line:column path: message (hint)`, or `file Bases!E7 Rod dia: ...`, the form in which every fault is shown; without a sign that cannot be seen. */
export function formatFinding(finding: Finding): Printable {
  return findingLine(finding);
}

const findingLine = terminalText((finding: Finding): string => {
  const subject = subjectOf(finding.at);
  const hint = finding.hint === undefined ? "" : ` (${finding.hint})`;
  return `${placeWords(finding.at)}${subject === "" ? "" : ` ${subject}`}: ${finding.message}${hint}`;
});

/** True when any finding forbids going on. */
export function hasErrors(findings: readonly Finding[]): boolean {
  return findings.some((finding) => finding.severity === "error");
}

/** An error about a file or folder as a whole. */
export function fileFault(file: string, code: string, message: string): Finding {
  return { code, severity: "error", at: { file }, message };
}
