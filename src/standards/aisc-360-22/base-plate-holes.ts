/** AISC 360-22, Commentary Table C-J9.1: largest anchor-rod holes in base plates, in inches. */
import type { BaseHoleRow, Confidence, FromRule, StandardTable } from "../model.js";
import { printedInches } from "../sizes.js";

const SOURCE = "AISC 360-22 Commentary Table C-J9.1 (OCR text)";
const NOTES: Readonly<Record<string, string>> = {
  "2": "d + 1-1/4 rule row (>=2 in)",
  "2-1/4": "d + 1-1/4 rule row (>=2 in)",
  "2-1/2": "d + 1-1/4 rule row (>=2 in)",
  "2-3/4": "d + 1-1/4 rule row (>=2 in)",
  "3": "d + 1-1/4 rule row (>=2 in)",
};

/** Rod, hole, least washer and its thickness (null: not tabulated), confidence. */
export const aisc360BaseHoles: StandardTable<BaseHoleRow> = {
  edition: "AISC 360-22 C-J9.1",
  clause: "Commentary Table C-J9.1",
  rows: [
    row("1/2", "1-1/16", null, null, "high"),
    row("5/8", "1-3/16", null, null, "high"),
    row("3/4", "1-5/16", null, null, "high"),
    row("7/8", "1-9/16", null, null, "high"),
    row("1", "1-13/16", null, null, "high"),
    row("1-1/4", "2-1/16", null, null, "high"),
    row("1-1/2", "2-5/16", null, null, "high"),
    row("1-3/4", "2-3/4", null, null, "high"),
    row("2", "3-1/4", null, null, "high"),
    row("2-1/4", "3-1/2", null, null, "high"),
    row("2-1/2", "3-3/4", null, null, "high"),
    row("2-3/4", "4", null, null, "high"),
    row("3", "4-1/4", null, null, "high"),
  ],
};

/** The printed rule row: from 2 in the hole is d + 1-1/4 in. Sizes that are not listed above take it. */
export const aisc360BaseHoleRule = {
  from: printedInches("2"),
  rule: { factor: 1, add: printedInches("1-1/4") },
  source: SOURCE,
  confidence: "high",
  note: "d + 1-1/4 rule row (>=2 in)",
} as const satisfies FromRule;

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
