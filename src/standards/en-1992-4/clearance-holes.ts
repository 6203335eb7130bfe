/** EN 1992-4, Table 6.1: clearance hole in the fixture, d_f, in mm. */
import { metricBaseHole } from "../base-holes.js";
import type { BaseHoleRow, Confidence, StandardTable } from "../model.js";

const SOURCE = "EN 1992-4 Table 6.1 d_f; EOTA TR 054 reprint";
const MEMORY = "EN 1992-4 Table 6.1 (from memory for this row)";
const NOTE = "clearance hole in fixture for which all anchors may be assumed to take shear";

/** Rod, hole, confidence, source. */
export const en1992ClearanceHoles: StandardTable<BaseHoleRow> = {
  edition: "EN 1992-4 Table 6.1",
  clause: "Table 6.1",
  rows: [
    row("M6", 7, "medium-high"),
    row("M8", 9, "medium-high"),
    row("M10", 12, "medium-high"),
    row("M12", 14, "medium-high"),
    row("M14", 16, "medium-high"),
    row("M16", 18, "medium-high"),
    row("M18", 20, "medium-high"),
    row("M20", 22, "medium-high"),
    row("M22", 24, "medium-high"),
    row("M24", 26, "medium-high"),
    row("M27", 30, "from memory", MEMORY),
    row("M30", 33, "medium-high"),
    row("M36", 39, "from memory", MEMORY),
    row("M39", 42, "medium-high"),
  ],
};

function row(size: string, hole: number, confidence: Confidence, source = SOURCE): BaseHoleRow {
  return metricBaseHole(size, hole, { source, confidence, note: NOTE });
}
