/** Outside diameters of steel pipe by nominal size: the same for every wall, standard, extra strong and double extra strong. */

import { inches } from "../../units/length.js";
import type { PipeRow, StandardTable } from "../model.js";

export const pipeDiameters: StandardTable<PipeRow> = {
  edition: "ASME B36.10M",
  clause: "outside diameters",
  rows: [
    row("2-1/2", 2.875),
    row("3", 3.5),
    row("3-1/2", 4),
    row("4", 4.5),
    row("5", 5.563),
    row("6", 6.625),
    row("8", 8.625),
    row("10", 10.75),
    row("12", 12.75),
    row("14", 14),
    row("16", 16),
    row("18", 18),
    row("20", 20),
    row("24", 24),
    row("26", 26),
  ],
};

function row(size: string, outside: number): PipeRow {
  return {
    name: `PIPE ${size}`,
    outside: inches(outside),
    source: "AISC Manual Table 1-14, by an open copy of the AISC shapes data; ASME B36.10M from memory",
    confidence: "medium",
    note: "",
  };
}
