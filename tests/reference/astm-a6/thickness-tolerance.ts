/** ASTM A6, Table 1: thickness tolerance of plates ordered to thickness, in inches. */

import type { Bounds, Sourced, StandardTable } from "../../../src/standards/model.js";
import { bounds } from "../../../src/standards/sizes.js";
import { inches, type Length } from "../../../src/units/length.js";

/** Thickness over and under what was ordered, both as positive lengths. */
export interface ThicknessToleranceRow extends Sourced {
  readonly thickness: Bounds;
  /** Width of the plate; where two ranges share an end the narrower plate's row comes first. */
  readonly width: Bounds;
  readonly over: Length;
  readonly under: Length;
}

/** Thickness, width, over. Under is 0.01 in in every row. */
export const thicknessTolerance: StandardTable<ThicknessToleranceRow> = {
  edition: "ASTM A6",
  clause: "Table 1",
  rows: [
    row("<1/4", "<=48", 0.03),
    row("<1/4", "48-60", 0.03),
    row("<1/4", "60-72", 0.03),
    row("<1/4", "72-84", 0.03),
    row("<1/4", "84-96", 0.03),
    row("1/4-<5/16", "<=48", 0.03),
    row("1/4-<5/16", "48-60", 0.03),
    row("1/4-<5/16", "60-72", 0.03),
    row("1/4-<5/16", "72-84", 0.03),
    row("1/4-<5/16", "84-96", 0.03),
    row("5/16-<3/8", "<=48", 0.03),
    row("5/16-<3/8", "48-60", 0.03),
    row("5/16-<3/8", "60-72", 0.03),
    row("5/16-<3/8", "72-84", 0.03),
    row("5/16-<3/8", "84-96", 0.03),
    row("3/8-<7/16", "<=48", 0.03),
    row("3/8-<7/16", "48-60", 0.03),
    row("3/8-<7/16", "60-72", 0.03),
    row("3/8-<7/16", "72-84", 0.03),
    row("3/8-<7/16", "84-96", 0.03),
    row("1/2-<5/8", "<=48", 0.03),
    row("1/2-<5/8", "48-60", 0.03),
    row("1/2-<5/8", "60-72", 0.03),
    row("1/2-<5/8", "72-84", 0.03),
    row("1/2-<5/8", "84-96", 0.03),
    row("3/4-<1", "<=48", 0.03),
    row("3/4-<1", "48-60", 0.03),
    row("3/4-<1", "60-72", 0.03),
    row("3/4-<1", "72-84", 0.03),
    row("3/4-<1", "84-96", 0.04),
    row("1-<2", "<=48", 0.06),
    row("1-<2", "48-60", 0.06),
    row("1-<2", "60-72", 0.06),
    row("1-<2", "72-84", 0.06),
    row("1-<2", "84-96", 0.06),
    row("2-<3", "<=48", 0.09),
    row("2-<3", "48-60", 0.09),
    row("2-<3", "60-72", 0.09),
    row("2-<3", "72-84", 0.1),
    row("2-<3", "84-96", 0.1),
  ],
};

function row(thickness: string, width: string, over: number): ThicknessToleranceRow {
  return {
    thickness: bounds(thickness, "in"),
    width: bounds(width, "in"),
    over: inches(over),
    under: inches(0.01),
    source: "ASTM A6 Table 1",
    confidence: "medium",
    note: "under tolerance 0.3 mm in SI table; inch value from memory",
  };
}
