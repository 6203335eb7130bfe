/** What the files of the plan share. */
import type { CheckedJob } from "../checks/checked.js";
import { releaseEnding, safeForFileName } from "./names.js";

/** `anchor-rod-plan_rev-B`, and that the job is not released where it is not. */
export function planStem({ job, layoutOpen }: Pick<CheckedJob, "job" | "layoutOpen">): string {
  return `anchor-rod-plan_rev-${safeForFileName(job.revision)}${releaseEnding(job, layoutOpen)}`;
}
