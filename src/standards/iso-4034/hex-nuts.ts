/** ISO 4034 hex nuts, product grade C, in mm: s across flats, m height. No width across corners is tabulated. */
import { millimetres } from "../../units/length.js";
import type { Confidence, NutRow, StandardTable } from "../model.js";
import { printedMillimetres } from "../sizes.js";

const BEYOND = "above ISO 4032 range (M64); DIN 934-style sizes";

/** Size, s, m, confidence, note. */
export const iso4034Nuts: StandardTable<NutRow> = {
  edition: "ISO 4034",
  clause: "hex nuts, product grade C",
  rows: [
    row("M10", 17, 8, "high"),
    row("M12", 19, 10, "high"),
    row("M16", 24, 13, "high"),
    row("M20", 30, 16, "high"),
    row("M22", 32, 18, "high"),
    row("M24", 36, 19, "high"),
    row("M27", 41, 22, "high"),
    row("M30", 46, 24, "high"),
    row("M33", 50, 26, "high"),
    row("M39", 60, 31, "high"),
    row("M42", 65, 34, "high"),
    row("M45", 70, 36, "high"),
    row("M48", 75, 38, "high"),
    row("M52", 80, 42, "high"),
    row("M56", 85, 45, "high"),
    row("M60", 90, 48, "high"),
    row("M64", 95, 51, "high"),
    row("M72", 105, 58, "medium", BEYOND),
    row("M80", 115, 64, "medium", BEYOND),
    row("M90", 130, 72, "medium", BEYOND),
    row("M100", 145, 80, "medium", BEYOND),
  ],
};

function row(size: string, s: number, m: number, confidence: Confidence, note = ""): NutRow {
  return {
    size,
    diameter: printedMillimetres(size.slice(1)),
    acrossFlats: millimetres(s),
    acrossFlatsLeast: null,
    acrossCorners: null,
    acrossCornersLeast: null,
    height: millimetres(m),
    heightLeast: null,
    source: "ISO 4032 / 4033 / 4034",
    confidence,
    note,
  };
}
