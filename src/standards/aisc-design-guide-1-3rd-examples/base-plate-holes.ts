/** AISC Design Guide 1, 3rd ed. (2024), worked examples: base-plate holes and washers, in inches. Table 4-3 itself was unreadable. */
import { inchBaseHole } from "../base-holes.js";
import type { BaseHoleRow, StandardTable } from "../model.js";

const SOURCE = "AISC Design Guide 1 3rd ed (2024) worked examples (secondary copy); table 4-3 itself unreadable";
const NOTES: Readonly<Record<string, string>> = {
  "1": "Ex 4.7-9: round washer dia; A572 Gr50; washer hole = standard hole; hole is 1/16 larger than DG1-2ed",
  "1-1/2":
    "worked examples: round washer dia; A572 Gr50; washer hole = standard hole; hole is 1/16 larger than DG1-2ed",
};

/** Rod, hole, least washer and its thickness. */
export const designGuide3BaseHoles: StandardTable<BaseHoleRow> = {
  edition: "Design Guide 1, 3rd ed. examples",
  clause: "worked examples 4.7-9 and others",
  rows: [row("1", "1-7/8", "3", "3/8"), row("1-1/2", "2-3/8", "4", "5/8")],
};

function row(size: string, hole: string, washer: string, thickness: string): BaseHoleRow {
  const sourced = { source: SOURCE, confidence: "medium", note: NOTES[size] ?? "" } as const;
  return inchBaseHole(size, hole, { size: washer, thickness }, sourced);
}
