/** AISC Design Guide 1, 3rd ed. (2024), worked examples: base-plate holes and washers, in inches. Table 4-3 itself was unreadable. */
import type { BaseHoleRow, Confidence, StandardTable } from "../model.js";
import { printedInches } from "../sizes.js";

const SOURCE = "AISC Design Guide 1 3rd ed (2024) worked examples (secondary copy); table 4-3 itself unreadable";
const NOTES: Readonly<Record<string, string>> = {
  "1": "Ex 4.7-9: round washer dia; A572 Gr50; washer hole = standard hole; hole is 1/16 larger than DG1-2ed",
  "1-1/2":
    "worked examples: round washer dia; A572 Gr50; washer hole = standard hole; hole is 1/16 larger than DG1-2ed",
};

/** Rod, hole, least washer and its thickness (null: not tabulated), confidence. */
export const designGuide3BaseHoles: StandardTable<BaseHoleRow> = {
  edition: "Design Guide 1, 3rd ed. examples",
  clause: "worked examples 4.7-9 and others",
  rows: [row("1", "1-7/8", "3", "3/8", "medium"), row("1-1/2", "2-3/8", "4", "5/8", "medium")],
};

function row(
  size: string,
  hole: string,
  washer: string | null,
  washerThickness: string | null,
  confidence: Confidence,
): BaseHoleRow {
  return {
    size,
    diameter: printedInches(size),
    hole: printedInches(hole),
    washer: washer === null ? null : printedInches(washer),
    washerThickness: washerThickness === null ? null : printedInches(washerThickness),
    alternateHole: null,
    source: SOURCE,
    confidence,
    note: NOTES[size] ?? "",
  };
}
