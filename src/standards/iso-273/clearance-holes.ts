/** ISO 273:1979 clearance holes, in mm: fine (H12), medium (H13), coarse (H14). */
import { millimetres } from "../../units/length.js";
import type { ClearanceHoleRow, Confidence, StandardTable } from "../model.js";

const NOTES: Readonly<Record<string, string>> = {
  M12: "ASME B18.2.8/older tables round up to 13/14/15",
  M14: "ASME B18.2.8/older tables round up to 15/16/17",
  M16: "ASME B18.2.8/older tables round up to 17/18/19",
};

/** Size, fine, medium, coarse, confidence. */
export const iso273Holes: StandardTable<ClearanceHoleRow> = {
  edition: "ISO 273",
  clause: "medium series (H13)",
  rows: [
    row("M10", 10.5, 11, 12, "high"),
    row("M12", 13, 13.5, 14.5, "high"),
    row("M14", 15, 15.5, 16.5, "high"),
    row("M16", 17, 17.5, 18.5, "high"),
    row("M18", 19, 20, 21, "high"),
    row("M20", 21, 22, 24, "high"),
    row("M22", 23, 24, 26, "high"),
    row("M24", 25, 26, 28, "high"),
    row("M27", 28, 30, 32, "high"),
    row("M30", 31, 33, 35, "high"),
    row("M33", 34, 36, 38, "high"),
    row("M36", 37, 39, 42, "high"),
    row("M39", 40, 42, 45, "high"),
    row("M42", 43, 45, 48, "high"),
    row("M45", 46, 48, 52, "high"),
    row("M48", 50, 52, 56, "high"),
    row("M52", 54, 56, 62, "high"),
    row("M56", 58, 62, 66, "high"),
    row("M60", 62, 66, 70, "high"),
    row("M64", 66, 70, 74, "high"),
    row("M68", 70, 74, 78, "high"),
    row("M72", 74, 78, 82, "high"),
    row("M76", 78, 82, 86, "high"),
    row("M80", 82, 86, 91, "high"),
    row("M85", 87, 91, 96, "high"),
    row("M90", 93, 96, 101, "high"),
    row("M95", 98, 101, 107, "high"),
    row("M100", 104, 107, 112, "high"),
    row("M105", 109, 112, 117, "medium (single source)"),
    row("M110", 114, 117, 122, "medium (single source)"),
    row("M115", 119, 122, 127, "medium (single source)"),
    row("M120", 124, 127, 132, "medium (single source)"),
    row("M125", 129, 132, 137, "medium (single source)"),
    row("M130", 134, 137, 144, "medium (single source)"),
    row("M140", 144, 147, 155, "medium (single source)"),
    row("M150", 155, 158, 165, "medium (single source)"),
  ],
};

function row(size: string, fine: number, medium: number, coarse: number, confidence: Confidence): ClearanceHoleRow {
  const holes = { fine: millimetres(fine), medium: millimetres(medium), coarse: millimetres(coarse) };
  const sourced = { source: "ISO 273:1979", confidence, note: NOTES[size] ?? "" };
  return { size, diameter: millimetres(Number(size.slice(1))), ...holes, ...sourced };
}
