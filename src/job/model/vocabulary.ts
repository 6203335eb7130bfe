/** What the reader of jobs is told by the rest of the program. */
import type { Severity } from "./job.js";

/** Names that a job may cite. */
export interface Vocabulary {
  /** Every rule id, with the severity of the rule when it fails. */
  readonly rules: Readonly<Record<string, Severity>>;
}

const ORDER: readonly Severity[] = ["advise", "ask", "stop"];

/** True when `severity` is at least the rule's own: a severity may be raised, never lowered. */
export function isRaised(own: Severity, severity: Severity): boolean {
  return ORDER.indexOf(severity) >= ORDER.indexOf(own);
}
