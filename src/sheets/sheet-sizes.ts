/** Standard sheets (ASME Y14.1, ISO 216 / ISO 5457) and scales, smallest sheet and largest scale first. */
import {
  asmeSheets,
  inchTitleLettering,
  isoSheets,
  leastLettering,
  letterHeights,
  type SheetSizeRow,
} from "../standards/index.js";
import { toMillimetres, type Unit } from "../units/length.js";

/** A sheet in landscape, millimetres. `panel` is the width of the column of tables at the right. */
export interface SheetSize {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly panel: number;
  readonly lettering: Lettering;
}

/** Cap heights, mm on the paper: tables and notes, dimensions and values, headings, titles. Nothing is lettered smaller. */
export interface Lettering {
  readonly small: number;
  readonly body: number;
  readonly heading: number;
  readonly title: number;
}

/** A height of the series of ISO 3098, the least one that is not under the height asked for. */
function ofSeries(least: number): number {
  const heights = letterHeights.rows.map(({ height }) => toMillimetres(height));
  return heights.find((height) => height >= least) ?? least;
}

/** Small letters of metric sheets: of all sizes what ISO 3098 asks for A3, so that an A4 sheet reads as the others do. */
const ISO_LEAST = toMillimetres(leastLettering["A3 to A1"].value);
const INCH_LEAST = toMillimetres(leastLettering.inch.value);
const INCH_TITLE = toMillimetres(inchTitleLettering.value);

/** On the largest sheets letters are about a third larger: they still read on a print of half size (common practice). */
const HALF_SIZE_PRINT = 4 / 3;

const INCH_SMALL: Lettering = { small: INCH_LEAST, body: INCH_LEAST, heading: 4, title: INCH_TITLE };
const INCH: Lettering = { ...INCH_SMALL, body: 3.5 };
const INCH_LARGE: Lettering = {
  small: INCH_LEAST * HALF_SIZE_PRINT,
  body: 4.5,
  heading: 5.5,
  title: INCH_TITLE * HALF_SIZE_PRINT,
};
const METRIC_SMALL: Lettering = { small: ISO_LEAST, body: ISO_LEAST, heading: ofSeries(3.5), title: ofSeries(5) };
const METRIC: Lettering = { ...METRIC_SMALL, body: ofSeries(3.5), heading: ofSeries(5), title: ofSeries(7) };
const METRIC_LARGE: Lettering = {
  small: ofSeries(ISO_LEAST * HALF_SIZE_PRINT),
  body: ofSeries(5),
  heading: ofSeries(7),
  title: ofSeries(10),
};

/** A standard sheet in landscape. */
function landscape({ size, short, long }: SheetSizeRow, panel: number, lettering: Lettering): SheetSize {
  return { name: size, width: toMillimetres(long), height: toMillimetres(short), panel, lettering };
}

const SHEETS: Readonly<Record<Unit, readonly SheetSize[]>> = {
  in: [
    landscape(asmeSheets.A, 120, INCH_SMALL),
    landscape(asmeSheets.B, 160, INCH_SMALL),
    landscape(asmeSheets.C, 178, INCH),
    landscape(asmeSheets.D, 232, INCH_LARGE),
  ],
  mm: [
    landscape(isoSheets.A4, 112, METRIC_SMALL),
    landscape(isoSheets.A3, 150, METRIC_SMALL),
    landscape(isoSheets.A2, 160, METRIC),
    landscape(isoSheets.A1, 220, METRIC_LARGE),
  ],
};

/** Sheets of a base, smallest first: ASME Y14.1 A to D, ISO 216 A4 to A1. */
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
