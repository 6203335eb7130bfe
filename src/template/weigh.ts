/** Weight of a template. */
import type { Density, Input } from "../job/model/job.js";
import type { Length, Unit } from "../units/length.js";
import { NM_PER_MM, roundSymmetric } from "../units/length.js";
import { CUBIC_FOOT_IN_MM3, POUND_IN_KG } from "../units/weight.js";

/** In lb or kg, by the job's unit, rounded to 1e-6. */
export interface Weight {
  readonly value: number;
  readonly unit: "lb" | "kg";
}

/** Weight of one template: net area x thickness x density, in lb or kg by the job's unit; null without a density. */
export function weighPlate(netArea: number, thickness: Length, density: Input<Density>, unit: Unit): Weight | null {
  if (density.kind === "missing") return null;
  const volume = (netArea * thickness) / NM_PER_MM;
  const pounds =
    density.value.unit === "lb/ft3"
      ? (volume / CUBIC_FOOT_IN_MM3) * density.value.value
      : ((volume / 1e9) * density.value.value) / POUND_IN_KG;
  const value = unit === "in" ? pounds : pounds * POUND_IN_KG;
  return { value: roundSymmetric(value * 1e6) / 1e6, unit: unit === "in" ? "lb" : "kg" };
}
