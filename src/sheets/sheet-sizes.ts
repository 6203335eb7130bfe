/** Standard sheets (ASME Y14.1, ISO 216 / ISO 5457) and scales, smallest sheet and largest scale first. */
import { asmeSheets, isoSheets, leastLettering, letterHeights, type SheetSizeRow } from "../standards/index.js";
import { type Length, toMillimetres, type Unit } from "../units/length.js";

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

/** Cap heights, mm on the paper. */
export interface Lettering {
  readonly small: number;
  readonly body: number;
  readonly heading: number;
  readonly title: number;
}

/** Four heights of the series, from the least height of notes on. */
function lettering(least: Length): Lettering {
  const heights = letterHeights.rows.filter(({ height }) => height >= least).map(({ height }) => toMillimetres(height));
  const [small = 0, body = 0, heading = 0, title = 0] = heights;
  return { small, body, heading, title };
}

const SMALL = lettering(leastLettering.A4.value);
const LARGE = lettering(leastLettering["A3 to A1"].value);

/** A standard sheet in landscape. */
export function landscape({ size, short, long }: SheetSizeRow, panel: number, letters = LARGE): SheetSize {
  return { name: size, width: toMillimetres(long), height: toMillimetres(short), panel, lettering: letters };
}

const SHEETS: Readonly<Record<Unit, readonly SheetSize[]>> = {
  in: [
    landscape(asmeSheets.A, 108, SMALL),
    landscape(asmeSheets.B, 152),
    landscape(asmeSheets.C, 166),
    landscape(asmeSheets.D, 180),
  ],
  mm: [landscape(isoSheets.A4, 112, SMALL), landscape(isoSheets.A3, 152), landscape(isoSheets.A2, 168)],
};

/** Sheets of a base, smallest first: ASME Y14.1 A to D, ISO 216 A4 to A2. */
export function sheetSizes(unit: Unit): readonly SheetSize[] {
  return SHEETS[unit];
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

/** Scales of a sheet, largest first. */
export function scales(unit: Unit): readonly Scale[] {
  return unit === "in" ? INCH_SCALES : METRIC_SCALES;
}
