/** AISC 303-16 and 303-22, section 7.5.1: placing of anchor rods by rod diameter, in inches. Numbers from memory. */
import { inches, type Length } from "../../units/length.js";
import type { StandardTable } from "../model.js";
import { equal, type PlacingTableRow } from "../placing.js";

const SOURCED = {
  source: "edition change confirmed by ASCC position statement text; numbers from memory (identical to ACI 117-10)",
  confidence: "from memory (numbers)",
  note: "",
} as const;

/** Rod sizes, plus and minus; then the elevation. */
export const aisc303Placing: StandardTable<PlacingTableRow> = {
  edition: "AISC 303-22",
  clause: "7.5.1",
  rows: [
    row(["3/4", "7/8"], inches(1 / 4)),
    row(["1", "1-1/4", "1-1/2"], inches(3 / 8)),
    row(["1-3/4", "2", "2-1/2"], inches(1 / 2)),
    {
      clause: "7.5.1",
      about: "top of rod",
      item: "elevation of rod tops",
      sizes: "all",
      ...equal(inches(1 / 2)),
      growth: null,
      source: "from memory",
      confidence: "from memory",
      note: "",
    },
  ],
};

function row(sizes: readonly string[], tolerance: Length): PlacingTableRow {
  const item = "horizontal location/spacing by rod diameter";
  return { clause: "7.5.1", about: "rod position", item, sizes, ...equal(tolerance), growth: null, ...SOURCED };
}
