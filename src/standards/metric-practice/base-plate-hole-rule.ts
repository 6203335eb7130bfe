/** The common rule for base-plate holes in metric practice: d + 6 mm. */
import { millimetres } from "../../units/length.js";
import type { FromRule } from "../model.js";

/** For every rod diameter. */
export const metricBaseHoleRule = {
  from: millimetres(0),
  rule: { factor: 1, add: millimetres(6) },
  source: "d + 6 mm, as in UK practice (SCI P358) and AS 4100 / NZS 3404",
  confidence: "common practice",
  note: "",
} as const satisfies FromRule;
