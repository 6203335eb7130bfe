/** The ledger of a job, and nothing written. */
import type { Summary } from "../summary/model.js";
import { makePackage } from "./build.js";
import type { OpenedJob } from "./opened-job.js";

/** Every row of every base and of the job, worst first, in the form of `summary.json`, which then lists no files. */
export function checkJob(opened: OpenedJob): Summary {
  return makePackage(opened, { version: "", document: null, outputs: [] }).finish().summary;
}
