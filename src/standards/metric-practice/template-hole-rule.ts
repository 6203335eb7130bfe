/** The hole of a setting template in metric practice, above M39. No published rule was found. */
import { millimetres } from "../../units/length.js";
import type { BeyondRule } from "../model.js";

/** d + 3 mm. */
export const metricTemplateHoleRule = {
  beyond: millimetres(39),
  rule: { factor: 1, add: millimetres(3) },
  printed: "d + 3 mm",
  source: "common practice",
  confidence: "common practice",
  note: "no published rule was found for template holes of metric rods",
} as const satisfies BeyondRule;
