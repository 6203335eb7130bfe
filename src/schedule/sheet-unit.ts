/** The unit of a sheet's bare lengths, where its own texts prove it. */
import type { Cell, Table } from "../readers/inputs.js";
import type { Unit } from "../units/index.js";

/** Where a unit is written. */
export interface UnitProof {
  readonly unit: Unit;
  readonly cell: Cell;
  /** What of the text says so. */
  readonly because: string;
}

/** Signs and words that stand after a number, fractions of an inch, and words in brackets or alone. */
const INCHES: readonly (readonly [RegExp, string])[] = [
  [/\d\s*(?:["\u2033\u201d]|''|\u2032\u2032)/u, "an inch sign"],
  [/\d\s*['\u2032\u2019]\s*-?\s*\d/u, "a foot sign"],
  [
    /\d\s*(?:in|inch|inches|ft|feet)\.?\s*(?:$|[-\dx,;)@+]|dia|long|thk|o\.?\s?c|c\s?\/\s?c)/i,
    "inches or feet after a number",
  ],
  [/(?<![\d/.])\d{1,2}\s*\/\s*(?:2|4|8|16|32|64)(?![\d/])/, "a fraction of an inch"],
  [/[\u00bc-\u00be\u215b-\u215e]/u, "a fraction of an inch"],
  [/[([]\s*(?:in|inch|inches|ft|feet|")\.?\s*[)\]]/i, "a heading in inches or feet"],
  [/^\s*(?:in|inch|inches)\.?\s*$/i, "a row of units"],
];

const MILLIMETRES: readonly (readonly [RegExp, string])[] = [
  [/\d\s*mm\b/i, "mm after a number"],
  [/[([]\s*mm\.?\s*[)\]]/i, "a heading in mm"],
  [/^\s*mm\.?\s*$/i, "a row of units"],
  [/\b(?:in|are|:)\s+(?:mm|millimet(?:er|re)s)\b/i, "words that say mm"],
];

/** A metric thread by its size, as M24; in inches no thread is called so. */
const METRIC_SIZE = /(?<![\p{L}\d])M\d{2}(?![\p{L}\d])/u;
const BARE = /^\d+(?:[.,]\d+)?$/;
/** Bare numbers from here on are no inches of a base: M-sizes beside a few of them are of a metric sheet. */
const LARGE = 150;
const FEW = 3;

/** What is no measure though it may look like one: a sheet's number, a scale, a date. */
const NO_MEASURE = /\b(?:sheet|sht|page|pg|scale|date|rev)\b/i;

/** One proof for each unit that something proves; none, one, or both. */
export function provedUnits(table: Table): readonly UnitProof[] {
  const cells = table.rows.flat().filter(({ text }) => text !== "" && !NO_MEASURE.test(text));
  return [firstProof(cells, "in", INCHES), firstProof(cells, "mm", MILLIMETRES) ?? metricSizes(cells)].filter(
    (proof) => proof !== undefined,
  );
}

function firstProof(
  cells: readonly Cell[],
  unit: Unit,
  signs: readonly (readonly [RegExp, string])[],
): UnitProof | undefined {
  for (const cell of cells) {
    const sign = signs.find(([pattern]) => pattern.test(cell.text));
    if (sign !== undefined) return { unit, cell, because: sign[1] };
  }
  return undefined;
}

function metricSizes(cells: readonly Cell[]): UnitProof | undefined {
  const size = cells.find(({ text }) => METRIC_SIZE.test(text));
  const large = cells.filter(({ text }) => BARE.test(text) && Number(text.replace(",", ".")) >= LARGE);
  return size === undefined || large.length < FEW
    ? undefined
    : { unit: "mm", cell: size, because: "metric sizes beside large numbers" };
}
