/** EN 1090-2, Table 11: nominal clearances of round holes for bolts, in mm. */

import type { Bounds, Sourced, StandardTable } from "../../../src/standards/model.js";
import { bounds } from "../../../src/standards/sizes.js";
import { type Length, millimetres } from "../../../src/units/length.js";

/** Clearance on the diameter, by bolt diameter. */
export interface HoleClearanceRow extends Sourced {
  readonly diameter: Bounds;
  readonly clearance: Length;
}

/** Normal round holes: diameter, clearance. */
export const normalHoleClearances: StandardTable<HoleClearanceRow> = {
  edition: "EN 1090-2",
  clause: "Table 11, normal round holes",
  rows: [normal("12-14", 1), normal("16-24", 2), normal(">=27", 3)],
};

/** Oversize round holes: diameter, clearance. */
export const oversizeHoleClearances: StandardTable<HoleClearanceRow> = {
  edition: "EN 1090-2",
  clause: "Table 11, oversize round holes",
  rows: [
    oversize("12", 3),
    oversize("14", 3),
    oversize("16", 4),
    oversize("18", 4),
    oversize("20", 4),
    oversize("22", 4),
    oversize("24", 6),
    oversize(">=27", 8),
  ],
};

function normal(diameter: string, clearance: number): HoleClearanceRow {
  const sourced = { source: "secondary copy", confidence: "medium-high", note: "" } as const;
  return { diameter: bounds(diameter, "mm"), clearance: millimetres(clearance), ...sourced };
}

function oversize(diameter: string, clearance: number): HoleClearanceRow {
  const sourced = { source: "secondary copy", confidence: "medium", note: "" } as const;
  return { diameter: bounds(diameter, "mm"), clearance: millimetres(clearance), ...sourced };
}
