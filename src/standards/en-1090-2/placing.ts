/** EN 1090-2:2008, Table D.2.20: foundation bolts, in mm. The 2018 edition renumbers the table to Annex B. */
import { type Length, millimetres } from "../../units/length.js";
import type { Confidence, StandardTable } from "../model.js";
import type { PlacingItem, PlacingTableRow } from "../placing.js";

/** A foundation bolt that can be moved in a pocket or sleeve, or one that is cast in fixed. */
export interface FoundationBoltRow extends PlacingTableRow {
  readonly fixing: "adjustable" | "fixed" | "any";
}

/** Setting, about, item, minus, plus. */
export const en1090Placing: StandardTable<FoundationBoltRow> = {
  edition: "EN 1090-2:2008",
  clause: "Table D.2.20",
  rows: [
    row("adjustable", "group position", "adjustable preset bolts: group centre", 6, 6),
    row("adjustable", "rod position", "adjustable preset bolts: bolt tip from group centre", 10, 10),
    row("adjustable", "top of rod", "adjustable preset bolts: protrusion", 5, 25),
    row("fixed", "rod position", "fixed (non-adjustable) bolts: group centre / tip", 3, 3),
    row("fixed", "top of rod", "fixed bolts: protrusion (vertical axis)", 5, 45),
    row("any", "top of concrete", "level of support for steel", 15, 5, "medium"),
  ],
};

function row(
  fixing: FoundationBoltRow["fixing"],
  about: PlacingItem,
  item: string,
  minus: number,
  plus: number,
  confidence: Confidence = "medium-high",
): FoundationBoltRow {
  const tolerance: { minus: Length; plus: Length } = { minus: millimetres(minus), plus: millimetres(plus) };
  const source =
    "EN 1090-2:2008 Table D.2.20 as reproduced in NSSS/NSCS text (secondary copy); 2018 edition renumbers to Annex B";
  const rest = { sizes: "all", printed: "", growth: null, source, confidence, note: "" } as const;
  return { fixing, clause: "D.2.20", about, item, ...tolerance, ...rest };
}
