/** The set as a file. */
import type { JobOutput } from "./model.js";
import { releaseEnding, safeForFileName } from "./names.js";

/** Made last of the documents, of the pages that were taken while the sheets were drawn. */
export const sheetSetPdf: JobOutput<"sheet-set-pdf"> = {
  scope: "job",
  kind: "sheet-set-pdf",
  role: "sheet",
  title: "Every sheet in one PDF, each page at its true size: cover with index, plan, templates",
  drawn: false,
  top: "set.pdf",
  named: "JOB_rev-REVISION[_NOT-RELEASED]_set.pdf",
  needs: "job",
  write: (checked, { set }) => {
    if (set === null) return [];
    const { job } = checked;
    const stem = `${safeForFileName(job.number)}_rev-${safeForFileName(job.revision)}${releaseEnding(job)}`;
    return [{ path: `${stem}_set.pdf`, bytes: set.finish(checked) }];
  },
};
