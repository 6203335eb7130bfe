/** ISO 4034 hex nuts, product grade C, in mm: s across flats, m height. No width across corners is tabulated. */
import { isoNut as row } from "../fasteners.js";
import type { NutRow, StandardTable } from "../model.js";

const BEYOND = "above ISO 4032 range (M64); DIN 934-style sizes";

/** Size, s, m, e (not tabulated), confidence, note. */
export const iso4034Nuts: StandardTable<NutRow> = {
  edition: "ISO 4034",
  clause: "hex nuts, product grade C",
  rows: [
    row("M10", 17, 8, null, "high"),
    row("M12", 19, 10, null, "high"),
    row("M16", 24, 13, null, "high"),
    row("M20", 30, 16, null, "high"),
    row("M22", 32, 18, null, "high"),
    row("M24", 36, 19, null, "high"),
    row("M27", 41, 22, null, "high"),
    row("M30", 46, 24, null, "high"),
    row("M33", 50, 26, null, "high"),
    row("M39", 60, 31, null, "high"),
    row("M42", 65, 34, null, "high"),
    row("M45", 70, 36, null, "high"),
    row("M48", 75, 38, null, "high"),
    row("M52", 80, 42, null, "high"),
    row("M56", 85, 45, null, "high"),
    row("M60", 90, 48, null, "high"),
    row("M64", 95, 51, null, "high"),
    row("M72", 105, 58, null, "medium", BEYOND),
    row("M80", 115, 64, null, "medium", BEYOND),
    row("M90", 130, 72, null, "medium", BEYOND),
    row("M100", 145, 80, null, "medium", BEYOND),
  ],
};
