/** The same as a workbook, to be printed and ticked off against the print. */
import { writeReadAsXlsx } from "../formats/read-as-xlsx.js";
import type { JobOutput } from "./model.js";
import { FOLDERS } from "./names.js";
import { readAsForm } from "./read-as.js";

const NAME = `${FOLDERS.engineer}/read-as.xlsx`;

/** Written where read-as.csv is. */
export const readAsXlsx: JobOutput<"read-as-xlsx"> = {
  scope: "job",
  kind: "read-as-xlsx",
  role: "document",
  title: "The same as a workbook with a column for the checker's tick",
  drawn: false,
  named: NAME,
  needs: "job",
  write: ({ job }) =>
    job.readAs === null || job.readAs.isPlain
      ? []
      : [{ path: NAME, bytes: writeReadAsXlsx(readAsForm(job.readAs, job.unit), job) }],
};
