/** The cut list as CSV. */
import { writeListCsv } from "../formats/list-csv.js";
import { CUT_LIST_PATTERN, cutListOf, cutListStem, cutListTables } from "./cut-list.js";
import type { JobOutput } from "./model.js";
import { textFile } from "./text-file.js";

/** One file of pieces, and one of the stock. */
export const cutListCsv: JobOutput<"cut-list-csv"> = {
  scope: "job",
  kind: "cut-list-csv",
  role: "table",
  title: "The tables of the cut list of plates as CSV, without totals",
  drawn: false,
  named: `${CUT_LIST_PATTERN}_(plates|by-material).csv`,
  needs: "job",
  write: (checked, around) =>
    cutListTables(cutListOf(checked, around)).map((table) =>
      textFile(`${cutListStem(checked)}_${table.key}.csv`, writeListCsv(table)),
    ),
};
