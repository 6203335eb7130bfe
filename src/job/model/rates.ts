/** What a shop asks for its work: its own figures, none of which has a default. */
import type { Unit } from "../../units/length.js";
import type { Input } from "./values.js";

/** What is counted or weighed, and has a rate of its own. */
export const RATE_NAMES = [
  "perLot",
  "perBarWeight",
  "perCut",
  "perThreadEnd",
  "perBend",
  "perSwedge",
  "perWeld",
  "perGalvanizedWeight",
  "perNut",
  "perWasher",
  "perPlateWasher",
  "perEndPlate",
  "perTemplate",
  "perPlateWeight",
  "perPierce",
  "perLengthCut",
  "perLengthScribed",
  "perHole",
  "perDelivery",
] as const;

/** The name of a rate, as the shop file writes it. */
export type RateName = (typeof RATE_NAMES)[number];

/** The `rates` block of a shop file. */
export interface Rates {
  /** As the shop writes it, `USD`; missing where there is no rate at all. */
  readonly currency: Input<string>;
  /** Decimals of a sum of money, 0 to 3: each line is rounded to them, half up. */
  readonly decimals: number;
  /** in: weights are in lb and lengths in ft. mm: in kg and m. */
  readonly unit: Unit;
  /** In ten-thousandths of the currency's own unit: whole numbers, so that nothing is lost in adding up. */
  readonly of: Readonly<Record<RateName, Input<number>>>;
}
