/** Sheet sizes, in the unit of each system, short and long side as printed. */
import { inches, type Length, millimetres } from "../../units/length.js";
import type { Sourced } from "../model.js";

/** A standard sheet. */
export interface SheetSizeRow extends Sourced {
  /** As printed: `B`, `A3`. */
  readonly size: string;
  readonly short: Length;
  readonly long: Length;
}

/** ASME Y14.1, inches. */
export const asmeSheets = {
  A: inch("A", 8.5, 11),
  B: inch("B", 11, 17),
  C: inch("C", 17, 22),
  D: inch("D", 22, 34),
  E: inch("E", 34, 44),
} as const;

/** ISO 216 (ISO 5457 of drawings), millimetres. */
export const isoSheets = {
  A0: metric("A0", 841, 1189),
  A1: metric("A1", 594, 841),
  A2: metric("A2", 420, 594),
  A3: metric("A3", 297, 420),
  A4: metric("A4", 210, 297),
} as const;

function inch(size: string, short: number, long: number): SheetSizeRow {
  const source = "Wikipedia (paper size, ASME Y14.1)";
  return { size, short: inches(short), long: inches(long), source, confidence: "high", note: "" };
}

function metric(size: string, short: number, long: number): SheetSizeRow {
  const source = "Wikipedia (ISO 216)";
  return { size, short: millimetres(short), long: millimetres(long), source, confidence: "high", note: "" };
}
