/** AISC 360-22, Table J3.4M: least distance from hole centre to edge, in mm. */
import type { LeastEdgeRow } from "../edges.js";
import type { BeyondRule, StandardTable } from "../model.js";
import { printedMillimetres } from "../sizes.js";

const SOURCED = {
  source: "AISC 360-22 Table J3.4/J3.4M",
  confidence: "high",
  note: "",
} as const;

/** Bolt, least distance. */
export const aisc360MetricEdges: StandardTable<LeastEdgeRow> = {
  edition: "AISC 360-22M",
  clause: "Table J3.4M",
  rows: [
    row("M12", "18"),
    row("M16", "22"),
    row("M20", "26"),
    row("M22", "28"),
    row("M24", "30"),
    row("M27", "34"),
    row("M30", "38"),
    row("M36", "46"),
  ],
};

/** The rule row of the table, beyond M36. */
export const aisc360MetricEdgeRule: BeyondRule = {
  beyond: printedMillimetres("36"),
  rule: { factor: 1.25, add: printedMillimetres("0") },
  printed: "1.25 d",
  ...SOURCED,
};

function row(size: string, least: string): LeastEdgeRow {
  const diameter = printedMillimetres(size.slice(1));
  return { size, diameter, least: printedMillimetres(least), printed: least, ...SOURCED };
}
