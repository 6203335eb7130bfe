/** AISC Design Guide 1, 2nd ed. (2006), Table 2.3: anchor-rod holes in base plates and least washers, in inches. */
import { inchBaseHole } from "../base-holes.js";
import type { BaseHoleRow, Confidence, StandardTable } from "../model.js";
import { printedInches } from "../sizes.js";

const SOURCE =
  "AISC Design Guide 1 2nd ed (2006) Table 2.3 (= AISC Manual 13th/14th Table 14-2, equality from memory); read from an image of the printed table";
const NOTES: Readonly<Record<string, string>> = {
  "3/4": "second hole 1-1/16 for plates under 1-1/4 in on axial compression columns, Table 2.3 note 3",
  "2-1/2": "one text copy prints a 3-1/4 hole; table image, ASCC PS#14 and AISC 360-22 C-J9.1 (d+1-1/4) give 3-3/4",
};

/** Rod, hole, least washer and its thickness, confidence, a second hole the table allows. */
export const designGuide2BaseHoles: StandardTable<BaseHoleRow> = {
  edition: "Design Guide 1, 2nd ed.",
  clause: "Table 2.3",
  rows: [
    row("3/4", "1-5/16", "2", "1/4", "high", "1-1/16"),
    row("7/8", "1-9/16", "2-1/2", "5/16", "high"),
    row("1", "1-13/16", "3", "3/8", "high"),
    row("1-1/4", "2-1/16", "3", "1/2", "high"),
    row("1-1/2", "2-5/16", "3-1/2", "1/2", "high"),
    row("1-3/4", "2-3/4", "4", "5/8", "high"),
    row("2", "3-1/4", "5", "3/4", "high"),
    row("2-1/2", "3-3/4", "5-1/2", "7/8", "high (conflict resolved)"),
  ],
};

function row(
  size: string,
  hole: string,
  washer: string,
  thickness: string,
  confidence: Confidence,
  alternate: string | null = null,
): BaseHoleRow {
  const sourced = { source: SOURCE, confidence, note: NOTES[size] ?? "" };
  const alternateHole = alternate === null ? null : printedInches(alternate);
  return { ...inchBaseHole(size, hole, { size: washer, thickness }, sourced), alternateHole };
}
