/** Density of steel, for US and metric jobs. */
import type { Unit } from "../../units/length.js";
import type { Sourced } from "../model.js";

const SOURCED = { source: "AISC practice; tabulated plate weights", confidence: "high" } as const;

/** Mass per volume in its own unit, so that weights agree with handbook tables. */
export interface DensityRow extends Sourced {
  readonly value: number;
  readonly unit: "lb/ft3" | "kg/m3";
}

/** Steel, by the unit of the job. */
export const steelDensities: Readonly<Record<Unit, DensityRow>> = {
  in: { value: 490, unit: "lb/ft3", ...SOURCED, note: "0.28356 lb/in3" },
  mm: { value: 7850, unit: "kg/m3", ...SOURCED, note: "490 lb/ft3 = 7849.05 kg/m3" },
};
