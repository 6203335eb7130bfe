/** ACI 117-90, section 2.3: embedded items, in inches. Superseded; for comparison. */
import { inches } from "../../units/length.js";
import type { StandardTable } from "../model.js";
import { equal, type PlacingTableRow } from "../placing.js";

/** The one row. */
export const aci117NinetyPlacing: StandardTable<PlacingTableRow> = {
  edition: "ACI 117-90",
  clause: "2.3",
  rows: [
    {
      clause: "2.3",
      about: "embedded item",
      item: "embedded items",
      sizes: "all",
      ...equal(inches(1)),
      source: "ASCC position statement 14 (secondary copy)",
      confidence: "high",
      note: "",
    },
  ],
};
