/** AISC 360-22, Commentary Table C-J9.1M: largest anchor-rod holes in base plates, in mm. */
import { metricBaseHole } from "../base-holes.js";
import type { BaseHoleRow, StandardTable } from "../model.js";

const SOURCE = "AISC 360-22 Commentary Table C-J9.1M (OCR text)";

/** Rod, hole. */
export const aisc360MetricBaseHoles: StandardTable<BaseHoleRow> = {
  edition: "AISC 360-22 C-J9.1M",
  clause: "Commentary Table C-J9.1M",
  rows: [
    row("M18", 32),
    row("M22", 36),
    row("M24", 42),
    row("M27", 48),
    row("M30", 51),
    row("M33", 54),
    row("M36", 60),
    row("M39", 63),
    row("M42", 74),
  ],
};

function row(size: string, hole: number): BaseHoleRow {
  return metricBaseHole(size, hole, { source: SOURCE, confidence: "medium-high (OCR)", note: "" });
}
