/** AISC 360-16 and 360-22, Table J3.3: bolt holes, in inches. */
import { type BoltHoleRow, type BoltHoleRule, inchBoltHole } from "../bolt-holes.js";
import type { StandardTable } from "../model.js";
import { printedInches } from "../sizes.js";

const SOURCED = { source: "AISC 360 Table J3.3", confidence: "high", note: "" } as const;

/** Bolt, standard hole, oversized hole, short slot (width, length), long slot (width, length). */
export const aisc360BoltHoles: StandardTable<BoltHoleRow> = {
  edition: "AISC 360-22",
  clause: "Table J3.3",
  rows: [
    inchBoltHole("1/2", "9/16", "5/8", ["9/16", "11/16"], ["9/16", "1-1/4"], SOURCED),
    inchBoltHole("5/8", "11/16", "13/16", ["11/16", "7/8"], ["11/16", "1-9/16"], SOURCED),
    inchBoltHole("3/4", "13/16", "15/16", ["13/16", "1"], ["13/16", "1-7/8"], SOURCED),
    inchBoltHole("7/8", "15/16", "1-1/16", ["15/16", "1-1/8"], ["15/16", "2-3/16"], SOURCED),
    inchBoltHole("1", "1-1/8", "1-1/4", ["1-1/8", "1-5/16"], ["1-1/8", "2-1/2"], SOURCED),
  ],
};

/** The rule row of the table, from 1-1/8 in on. */
export const aisc360BoltHoleRule: BoltHoleRule = {
  from: printedInches("1-1/8"),
  standard: { factor: 1, add: printedInches("1/8") },
  oversized: { factor: 1, add: printedInches("5/16") },
  shortSlot: { width: { factor: 1, add: printedInches("1/8") }, length: { factor: 1, add: printedInches("3/8") } },
  longSlot: { width: { factor: 1, add: printedInches("1/8") }, length: { factor: 2.5, add: printedInches("0") } },
  ...SOURCED,
};
