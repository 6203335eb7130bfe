/** ISO 7093 plain washers, in mm: d1 inside, d2 outside, h thickness. */
import { isoWasher as row } from "../fasteners.js";
import type { StandardTable, WasherRow } from "../model.js";

const SETS = "open hardware data sets";
const ONE_SET = "open hardware data set";

/** Size, d1, d2, h nominal (null: not listed), h greatest, source, confidence, note. */
export const iso7093Washers: StandardTable<WasherRow> = {
  edition: "ISO 7093",
  clause: "plain washers",
  rows: [
    row("M10", 10.5, 30, 2.5, 2.7, SETS, "high"),
    row("M12", 13, 37, 3, 3.3, SETS, "high"),
    row("M14", 15, 44, 3, 3.3, SETS, "high"),
    row("M16", 17, 50, 3, 3.3, SETS, "high"),
    row("M18", 19, 56, 4, 4.3, SETS, "medium", "one open data set d1=20 d2=56; one open data set h_max=4.6"),
    row("M20", 21, 60, 4, 4.3, SETS, "medium", "one open data set d1=22 d2=60; one open data set h_max=4.6"),
    row("M22", 23, 66, 5, 5.6, ONE_SET, "medium"),
    row("M24", 25, 72, 5, 5.6, SETS, "medium", "one open data set d1=26 d2=72; one open data set h_max=6"),
    row("M27", 30, 85, 6, 6.6, ONE_SET, "medium"),
    row("M30", 33, 92, 6, 6.6, SETS, "medium", "one open data set h_max=7"),
    row("M33", 36, 105, 6, 6.6, ONE_SET, "medium"),
    row("M36", 39, 110, 8, 9, SETS, "medium", "one open data set h_max=9.2"),
  ],
};
