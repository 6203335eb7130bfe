/** The same quote as CSV. */
import { writeListCsv } from "../formats/list-csv.js";
import { listPath, listsOf } from "./lists.js";
import type { JobOutput } from "./model.js";
import { textFile } from "./text-file.js";

/** Lines without their sum. */
export const quoteCsv: JobOutput<"quote-csv"> = {
  scope: "job",
  kind: "quote-csv",
  role: "table",
  title: "The same lines, without their sum",
  drawn: false,
  named: "rods/JOB_rev-REVISION[_NOT-RELEASED]_quote.csv",
  needs: "job",
  write: (checked, around) => {
    const { quote } = listsOf(checked, around);
    return [textFile(listPath(checked, quote.key, "csv"), writeListCsv(quote))];
  },
};
