/** The cut list as a workbook. */
import { writeListsXlsx } from "../formats/list-xlsx.js";
import { CUT_LIST_PATTERN, cutListOf, cutListStem, cutListTables } from "./cut-list.js";
import type { JobOutput } from "./model.js";

/** A sheet of pieces, and one of the stock. */
export const cutListXlsx: JobOutput<"cut-list-xlsx"> = {
  scope: "job",
  kind: "cut-list-xlsx",
  role: "table",
  title:
    "Cut list of plates as a workbook: quantity, plate, size, weight, areas, cut and scribe length, pierces, drilled holes, file; and sums by material and thickness",
  drawn: false,
  named: `${CUT_LIST_PATTERN}.xlsx`,
  needs: "job",
  write: (checked, around) => {
    const tables = cutListTables(cutListOf(checked, around));
    return [{ path: `${cutListStem(checked)}.xlsx`, bytes: writeListsXlsx(checked.job, tables) }];
  },
};
