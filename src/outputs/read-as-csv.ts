/** What was understood of the schedule, a line a value, for the checker and for programs. */
import { writeReadAsCsv } from "../formats/read-as-csv.js";
import type { JobOutput } from "./model.js";
import { FOLDERS } from "./names.js";
import { readAsForm } from "./read-as.js";
import { textFile } from "./text-file.js";

const NAME = `${FOLDERS.engineer}/read-as.csv`;

/** None of a job whose schedule was in the program's own headings and cells: there is nothing to tick off. */
export const readAsCsv: JobOutput<"read-as-csv"> = {
  scope: "job",
  kind: "read-as-csv",
  role: "document",
  title: "What was understood of the schedule as it was sent: the cell's own text beside the value taken",
  drawn: false,
  named: NAME,
  needs: "job",
  write: ({ job: { readAs, unit } }) =>
    readAs === null || readAs.isPlain ? [] : [textFile(NAME, writeReadAsCsv(readAsForm(readAs, unit)))],
};
