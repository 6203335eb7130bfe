/** AISC Design Guide 1, 2nd ed. (2006): advice on setting plates and rods that is one value, in inches. */
import { inches, type Length } from "../../units/length.js";
import type { StandardValue } from "../model.js";

const EDITION = "Design Guide 1, 2nd ed.";

/** Largest side of a setting plate: larger ones tend to warp. */
export const largestSettingPlate: StandardValue<Length> = {
  edition: EDITION,
  clause: "s.2.9",
  value: inches(24),
  source: "AISC DG1 2nd ed s.2.9; Ricker, DG1 1st ed App. B (secondary copies)",
  confidence: "high",
  note: "Ricker gives about 22 in",
};

/** Thread that a rod is given beyond what the design needs, at least. */
export const extraThread: StandardValue<Length> = {
  edition: EDITION,
  clause: "anchor rods, thread length",
  value: inches(3),
  source: "AISC DG1 2nd ed",
  confidence: "high",
  note: "clause not noted",
};

/** A washer over a base plate's hole is about as thick as the rod's diameter divided by this. */
export const rodPerWasherThickness: StandardValue<number> = {
  edition: EDITION,
  clause: "s.2.6",
  value: 3,
  source: "AISC DG1 2nd ed s.2.6 (secondary copy)",
  confidence: "high",
  note: "Table 2.3 prints a least thickness for eight rods, 0.33 to 0.40 of the diameter",
};

/** Hours after the concrete is placed before the upper template comes off. */
export const templateRemoval: StandardValue<number> = {
  edition: EDITION,
  clause: "App. A",
  value: 24,
  source: "AISC DG1 2nd ed App. A, as summarised in a secondary copy",
  confidence: "medium",
  note: "no metric rule was found",
};
