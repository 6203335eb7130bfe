/** ISO 4033 hex nuts, style 2 (high), in mm: greatest height m. Widths are those of ISO 4032. */

import type { Sized, StandardTable } from "../../../src/standards/model.js";
import { printedMillimetres } from "../../../src/standards/sizes.js";
import { type Length, millimetres } from "../../../src/units/length.js";

/** Height of a style 2 nut. */
export interface HighNutRow extends Sized {
  readonly height: Length;
}

/** Size, m greatest, note. */
export const iso4033Nuts: StandardTable<HighNutRow> = {
  edition: "ISO 4033",
  clause: "hex nuts, style 2",
  rows: [
    row("M10", 9.3),
    row("M12", 12),
    row("M14", 14.1),
    row("M16", 16.4),
    row("M20", 20.3),
    row("M24", 23.9),
    row("M30", 28.6),
    row("M36", 34.7, "another open data set m=33.1"),
  ],
};

function row(size: string, height: number, note = ""): HighNutRow {
  const diameter = printedMillimetres(size.slice(1));
  return { size, diameter, height: millimetres(height), source: "ISO 4032 / 4033 / 4034", confidence: "high", note };
}
