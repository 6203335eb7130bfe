/** EN 1992-4 and its forerunner CEN/TS 1992-4-2: spacing and edge of headed anchors. */
import { millimetres } from "../../units/length.js";
import type { Fact, Rule, Sourced } from "../model.js";

/** EN 1992-4 has no generic value. */
export const en1992Spacing: Fact = {
  topic: "EN 1992-4",
  item: "generic minimum spacing and edge for headed anchors",
  value: "none (taken from product ETA)",
  source: "no generic value in the standard",
  confidence: "low",
  note: "",
};

/** CEN/TS 1992-4-2: 5 d and 3 d, neither less than 50 mm. */
export const cenTs1992Spacing: Sourced & { readonly spacing: Rule; readonly edge: Rule; readonly least: number } = {
  spacing: { factor: 5, add: millimetres(0) },
  edge: { factor: 3, add: millimetres(0) },
  least: millimetres(50),
  source: "from memory",
  confidence: "from memory",
  note: "",
};
