/** The same lists, a file each. */
import { writeListCsv } from "../formats/list-csv.js";
import { listPath, listsOf } from "./lists.js";
import type { JobOutput } from "./model.js";
import { textFile } from "./text-file.js";

/** Rows without sums. */
export const rodListsCsv: JobOutput<"rod-lists-csv"> = {
  scope: "job",
  kind: "rod-lists-csv",
  role: "table",
  title: "The same lists, a file each: rows alone, without their sums",
  drawn: false,
  named:
    "rods/JOB_rev-REVISION[_NOT-RELEASED]_(rods|bars-to-cut|pieces-on-bars|bars-by-size|threads|hardware|packing|not-given).csv",
  needs: "job",
  write: (checked, around) =>
    listsOf(checked, around).tables.map((table) => textFile(listPath(checked, table.key, "csv"), writeListCsv(table))),
};
