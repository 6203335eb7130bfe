/** EN 1993-1-8:2005, Table 3.3: least distances as multiples of the hole diameter d0. */
import type { Confidence, Sourced, StandardTable } from "../model.js";

/** A least distance: `factor` x d0, kept as a fraction so that it stays exact. */
export interface HoleDistanceRow extends Sourced {
  readonly symbol: "e1" | "e2" | "p1" | "p2";
  readonly item: string;
  readonly factor: number;
}

/** Symbol, what it is, factor, source, confidence. */
export const en1993Distances: StandardTable<HoleDistanceRow> = {
  edition: "EN 1993-1-8:2005",
  clause: "Table 3.3",
  rows: [
    row("e1", "least end distance", 1.2, "open structural library", "high"),
    row("e2", "least edge distance", 1.2, "open structural library", "high"),
    row("p1", "least pitch", 2.2, "secondary copy", "high"),
    row("p2", "least gauge", 2.4, "open structural library", "high"),
  ],
};

function row(
  symbol: HoleDistanceRow["symbol"],
  item: string,
  factor: number,
  source: string,
  confidence: Confidence,
): HoleDistanceRow {
  return { symbol, item, factor, source, confidence, note: "" };
}
