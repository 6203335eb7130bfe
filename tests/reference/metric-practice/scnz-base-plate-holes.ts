/** Base-plate holes and washers as advised in Australia and New Zealand, in mm. */

import { metricBaseHole } from "../../../src/standards/base-holes.js";
import type { BaseHoleRow, StandardTable } from "../../../src/standards/model.js";
import { millimetres } from "../../../src/units/length.js";

const SOURCE = "secondary copy (adapted from DG1)";
const NOTE =
  "hole <= d+6 (NZS 3404 / AS 4100 cl.14.3.5.2); special plate washer needed if hole > d+3 (>=4 mm NZS, >=6 mm AS)";

/** Rod, hole, washer, its thickness. */
export const scnzBaseHoles: StandardTable<BaseHoleRow> = {
  edition: "SCNZ/ASI FAQ table",
  clause: "NZS 3404 / AS 4100 cl. 14.3.5.2",
  rows: [
    row("M16", 22, 50, 6),
    row("M20", 26, 50, 6),
    row("M24", 30, 75, 10),
    row("M30", 36, 75, 12),
    row("M36", 42, 90, 12),
  ],
};

function row(size: string, hole: number, washer: number, washerThickness: number): BaseHoleRow {
  const bare = metricBaseHole(size, hole, { source: SOURCE, confidence: "medium", note: NOTE });
  return { ...bare, washer: millimetres(washer), washerThickness: millimetres(washerThickness) };
}
