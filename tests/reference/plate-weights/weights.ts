/** Tabulated weights of steel plate. */
import type { Sourced } from "../../../src/standards/model.js";
import { inches, type Length, millimetres } from "../../../src/units/length.js";

const SOURCED = { source: "AISC practice; tabulated plate weights", confidence: "high", note: "" } as const;

/** Weight of plate per area. */
export interface PlateWeightRow extends Sourced {
  readonly thickness: Length;
  readonly weight: number;
  readonly unit: "lb/ft2" | "kg/m2";
}

/** Thickness, weight per area. */
export const plateWeights: readonly PlateWeightRow[] = [
  { thickness: inches(1), weight: 40.83, unit: "lb/ft2", ...SOURCED },
  { thickness: inches(1 / 4), weight: 10.21, unit: "lb/ft2", ...SOURCED },
  { thickness: inches(3 / 16), weight: 7.656, unit: "lb/ft2", ...SOURCED },
  { thickness: inches(3 / 8), weight: 15.31, unit: "lb/ft2", ...SOURCED },
  { thickness: inches(1 / 2), weight: 20.41, unit: "lb/ft2", ...SOURCED, note: "20.42 exact" },
  { thickness: inches(3 / 4), weight: 30.63, unit: "lb/ft2", ...SOURCED },
  { thickness: millimetres(1), weight: 7.85, unit: "kg/m2", ...SOURCED },
];
