/** Sizes of sheets that a job may choose. */
import type { Unit } from "../../units/index.js";

/** Smallest first: ASME Y14.1 in inches, ISO 216 in millimetres, as sheets are drawn. */
export const SHEET_NAMES = { in: ["A", "B", "C", "D"], mm: ["A4", "A3", "A2", "A1"] } as const satisfies Record<
  Unit,
  readonly string[]
>;

/** The printed name of a size. */
export type SheetName = (typeof SHEET_NAMES)[Unit][number];
