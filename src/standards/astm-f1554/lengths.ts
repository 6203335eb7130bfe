/** ASTM F1554: tolerance of the length of anchor bolts, in inches; of a bent one the length is to the inside of its bend. */
import { inches, type Length } from "../../units/length.js";
import type { Sourced, StandardTable } from "../model.js";

/** Plus and minus this, for lengths up to and including `upTo`; null: for every greater one. */
export interface LengthToleranceRow extends Sourced {
  readonly upTo: Length | null;
  readonly plusMinus: Length;
}

const SOURCED = { source: "ASTM F1554", confidence: "high", note: "" } as const;

/** Short rods first. */
export const f1554Lengths: StandardTable<LengthToleranceRow> = {
  edition: "ASTM F1554",
  clause: "overall length",
  rows: [
    { upTo: inches(24), plusMinus: inches(1 / 2), ...SOURCED },
    { upTo: null, plusMinus: inches(1), ...SOURCED },
  ],
};
