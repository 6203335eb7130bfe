/** Base-plate holes and washers as advised in Australia and New Zealand, in mm. */

import type { BaseHoleRow, Confidence, StandardTable } from "../../../src/standards/model.js";
import { millimetres } from "../../../src/units/length.js";

const SOURCE = "secondary copy (adapted from DG1)";
const NOTE =
  "hole <= d+6 (NZS 3404 / AS 4100 cl.14.3.5.2); special plate washer needed if hole > d+3 (>=4 mm NZS, >=6 mm AS)";

/** Rod, hole, washer, its thickness, confidence. */
export const scnzBaseHoles: StandardTable<BaseHoleRow> = {
  edition: "SCNZ/ASI FAQ table",
  clause: "NZS 3404 / AS 4100 cl. 14.3.5.2",
  rows: [
    row("M16", 22, 50, 6, "medium"),
    row("M20", 26, 50, 6, "medium"),
    row("M24", 30, 75, 10, "medium"),
    row("M30", 36, 75, 12, "medium"),
    row("M36", 42, 90, 12, "medium"),
  ],
};

function row(size: string, hole: number, washer: number, washerThickness: number, confidence: Confidence): BaseHoleRow {
  return {
    size,
    diameter: millimetres(Number(size.slice(1))),
    hole: millimetres(hole),
    washer: millimetres(washer),
    washerThickness: millimetres(washerThickness),
    alternateHole: null,
    source: SOURCE,
    confidence,
    note: NOTE,
  };
}
