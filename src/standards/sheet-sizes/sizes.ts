/** Sheet sizes, in the unit of each system, short and long side as printed. */
import { inches, type Length, millimetres } from "../../units/length.js";
import type { Confidence, Sourced } from "../model.js";

/** A standard sheet. */
export interface SheetSizeRow extends Sourced {
  readonly system: "ASME Y14.1" | "ARCH" | "ISO 216/5457";
  /** As printed: `B`, `A3`. */
  readonly size: string;
  readonly width: Length;
  readonly height: Length;
  readonly unit: "in" | "mm";
}

/** System, size, width, height, unit, source, confidence. */
export const sheetSizeRows: readonly SheetSizeRow[] = [
  row("ASME Y14.1", "A", 8.5, 11, "in", "Wikipedia (paper size / Y14.1)", "high"),
  row("ASME Y14.1", "B", 11, 17, "in", "Wikipedia", "high"),
  row("ASME Y14.1", "C", 17, 22, "in", "Wikipedia", "high"),
  row("ASME Y14.1", "D", 22, 34, "in", "Wikipedia", "high"),
  row("ASME Y14.1", "E", 34, 44, "in", "Wikipedia", "high"),
  row("ASME Y14.1", "F", 28, 40, "in", "Wikipedia", "high"),
  row("ARCH", "D", 24, 36, "in", "from memory", "from memory"),
  row("ARCH", "E1", 30, 42, "in", "from memory", "from memory"),
  row("ISO 216/5457", "A0", 841, 1189, "mm", "Wikipedia", "high"),
  row("ISO 216/5457", "A1", 594, 841, "mm", "Wikipedia", "high"),
  row("ISO 216/5457", "A2", 420, 594, "mm", "Wikipedia", "high"),
  row("ISO 216/5457", "A3", 297, 420, "mm", "Wikipedia", "high"),
  row("ISO 216/5457", "A4", 210, 297, "mm", "Wikipedia", "high"),
];

function row(
  system: SheetSizeRow["system"],
  size: string,
  width: number,
  height: number,
  unit: "in" | "mm",
  source: string,
  confidence: Confidence,
): SheetSizeRow {
  const length = unit === "in" ? inches : millimetres;
  return { system, size, width: length(width), height: length(height), unit, source, confidence, note: "" };
}
