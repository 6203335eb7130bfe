/** ACI 117-10 (R2015), sections 2.3 and 3.3: placing of anchor bolts and embedded items, tops of concrete, in inches. */
import { inches, type Length } from "../../units/length.js";
import type { Confidence, StandardTable } from "../model.js";
import { equal, type PlacingItem, type PlacingTableRow } from "../placing.js";

const SOURCE = "ACI 117-10 (R2015), secondary copy";
const ROD = "centreline of individual anchor bolt from specified location";

/** Clause, about, item, sizes, tolerance, confidence. */
export const aci117Placing: StandardTable<PlacingTableRow> = {
  edition: "ACI 117-10",
  clause: "2.3.4.2",
  rows: [
    row(
      "2.3.1",
      "reinforcement clearance",
      "clearance to nearest reinforcement",
      "all",
      words("max(bar dia, aggregate size, 1 in)"),
      "medium-high",
    ),
    row(
      "2.3.2",
      "embedded item",
      "embedded-item assembly centreline (H and V)",
      "all",
      equal(inches(1)),
      "medium-high",
    ),
    row(
      "2.3.3",
      "embedded item",
      "item surface from centreline of assembly, dimension <=12 in",
      "all",
      words("1/2 per 12 in, not less than 1/4"),
      "medium",
    ),
    row(
      "2.3.3",
      "embedded item",
      "item surface from centreline of assembly, dimension >12 in",
      "all",
      equal(inches(1 / 2)),
      "medium",
    ),
    row("2.3.4.1", "top of rod", "top of anchor bolt elevation", "all", equal(inches(1 / 2)), "high"),
    row("2.3.4.2", "rod position", ROD, ["3/4", "7/8"], equal(inches(1 / 4)), "high"),
    row("2.3.4.2", "rod position", ROD, ["1", "1-1/4", "1-1/2"], equal(inches(3 / 8)), "high"),
    row("2.3.4.2", "rod position", ROD, ["1-3/4", "2", "2-1/2"], equal(inches(1 / 2)), "high"),
    row(
      "3.3.1",
      "top of concrete",
      "top of foundations",
      "all",
      { minus: inches(2), plus: inches(1 / 2), printed: "" },
      "medium",
    ),
    row(
      "3.3.2",
      "top of concrete",
      "top of drilled piers",
      "all",
      { minus: inches(3), plus: inches(1), printed: "" },
      "medium",
    ),
  ],
};

interface Tolerance {
  readonly minus: Length | null;
  readonly plus: Length | null;
  readonly printed: string;
}

function words(printed: string): Tolerance {
  return { minus: null, plus: null, printed };
}

function row(
  clause: string,
  about: PlacingItem,
  item: string,
  sizes: readonly string[] | "all",
  tolerance: Tolerance,
  confidence: Confidence,
): PlacingTableRow {
  return { clause, about, item, sizes, ...tolerance, growth: null, source: SOURCE, confidence, note: "" };
}
