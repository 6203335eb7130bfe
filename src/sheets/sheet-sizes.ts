/** Standard sheets (ASME Y14.1, ISO 216 / ISO 5457) and scales, smallest sheet and largest scale first. */
import type { Unit } from "../units/length.js";

/**
 * A sheet in landscape, millimetres. `panel` is the width of the column of tables at the right; `lettering` the four cap
 * heights used, from the ISO 3098 series: tables, dimensions and values, headings, titles. ISO 3098 asks for 2.5 mm at
 * least on A3 and larger, 1.8 mm on A4; the same is kept for the letter sizes nearest to them.
 */
export interface SheetSize {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly panel: number;
  readonly lettering: Lettering;
}

export interface Lettering {
  readonly small: number;
  readonly body: number;
  readonly heading: number;
  readonly title: number;
}

const SMALL: Lettering = { small: 1.8, body: 2.5, heading: 3.5, title: 5 };
const LARGE: Lettering = { small: 2.5, body: 3.5, heading: 5, title: 7 };

/** ASME Y14.1: A 8.5 x 11, B 11 x 17, C 17 x 22, D 22 x 34 in. */
const INCH_SHEETS: readonly SheetSize[] = [
  { name: "A", width: 279.4, height: 215.9, panel: 108, lettering: SMALL },
  { name: "B", width: 431.8, height: 279.4, panel: 152, lettering: LARGE },
  { name: "C", width: 558.8, height: 431.8, panel: 166, lettering: LARGE },
  { name: "D", width: 863.6, height: 558.8, panel: 180, lettering: LARGE },
];

/** ISO 216: A4 210 x 297, A3 297 x 420, A2 420 x 594 mm. */
const METRIC_SHEETS: readonly SheetSize[] = [
  { name: "A4", width: 297, height: 210, panel: 112, lettering: SMALL },
  { name: "A3", width: 420, height: 297, panel: 152, lettering: LARGE },
  { name: "A2", width: 594, height: 420, panel: 168, lettering: LARGE },
];

export function sheetSizes(unit: Unit): readonly SheetSize[] {
  return unit === "in" ? INCH_SHEETS : METRIC_SHEETS;
}

/** A scale as printed, and paper over real. */
export interface Scale {
  readonly name: string;
  readonly factor: number;
}

/** Structural scales in inches to the foot (common practice). */
const INCH_SCALES: readonly Scale[] = [
  { name: "FULL SIZE", factor: 1 },
  { name: `6" = 1'-0"`, factor: 1 / 2 },
  { name: `3" = 1'-0"`, factor: 1 / 4 },
  { name: `1-1/2" = 1'-0"`, factor: 1 / 8 },
  { name: `1" = 1'-0"`, factor: 1 / 12 },
  { name: `3/4" = 1'-0"`, factor: 1 / 16 },
  { name: `1/2" = 1'-0"`, factor: 1 / 24 },
  { name: `1/4" = 1'-0"`, factor: 1 / 48 },
  { name: `1/8" = 1'-0"`, factor: 1 / 96 },
  { name: `1/16" = 1'-0"`, factor: 1 / 192 },
  { name: `1/32" = 1'-0"`, factor: 1 / 384 },
];

/** ISO 5455. */
const METRIC_SCALES: readonly Scale[] = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000].map((ratio) => ({
  name: `1:${ratio}`,
  factor: 1 / ratio,
}));

export function scales(unit: Unit): readonly Scale[] {
  return unit === "in" ? INCH_SCALES : METRIC_SCALES;
}
