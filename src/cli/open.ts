/** A job opened from its file and the files that it names. */
import type { Outcome } from "../diagnostics/finding.js";
import { openJob } from "../tasks/open.js";
import type { OpenedJob } from "../tasks/opened-job.js";
import { loadInputs } from "./load.js";
import type { Shell } from "./shell.js";
import { todayOf } from "./shell.js";

/** `job` as the user named it. A job without a date is dated today; `register`: of questions, for one that names none. */
export async function openFile(job: string, shell: Shell, register?: string): Promise<Outcome<OpenedJob>> {
  const inputs = await loadInputs(job, shell);
  if (!inputs.ok) return inputs;
  const known = register === undefined ? inputs.value : { ...inputs.value, register };
  return openJob(known, { date: todayOf(shell) });
}
