/** The set as a file. */
import type { JobOutput } from "./model.js";
import { jobStem } from "./names.js";

/** Made last of the documents, of the pages that were taken while the sheets were drawn. */
export const sheetSetPdf: JobOutput<"sheet-set-pdf"> = {
  scope: "job",
  kind: "sheet-set-pdf",
  role: "sheet",
  title: "Every sheet in one PDF, each page at its true size: cover with index, plan, templates",
  drawn: false,
  named: "JOB_rev-REVISION[_NOT-RELEASED]_set.pdf",
  needs: "job",
  write: (checked, { set }) => {
    if (set === null) return [];
    return [{ path: `${jobStem(checked.job)}_set.pdf`, bytes: set.finish(checked) }];
  },
};
