/** Base-plate holes for holding-down bolts in UK practice, in mm. */

import type { BaseHoleRow, Confidence, StandardTable } from "../../../src/standards/model.js";
import { millimetres } from "../../../src/units/length.js";

const SOURCE = "SCI P358 rule as quoted on web page";
const NOTE = "base-plate holding-down bolts";

/** Rod, hole, confidence. */
export const ukBaseHoles: StandardTable<BaseHoleRow> = {
  edition: "UK practice d + 6",
  clause: "SCI P358",
  rows: [
    row("M16", 22, "medium"),
    row("M20", 26, "medium"),
    row("M24", 30, "medium"),
    row("M30", 36, "medium"),
    row("M36", 42, "medium"),
  ],
};

function row(size: string, hole: number, confidence: Confidence): BaseHoleRow {
  return {
    size,
    diameter: millimetres(Number(size.slice(1))),
    hole: millimetres(hole),
    washer: null,
    washerThickness: null,
    alternateHole: null,
    source: SOURCE,
    confidence,
    note: NOTE,
  };
}
