/** All setting sheets as one file. */
import type { JobOutput } from "./model.js";
import { FOLDERS, jobStem } from "./names.js";

/** Of the pages that the set has; made with the set. */
export const settingSheetsPdf: JobOutput<"setting-sheets-pdf"> = {
  scope: "job",
  kind: "setting-sheets-pdf",
  role: "sheet",
  title: "The setting sheets of all bases in one PDF, for the field",
  drawn: false,
  named: "field/JOB_rev-REVISION[_NOT-RELEASED]_setting-sheets.pdf",
  needs: "job",
  write: ({ job }, { set }) => {
    const bytes = set?.finishPart("setting") ?? null;
    return bytes === null ? [] : [{ path: `${FOLDERS.field}/${jobStem(job)}_setting-sheets.pdf`, bytes }];
  },
};
