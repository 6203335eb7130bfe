/** The hole of a setting template in metric practice, above M39. No published rule was found. */
import { millimetres } from "../../units/length.js";
import type { FromRule } from "../model.js";

/** d + 3 mm. */
export const metricTemplateHoleRule = {
  from: millimetres(39),
  rule: { factor: 1, add: millimetres(3) },
  source: "common practice",
  confidence: "common practice",
  note: "no published rule was found for template holes of metric rods",
} as const satisfies FromRule;
