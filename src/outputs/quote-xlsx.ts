/** A quote by the shop's own rates, as a workbook. */
import { writeListsXlsx } from "../formats/list-xlsx.js";
import { listPath, listsOf } from "./lists.js";
import type { JobOutput } from "./model.js";

/** Written before release too, and says so. */
export const quoteXlsx: JobOutput<"quote-xlsx"> = {
  scope: "job",
  kind: "quote-xlsx",
  role: "table",
  title: "Quote: quantities times the shop's own rates; a rate that is not set is named, not guessed",
  drawn: false,
  named: "rods/JOB_rev-REVISION[_NOT-RELEASED]_quote.xlsx",
  needs: "job",
  write: (checked, around) => {
    const { quote } = listsOf(checked, around);
    return [{ path: listPath(checked, quote.key, "xlsx"), bytes: writeListsXlsx(checked.job, [quote]) }];
  },
};
