/** What the files of the plan folder share. */
import type { Job } from "../job/model/job.js";
import { releaseEnding, safeForFileName } from "./names.js";

/** The folder. */
export const PLAN = "plan";

/** `plan/anchor-rod-plan_rev-B`, and that the job is not released where it is not. */
export function planStem(job: Job): string {
  return `${PLAN}/anchor-rod-plan_rev-${safeForFileName(job.revision)}${releaseEnding(job)}`;
}
