/** AISC Design Guide 1, 2nd ed. (2006): grout or air hole in a large base plate, in inches. */
import { inches, type Length } from "../../units/length.js";
import type { StandardValue } from "../model.js";

const SOURCED = { source: "Detailing textbook notes; DG1 (secondary copies)", confidence: "medium" } as const;

/** Base plates whose lesser side is this or more have a hole to let grout in or air out. */
export const groutHoleFrom: StandardValue<Length> = {
  edition: "Design Guide 1, 2nd ed.",
  clause: "grout or air hole in plates of about 36 in and more",
  value: inches(36),
  ...SOURCED,
  note: "about 36 in; s.2.10 speaks of plates over 24 in wide (from memory)",
};

/** Its usual diameter. */
export const groutHoleSize: StandardValue<Length> = {
  edition: "Design Guide 1, 2nd ed.",
  clause: "grout or air hole",
  value: inches(3),
  ...SOURCED,
  note: "about 3 in",
};
