/** ISO 7091 plain washers, in mm: d1 inside, d2 outside, h thickness. */
import { isoWasher as row } from "../fasteners.js";
import type { StandardTable, WasherRow } from "../model.js";

const SETS = "open hardware data sets";

/** Size, d1, d2, h nominal (null: not listed), h greatest, source, confidence, note. */
export const iso7091Washers: StandardTable<WasherRow> = {
  edition: "ISO 7091",
  clause: "plain washers",
  rows: [
    row("M10", 11, 20, 2, 2.2, SETS, "medium", "one open data set h_max=2.3"),
    row("M12", 13.5, 24, 2.5, 2.7, SETS, "medium", "one open data set h_max=2.8"),
    row("M16", 17.5, 30, 3, 3.3, SETS, "medium", "one open data set h_max=3.6"),
    row("M20", 22, 37, 3, 3.3, SETS, "medium", "one open data set h_max=3.6"),
    row("M24", 26, 44, 4, 4.3, SETS, "medium", "one open data set h_max=4.6"),
    row("M30", 33, 56, 4, 4.3, SETS, "medium", "one open data set h_max=4.6"),
    row("M36", 39, 66, 5, 5.6, SETS, "medium", "one open data set h_max=6"),
    row("M42", 45, 78, 8, 9, SETS, "medium", "one open data set h_max=9.2"),
    row("M48", 52, 92, 8, 9, SETS, "medium", "one open data set h_max=9.2"),
    row("M56", 62, 105, 10, 11, SETS, "medium", "one open data set h_max=11.2"),
    row("M64", 70, 115, 10, 11, SETS, "medium", "one open data set h_max=11.2"),
  ],
};
