/** ISO 9013:2017: perpendicularity or angularity tolerance u. */
import { millimetres } from "../../units/length.js";
import type { Confidence, PerpendicularityRow, StandardTable } from "../model.js";

const SOURCE = "ISO 9013:2017";

/** u = base + perThickness x a, in mm: range, base, per thickness, confidence, source. */
export const perpendicularity: StandardTable<PerpendicularityRow> = {
  edition: "ISO 9013:2017",
  clause: "perpendicularity or angularity tolerance",
  rows: [
    uRow(1, 0.05, 0.003, "medium-high"),
    uRow(2, 0.15, 0.007, "medium-high"),
    uRow(3, 0.4, 0.01, "medium-high"),
    uRow(4, 0.8, 0.02, "medium-high"),
    uRow(5, 1.2, 0.035, "from memory", "ISO 9013:2017 (from memory)"),
  ],
};

function uRow(
  range: PerpendicularityRow["range"],
  base: number,
  perThickness: number,
  confidence: Confidence,
  source = SOURCE,
): PerpendicularityRow {
  return { range, base: millimetres(base), perThickness, source, confidence, note: "" };
}
