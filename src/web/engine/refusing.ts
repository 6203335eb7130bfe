/** Findings as a page tells them, and what is opened or refused by them. */
import { formatCause } from "../../diagnostics/cause-words.js";
import type { Finding, Outcome } from "../../diagnostics/finding.js";
import { gatherFindings } from "../../diagnostics/gather.js";
import { openJob } from "../../tasks/open.js";
import type { OpenedJob } from "../../tasks/opened-job.js";
import { inputsOf } from "./inputs.js";
import type { JobFiles } from "./protocol.js";
import { Refused } from "./refused.js";

/** Each cause once, a sentence each. */
export function causesOf(findings: readonly Finding[]): readonly string[] {
  return gatherFindings(findings.map(withoutOption)).map(formatCause);
}

/** What is an option of the command line is a field here, which has its own words. */
function withoutOption({ hint, ...finding }: Finding): Finding {
  return hint === undefined || hint.startsWith("--") ? finding : { ...finding, hint };
}

/** The value, with what is said of it; or a refusal with every cause. */
export function need<T>(outcome: Outcome<T>, said: string[] = []): T {
  if (!outcome.ok) throw refusedBy(outcome.findings);
  for (const cause of causesOf(outcome.findings)) said.push(cause);
  return outcome.value;
}

/** A refusal by findings. */
export function refusedBy(findings: readonly Finding[]): Refused {
  return new Refused(causesOf(findings), findings);
}

/** A job of the page, opened; `register`: of questions, for one that names none. */
export async function openedJob(
  files: JobFiles,
  date: string,
  register: string | null = null,
): Promise<Outcome<OpenedJob>> {
  const inputs = await inputsOf(files);
  return openJob(register === null ? inputs : { ...inputs, register }, { date });
}
