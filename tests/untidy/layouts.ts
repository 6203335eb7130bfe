/** Ways in which the same schedule is often laid out; each gives the same bases. */
import type { Dress } from "./dress.js";

const NOTES = ["", "NOTES:", "1. RODS ARE SET BY TEMPLATE.", "2. DO NOT SCALE."];

/** Layouts by name; `units` says what a row of units has under each heading. */
export function layouts(units: Readonly<Record<string, string>>): Readonly<Record<string, Dress>> {
  return {
    plain: { groups: "joined" },
    titled: {
      groups: "merged",
      isMergedDown: true,
      titles: ["INVENTED HALL", "COLUMN BASE SCHEDULE", ""],
      notes: NOTES,
    },
    "groups over the first column": { groups: "first", units, notes: NOTES },
    "groups over every column": { groups: "every", isNumbered: true, blankEvery: 2 },
    "groups in the middle": { groups: "middle", titles: ["BASE SCHEDULE"] },
    "two rows": { isBroken: true, units, blankEvery: 3 },
    pages: { groups: "merged", titles: ["BASE SCHEDULE"], units, pageEvery: 2, notes: NOTES },
    sections: { groups: "joined", sections: { 0: "MAIN BUILDING", 2: "ANNEX" }, blankEvery: 2 },
    "blank columns": { groups: "merged", blankColumns: [1, 4], titles: ["", "BASES"] },
    across: { groups: "joined", isTurned: true, notes: NOTES },
    "across with groups": { groups: "merged", isTurned: true, titles: ["COLUMN BASE SCHEDULE", ""], units },
  };
}
