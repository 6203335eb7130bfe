/** AISC 303-05 and 303-10, section 7.5: placing of anchor rods, in inches. */
import { inches, type Length } from "../../units/length.js";
import type { StandardTable } from "../model.js";
import { equal, type PlacingItem, type PlacingTableRow } from "../placing.js";

const SOURCED = {
  source: "AISC 303-05/-10 s.7.5.1 as quoted in DG1 2nd ed (secondary copy); (a) also secondary copy",
  confidence: "high",
  note: "",
} as const;

/** Clause, about, item, plus and minus. */
export const aisc303TenPlacing: StandardTable<PlacingTableRow> = {
  edition: "AISC 303-10",
  clause: "7.5.1",
  rows: [
    row("7.5.1(a)", "rod spacing", "spacing of any two rods in a group", inches(1 / 8)),
    row("7.5.1(b)", "adjacent groups", "adjacent group centres", inches(1 / 4)),
    row("7.5.1(c)", "top of rod", "elevation of rod tops", inches(1 / 2)),
    {
      ...row("7.5.1(d)", "accumulated along a column line", "accumulated along column line through groups", inches(1)),
      printed: "1/4 in per 100 ft, not more than 1 in in total",
      growth: { tolerance: inches(1 / 4), per: inches(1200) },
    },
    row("7.5.1(e)", "group position", "group centre to established column line", inches(1 / 4)),
    {
      clause: "7.5.2",
      about: "verticality",
      item: "rods set with axis perpendicular to the theoretical bearing surface",
      sizes: "all",
      minus: null,
      plus: null,
      printed: "",
      growth: null,
      source: "from memory",
      confidence: "from memory",
      note: "",
    },
  ],
};

function row(clause: string, about: PlacingItem, item: string, tolerance: Length): PlacingTableRow {
  return { clause, about, item, sizes: "all", ...equal(tolerance), growth: null, ...SOURCED };
}
