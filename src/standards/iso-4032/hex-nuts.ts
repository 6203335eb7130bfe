/** ISO 4032 hex nuts, in mm: s across flats, m height (greatest), e across corners (least). Above M64: DIN 934-style sizes. */
import { isoNut as row } from "../fasteners.js";
import type { NutRow, StandardTable } from "../model.js";

const BEYOND = "above ISO 4032 range (M64); DIN 934-style sizes";

/** Size, s, m greatest, e least, confidence, note. The standard tabulates no greatest width across corners. */
export const iso4032Nuts: StandardTable<NutRow> = {
  edition: "ISO 4032",
  clause: "hex nuts, style 1",
  rows: [
    row("M10", 16, 8.4, 17.77, "high"),
    row("M12", 18, 10.8, 20.03, "high"),
    row("M14", 21, 12.8, 23.35, "high", "another open data set differs s=22.0 m=12.8"),
    row("M16", 24, 14.8, 26.75, "high"),
    row("M18", 27, 15.8, 29.56, "high"),
    row("M20", 30, 18, 32.95, "high"),
    row("M22", 34, 19.4, 37.29, "high"),
    row("M24", 36, 21.5, 39.55, "high"),
    row(
      "M27",
      41,
      23.8,
      45.2,
      "high (conflict resolved)",
      "one copy prints e 45.29; other copies and 1.13 (s - IT15) give 45.20",
    ),
    row("M30", 46, 25.6, 50.85, "high"),
    row("M33", 50, 28.7, 55.37, "high"),
    row("M36", 55, 31, 60.79, "high"),
    row("M39", 60, 33.4, 66.44, "high"),
    row("M42", 65, 34, 71.3, "high"),
    row("M45", 70, 36, 76.95, "high"),
    row("M48", 75, 38, 82.6, "high"),
    row("M52", 80, 42, 88.25, "high"),
    row("M56", 85, 45, 93.56, "high"),
    row("M60", 90, 48, 99.21, "high"),
    row("M64", 95, 51, 104.86, "high"),
    row("M68", 100, 54, 110.51, "medium", BEYOND),
    row("M72", 105, 58, 116.16, "medium", BEYOND),
    row("M76", 110, 61, 121.81, "medium", BEYOND),
    row("M80", 115, 64, 127.46, "medium", BEYOND),
    row("M85", 120, 68, 133.11, "medium", BEYOND),
    row("M90", 130, 72, 144.08, "medium", BEYOND),
    row("M95", 135, 76, 150.74, "medium", BEYOND),
    row("M100", 145, 80, 161.02, "medium", BEYOND),
    row("M105", 150, 84, 167.69, "medium", BEYOND),
    row("M110", 155, 88, 172.32, "medium", BEYOND),
    row("M120", 170, 96, 190.29, "medium", BEYOND),
    row("M125", 180, 100, 200.57, "medium", BEYOND),
    row("M140", 200, 112, 220.8, "medium", BEYOND),
  ],
};
