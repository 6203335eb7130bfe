/** AISC 360-10, 360-16 and 360-22, Table J3.4: least distance from hole centre to edge, in inches. */
import { inchEdge, type LeastEdgeRow } from "../edges.js";
import type { BeyondRule, StandardTable } from "../model.js";
import { printedInches } from "../sizes.js";

const SOURCED = {
  source: "AISC 360-22 Table J3.4/J3.4M",
  confidence: "high",
  note: "lesser distance allowed if J3.10/J3.11 and J4 satisfied; below 1 x d needs EOR approval",
} as const;

/** Bolt, least distance. */
export const aisc360Edges: StandardTable<LeastEdgeRow> = {
  edition: "AISC 360-22",
  clause: "Table J3.4",
  rows: [
    inchEdge("1/2", "3/4", SOURCED),
    inchEdge("5/8", "7/8", SOURCED),
    inchEdge("3/4", "1", SOURCED),
    inchEdge("7/8", "1-1/8", SOURCED),
    inchEdge("1", "1-1/4", SOURCED),
    inchEdge("1-1/8", "1-1/2", SOURCED),
    inchEdge("1-1/4", "1-5/8", SOURCED),
  ],
};

/** The rule row of the table, beyond 1-1/4 in. */
export const aisc360EdgeRule: BeyondRule = {
  beyond: printedInches("1-1/4"),
  rule: { factor: 1.25, add: printedInches("0") },
  printed: "1-1/4 x d",
  ...SOURCED,
};
