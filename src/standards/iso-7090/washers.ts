/** ISO 7090 / DIN 125-B plain washers, in mm: d1 inside, d2 outside, h thickness. */
import { isoWasher as row } from "../fasteners.js";
import type { StandardTable, WasherRow } from "../model.js";

const ONE_SET = "open hardware data set";
const CHAMFERED = "chamfered; above M64 are DIN 125 sizes; some h values are max";

/** Size, d1, d2, h nominal (null: not listed), h greatest, source, confidence, note. */
export const iso7090Washers: StandardTable<WasherRow> = {
  edition: "ISO 7090 / DIN 125-B",
  clause: "plain washers",
  rows: [
    row("M10", 10.5, 20, null, 2.2, ONE_SET, "medium", CHAMFERED),
    row("M12", 13, 24, null, 2.7, ONE_SET, "medium", CHAMFERED),
    row("M14", 15, 28, null, 2.7, ONE_SET, "medium", CHAMFERED),
    row("M16", 17, 30, null, 3.3, ONE_SET, "medium", CHAMFERED),
    row("M18", 19, 34, null, 3.3, ONE_SET, "medium", CHAMFERED),
    row("M20", 21, 37, null, 3.3, ONE_SET, "medium", CHAMFERED),
    row("M22", 23, 39, null, 3.3, ONE_SET, "medium", CHAMFERED),
    row("M24", 25, 44, null, 4.3, ONE_SET, "medium", CHAMFERED),
    row("M27", 28, 50, null, 4.3, ONE_SET, "medium", CHAMFERED),
    row("M30", 31, 56, null, 4.3, ONE_SET, "medium", CHAMFERED),
    row("M33", 34, 60, null, 5.6, ONE_SET, "medium", CHAMFERED),
    row("M36", 37, 66, null, 5.6, ONE_SET, "medium", CHAMFERED),
    row("M39", 40, 72, null, 6.6, ONE_SET, "medium", CHAMFERED),
    row("M42", 43, 78, null, 8, ONE_SET, "medium", CHAMFERED),
    row("M45", 46, 85, null, 8, ONE_SET, "medium", CHAMFERED),
    row("M48", 50, 92, null, 9, ONE_SET, "medium", CHAMFERED),
    row("M52", 54, 98, null, 9, ONE_SET, "medium", CHAMFERED),
    row("M56", 58, 105, null, 10, ONE_SET, "medium", CHAMFERED),
    row("M60", 62, 110, null, 10, ONE_SET, "medium", CHAMFERED),
    row("M64", 66, 115, null, 10, ONE_SET, "medium", CHAMFERED),
    row("M68", 70, 120, null, 11, ONE_SET, "medium", CHAMFERED),
    row("M72", 74, 125, null, 11, ONE_SET, "medium", CHAMFERED),
    row("M76", 78, 135, null, 11, ONE_SET, "medium", CHAMFERED),
    row("M80", 82, 140, null, 13.2, ONE_SET, "medium", CHAMFERED),
    row("M85", 87, 145, null, 13.2, ONE_SET, "medium", CHAMFERED),
    row("M90", 93, 160, null, 13.2, ONE_SET, "medium", CHAMFERED),
    row("M95", 98, 165, null, 13.2, ONE_SET, "medium", CHAMFERED),
    row("M100", 104, 175, null, 15.2, ONE_SET, "medium", CHAMFERED),
    row("M110", 114, 185, null, 15.2, ONE_SET, "medium", CHAMFERED),
    row("M125", 129, 220, null, 17.2, ONE_SET, "medium", CHAMFERED),
    row("M140", 144, 240, null, 19.2, ONE_SET, "medium", CHAMFERED),
    row("M150", 155, 250, null, 19.2, ONE_SET, "medium", CHAMFERED),
  ],
};
