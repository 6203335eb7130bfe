/** Base-plate holes for holding-down bolts in UK practice, in mm. */

import { metricBaseHole } from "../../../src/standards/base-holes.js";
import type { BaseHoleRow, StandardTable } from "../../../src/standards/model.js";

const SOURCE = "SCI P358 rule as quoted on web page";
const NOTE = "base-plate holding-down bolts";

/** Rod, hole. */
export const ukBaseHoles: StandardTable<BaseHoleRow> = {
  edition: "UK practice d + 6",
  clause: "SCI P358",
  rows: [row("M16", 22), row("M20", 26), row("M24", 30), row("M30", 36), row("M36", 42)],
};

function row(size: string, hole: number): BaseHoleRow {
  return metricBaseHole(size, hole, { source: SOURCE, confidence: "medium", note: NOTE });
}
