/** ACI 318-19: 17.9.2 spacing and edge of cast-in anchors; Table 20.5.1.3.1 cover, in inches. */
import { inches, type Length } from "../../units/length.js";
import type { CoverRow, Exposure, Sourced, SpacingTableRow, StandardTable } from "../model.js";

const SOURCED = { source: "ACI 318-19", confidence: "high", note: "" } as const;

/** Multiples of the anchor diameter. Not torqued, the edge is governed by the cover. */
export const aci318Spacing: StandardTable<SpacingTableRow> = {
  edition: "ACI 318-19",
  clause: "17.9.2(a)",
  rows: [
    { torqued: false, factor: 4, edgeFactor: null, ...SOURCED, note: "edge: cover per 20.5.1.3 (318-14: 20.6.1.3)" },
    { torqued: true, factor: 6, edgeFactor: 6, ...SOURCED },
  ],
};

/** A row of the cover table. Bar numbers are eighths of an inch, or millimetres in the metric companion: No. 5 is 5/8 in. */
export interface CoverTableRow extends CoverRow {
  readonly exposure: Exposure;
  readonly member: "any" | "slab, joist or wall" | "beam, column or pedestal";
  readonly bars: string;
}

/** A cover table, with the bars that take the smaller cover when exposed and the greatest diameter of them. */
export interface CoverTable extends StandardTable<CoverTableRow> {
  readonly smallBars: { readonly printed: string; readonly greatest: Length };
}

/** Exposure, member, bars, cover. */
export const aci318Cover: CoverTable = {
  edition: "ACI 318-19",
  clause: "Table 20.5.1.3.1",
  smallBars: { printed: "No. 5 and smaller", greatest: inches(5 / 8) },
  rows: [
    row("against ground", "any", "all", 3, "cast against and permanently in contact with ground"),
    row("exposed", "any", "No. 6 to 18", 2, "exposed to weather or ground, No. 6 to 18"),
    row("exposed", "any", "No. 5 and smaller", 1.5, "exposed to weather or ground, No. 5 and smaller"),
    row("not exposed", "slab, joist or wall", "No. 14 and 18", 1.5, "not exposed: slabs, joists, walls, No. 14 and 18"),
    row(
      "not exposed",
      "slab, joist or wall",
      "No. 11 and smaller",
      0.75,
      "not exposed: slabs, joists, walls, No. 11 and smaller",
    ),
    row("not exposed", "beam, column or pedestal", "all", 1.5, "not exposed: beams, columns, pedestals"),
  ],
};

function row(
  exposure: Exposure,
  member: CoverTableRow["member"],
  bars: string,
  cover: number,
  item: string,
): CoverTableRow {
  return coverRow(exposure, member, bars, inches(cover), item, SOURCED);
}

/** A row of a cover table. */
export function coverRow(
  exposure: Exposure,
  member: CoverTableRow["member"],
  bars: string,
  cover: Length,
  item: string,
  sourced: Sourced,
): CoverTableRow {
  return { exposure, member, bars, cover, item, ...sourced };
}
