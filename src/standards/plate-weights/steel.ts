/** Density of steel and tabulated weights of plate. */
import { inches, type Length, millimetres } from "../../units/length.js";
import type { Sourced } from "../model.js";

const SOURCED = { source: "AISC practice; tabulated plate weights", confidence: "high", note: "" } as const;

export interface DensityRow extends Sourced {
  readonly value: number;
  readonly unit: "lb/ft3" | "kg/m3";
}

/** Steel, for US and metric jobs. */
export const steelDensities: { readonly us: DensityRow; readonly metric: DensityRow } = {
  us: { value: 490, unit: "lb/ft3", ...SOURCED, note: "0.28356 lb/in3" },
  metric: { value: 7850, unit: "kg/m3", ...SOURCED, note: "490 lb/ft3 = 7849.05 kg/m3" },
};

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
