/** AISC 360-05 and 360-10, Table J3.3: bolt holes, in inches. */
import type { BoltHoleRow, BoltHoleRule } from "../bolt-holes.js";
import type { StandardTable } from "../model.js";
import { printedInches } from "../sizes.js";

const SOURCE = "AISC 360 Table J3.3 (part from memory: see confidence)";

/** Bolt, standard hole, oversized hole, short slot (width, length), long slot (width, length). */
export const aisc360TenBoltHoles: StandardTable<BoltHoleRow> = {
  edition: "AISC 360-10",
  clause: "Table J3.3",
  rows: [
    row("1/2", "9/16", "5/8", ["9/16", "11/16"], ["9/16", "1-1/4"]),
    row("5/8", "11/16", "13/16", ["11/16", "7/8"], ["11/16", "1-9/16"]),
    row("3/4", "13/16", "15/16", ["13/16", "1"], ["13/16", "1-7/8"]),
    row("7/8", "15/16", "1-1/16", ["15/16", "1-1/8"], ["15/16", "2-3/16"]),
    row("1", "1-1/16", "1-1/4", ["1-1/16", "1-5/16"], ["1-1/16", "2-1/2"]),
  ],
};

/** The rule row of the table, from 1-1/8 in on. */
export const aisc360TenBoltHoleRule: BoltHoleRule = {
  from: printedInches("1-1/8"),
  standard: { factor: 1, add: printedInches("1/16") },
  oversized: { factor: 1, add: printedInches("5/16") },
  shortSlot: { width: { factor: 1, add: printedInches("1/16") }, length: { factor: 1, add: printedInches("3/8") } },
  longSlot: { width: { factor: 1, add: printedInches("1/16") }, length: { factor: 2.5, add: printedInches("0") } },
  source: SOURCE,
  confidence: "medium-high",
  note: "",
};

function row(
  size: string,
  standard: string,
  oversized: string,
  short: [string, string],
  long: [string, string],
): BoltHoleRow {
  return {
    size,
    diameter: printedInches(size),
    standard: printedInches(standard),
    oversized: printedInches(oversized),
    shortSlot: { width: printedInches(short[0]), length: printedInches(short[1]) },
    longSlot: { width: printedInches(long[0]), length: printedInches(long[1]) },
    source: SOURCE,
    confidence: "medium-high",
    note: "",
  };
}
