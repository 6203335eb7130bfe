/** AISC 360-05 and earlier, Table J3.4: least distance from hole centre to a sheared edge, in inches. Superseded. */
import { inchEdge, type LeastEdgeRow } from "../edges.js";
import type { BeyondRule, StandardTable } from "../model.js";
import { printedInches } from "../sizes.js";

const SOURCED = {
  source: "AISC 360-22 Table J3.4/J3.4M",
  confidence: "medium",
  note: "superseded column",
} as const;

/** Bolt, least distance. */
export const aisc360FiveEdges: StandardTable<LeastEdgeRow> = {
  edition: "AISC 360-05",
  clause: "Table J3.4, sheared edge",
  rows: [
    inchEdge("5/8", "1-1/8", SOURCED),
    inchEdge("3/4", "1-1/4", SOURCED),
    inchEdge("7/8", "1-1/2", SOURCED),
    inchEdge("1", "1-3/4", SOURCED),
    inchEdge("1-1/8", "2", SOURCED),
    inchEdge("1-1/4", "2-1/4", SOURCED),
  ],
};

/** The rule row of the table, beyond 1-1/4 in. */
export const aisc360FiveEdgeRule: BeyondRule = {
  beyond: printedInches("1-1/4"),
  rule: { factor: 1.75, add: printedInches("0") },
  printed: "1-3/4 x d",
  ...SOURCED,
};
