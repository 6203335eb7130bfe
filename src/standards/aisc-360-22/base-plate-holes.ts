/** AISC 360-22, Commentary Table C-J9.1: largest anchor-rod holes in base plates, in inches. */
import { inchBaseHole } from "../base-holes.js";
import type { BaseHoleRow, FromRule, StandardTable } from "../model.js";
import { printedInches } from "../sizes.js";

const SOURCE = "AISC 360-22 Commentary Table C-J9.1 (OCR text)";
const RULE_NOTE = "d + 1-1/4 rule row (>=2 in)";

/** Rod, hole, note. No washer is tabulated. */
export const aisc360BaseHoles: StandardTable<BaseHoleRow> = {
  edition: "AISC 360-22 C-J9.1",
  clause: "Commentary Table C-J9.1",
  rows: [
    row("1/2", "1-1/16"),
    row("5/8", "1-3/16"),
    row("3/4", "1-5/16"),
    row("7/8", "1-9/16"),
    row("1", "1-13/16"),
    row("1-1/4", "2-1/16"),
    row("1-1/2", "2-5/16"),
    row("1-3/4", "2-3/4"),
    row("2", "3-1/4", RULE_NOTE),
    row("2-1/4", "3-1/2", RULE_NOTE),
    row("2-1/2", "3-3/4", RULE_NOTE),
    row("2-3/4", "4", RULE_NOTE),
    row("3", "4-1/4", RULE_NOTE),
  ],
};

/** The printed rule row: from 2 in the hole is d + 1-1/4 in. Sizes that are not listed above take it. */
export const aisc360BaseHoleRule = {
  from: printedInches("2"),
  rule: { factor: 1, add: printedInches("1-1/4") },
  source: SOURCE,
  confidence: "high",
  note: RULE_NOTE,
} as const satisfies FromRule;

function row(size: string, hole: string, note = ""): BaseHoleRow {
  return inchBaseHole(size, hole, null, { source: SOURCE, confidence: "high", note });
}
