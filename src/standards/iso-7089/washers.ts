/** ISO 7089 plain washers, in mm: d1 inside, d2 outside, h thickness. */
import { isoWasher as row } from "../fasteners.js";
import type { StandardTable, WasherRow } from "../model.js";

const SETS = "open hardware data sets";
const ONE_SET = "open hardware data set";
const GREATEST = "h is maximum";
const CONFLICT =
  "another open data set row holds ISO 7091-type d1; BOLTS (DIN 125-A) gives 43/78/7 (M42), 50/92/8 (M48): verify";

/** Size, d1, d2, h nominal (null: not listed), h greatest, source, confidence, note. */
export const iso7089Washers: StandardTable<WasherRow> = {
  edition: "ISO 7089",
  clause: "plain washers",
  rows: [
    row("M10", 10.5, 20, 2, 2.2, SETS, "high"),
    row("M12", 13, 24, 2.5, 2.7, SETS, "high"),
    row("M14", 15, 28, null, 2.7, ONE_SET, "medium", GREATEST),
    row("M16", 17, 30, 3, 3.3, SETS, "high"),
    row("M18", 19, 34, null, 3.3, ONE_SET, "medium", GREATEST),
    row("M20", 21, 37, 3, 3.3, SETS, "high"),
    row("M22", 23, 39, null, 3.3, ONE_SET, "medium", GREATEST),
    row("M24", 25, 44, 4, 4.3, SETS, "high"),
    row("M27", 28, 50, null, 4.3, ONE_SET, "medium", GREATEST),
    row("M30", 31, 56, 4, 4.3, SETS, "high"),
    row("M33", 34, 60, null, 5.6, ONE_SET, "medium", GREATEST),
    row("M36", 37, 66, 5, 5.6, SETS, "high"),
    row("M42", 45, 78, 8, 9, ONE_SET, "medium", CONFLICT),
    row("M48", 52, 92, 8, 9, ONE_SET, "medium", CONFLICT),
    row("M56", 62, 105, 10, 11, ONE_SET, "medium", CONFLICT),
    row("M64", 70, 115, 10, 11, ONE_SET, "medium", CONFLICT),
  ],
};
