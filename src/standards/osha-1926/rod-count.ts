/** 29 CFR 1926.755(a)(1): anchor rods of a column. */
import type { StandardValue } from "../model.js";

/** Least number of anchor rods of a column. */
export const leastRods: StandardValue<number> = {
  edition: "29 CFR 1926",
  clause: "1926.755(a)(1)",
  value: 4,
  source: "29 CFR 1926.755 (secondary copy)",
  confidence: "high",
  note: "",
};
