/** EN 1993-1-8:2005, 6.2.6.12 (5): anchor bolts with a hook. From memory: no stored copy was found. */
import type { StandardValue } from "../model.js";

/** Greatest yield strength of a bolt that is anchored by a hook, MPa. */
export const hookedYield: StandardValue<number> = {
  edition: "EN 1993-1-8:2005",
  clause: "6.2.6.12 (5)",
  value: 300,
  source: "from memory",
  confidence: "from memory",
  note: "",
};
