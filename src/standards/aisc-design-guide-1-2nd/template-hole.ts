/** AISC Design Guide 1, 2nd ed. (2006), s.2.9: the hole of a setting template. */
import { inches } from "../../units/length.js";
import type { BeyondRule, Sourced } from "../model.js";

/** d + 1/16 in, for every rod. */
export const designGuideTemplateHole = {
  beyond: inches(0),
  rule: { factor: 1, add: inches(1 / 16) },
  printed: "d + 1/16 in",
  source: "AISC DG1 2nd ed s.2.9 (secondary copy); AISC Detailing for Steel Construction notes (secondary copy)",
  confidence: "high",
  note: "setting plate also used as rod-setting template, and separate steel templates",
} as const satisfies BeyondRule;

/** s.2.9: a plate that is set over rods already cast takes the base plate's holes, not d + 1/16 in. */
export const designGuideOverCastRods = {
  edition: "Design Guide 1, 2nd ed.",
  clause: "s.2.9: set over cast rods: h = H",
  source: "AISC DG1 2nd ed s.2.9; Detailing textbook notes",
  confidence: "medium-high",
  note: "two texts differ in wording; both reject rod + 1/16 when the plate is placed after the pour",
} as const satisfies Sourced & { readonly edition: string; readonly clause: string };
