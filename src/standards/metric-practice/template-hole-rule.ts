/** The hole of a setting template in metric practice, above M39. No published rule was found. */
import { millimetres } from "../../units/length.js";
import type { BeyondRule, Sourced } from "../model.js";

/** d + 3 mm. */
export const metricTemplateHoleRule = {
  beyond: millimetres(39),
  rule: { factor: 1, add: millimetres(3) },
  printed: "d + 3 mm",
  source: "common practice",
  confidence: "common practice",
  note: "no published rule was found for template holes of metric rods",
} as const satisfies BeyondRule;

/** A plate that is set over rods already cast takes the base plate's holes. */
export const metricOverCastRods = {
  edition: "common practice",
  clause: "set over cast rods: h = H",
  source: "common practice",
  confidence: "common practice",
  note: "",
} as const satisfies Sourced & { readonly edition: string; readonly clause: string };
