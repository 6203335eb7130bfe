/** AISC 360-22, Tables J3.5 and J3.5M: edge distance increment C2, by bolt diameter. */
import { inches, type Length, millimetres } from "../../units/length.js";
import type { Bounds, Rule, Sourced, StandardTable } from "../model.js";
import { bounds } from "../sizes.js";

/** Increments for holes that are not standard; long slots across the edge take a multiple of the diameter. */
export interface C2TableRow extends Sourced {
  readonly diameter: Bounds;
  readonly oversized: Length;
  readonly shortSlotPerpendicular: Length;
  readonly longSlotPerpendicular: Rule;
  readonly slotParallel: Length;
}

const SOURCED = { source: "AISC 360-22 Table J3.5/J3.5M", confidence: "high", note: "" } as const;

/** Bolt, oversized hole, short slot perpendicular to the edge, in inches. */
export const aisc360C2: StandardTable<C2TableRow> = {
  edition: "AISC 360-22",
  clause: "Table J3.5",
  rows: [inchRow("<=7/8", 1 / 16, 1 / 8), inchRow("1", 1 / 8, 1 / 8), inchRow(">=1-1/8", 1 / 8, 3 / 16)],
};

/** Bolt, oversized hole, short slot perpendicular to the edge, in mm. */
export const aisc360MetricC2: StandardTable<C2TableRow> = {
  edition: "AISC 360-22M",
  clause: "Table J3.5M",
  rows: [metricRow("<=22", 2, 3), metricRow("24", 3, 3), metricRow(">=27", 3, 5)],
};

function inchRow(diameter: string, oversized: number, shortSlot: number): C2TableRow {
  return c2Row(bounds(diameter, "in"), inches(oversized), inches(shortSlot));
}

function metricRow(diameter: string, oversized: number, shortSlot: number): C2TableRow {
  return c2Row(bounds(diameter, "mm"), millimetres(oversized), millimetres(shortSlot));
}

function c2Row(diameter: Bounds, oversized: Length, shortSlotPerpendicular: Length): C2TableRow {
  const longSlotPerpendicular = { factor: 0.75, add: inches(0) };
  return { diameter, oversized, shortSlotPerpendicular, longSlotPerpendicular, slotParallel: inches(0), ...SOURCED };
}
