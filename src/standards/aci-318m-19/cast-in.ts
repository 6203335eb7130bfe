/**
 * ACI 318M-19, the metric companion of ACI 318-19, with its own rounded values: Table 20.5.1.3.1 cover, in mm. From memory:
 * no stored copy was found; the inch values are those of 318-19, converted as the companion has them.
 */

import { millimetres } from "../../units/length.js";
import { type CoverTable, type CoverTableRow, coverRow } from "../aci-318-19/cast-in.js";
import type { SpacingTableRow, StandardTable } from "../model.js";

const SOURCED = { source: "from memory", confidence: "from memory", note: "" } as const;

/** Multiples of the anchor diameter. Not torqued, the edge is governed by the cover. */
export const aci318MetricSpacing: StandardTable<SpacingTableRow> = {
  edition: "ACI 318M-19",
  clause: "17.9.2(a)",
  rows: [
    { torqued: false, factor: 4, edgeFactor: null, ...SOURCED },
    { torqued: true, factor: 6, edgeFactor: 6, ...SOURCED },
  ],
};

/** Exposure, member, bars, cover. */
export const aci318MetricCover: CoverTable = {
  edition: "ACI 318M-19",
  clause: "Table 20.5.1.3.1",
  smallBars: { printed: "No. 16 and smaller", greatest: millimetres(16) },
  rows: [
    row("against ground", "any", "all", 75, "cast against and permanently in contact with ground"),
    row("exposed", "any", "No. 19 to 57", 50, "exposed to weather or ground, No. 19 to 57"),
    row("exposed", "any", "No. 16 and smaller", 40, "exposed to weather or ground, No. 16 and smaller"),
    row("not exposed", "slab, joist or wall", "No. 43 and 57", 40, "not exposed: slabs, joists, walls, No. 43 and 57"),
    row(
      "not exposed",
      "slab, joist or wall",
      "No. 36 and smaller",
      20,
      "not exposed: slabs, joists, walls, No. 36 and smaller",
    ),
    row("not exposed", "beam, column or pedestal", "all", 40, "not exposed: beams, columns, pedestals"),
  ],
};

function row(
  exposure: CoverTableRow["exposure"],
  member: CoverTableRow["member"],
  bars: string,
  cover: number,
  item: string,
): CoverTableRow {
  return coverRow(exposure, member, bars, millimetres(cover), item, SOURCED);
}
