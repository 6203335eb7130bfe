/** Printed sizes and ranges to exact lengths. */
import { type Length, millimetres, type Unit } from "../units/length.js";
import { parseLength } from "../units/parse.js";
import type { Bounds } from "./model.js";

/** Inches as printed in a table: `1-5/16`, `.875`. Throws on anything else: a slip in the data. */
export function printedInches(text: string): Length {
  return printed(text, "in");
}

/** Millimetres as printed in a table. */
export function printedMillimetres(text: string): Length {
  return printed(text, "mm");
}

/** The diameter of a printed metric size: `M30` is 30 mm. */
export function metricDiameter(size: string): Length {
  return printed(size.slice(1), "mm");
}

/** `M30` or `m 30` to 30 mm; other text is a length, `unit` being the unit of a bare number. null when it is neither. */
export function diameterOf(size: string, unit: Unit): Length | null {
  const metric = /^\s*m\s*(\d{1,4}(?:\.\d{1,3})?)\s*$/i.exec(size);
  if (metric !== null) return millimetres(Number(metric[1]));
  const reading = parseLength(size, unit);
  return reading.ok ? reading.value : null;
}

const RANGE = /^(>=|>|<=|<)?(\d+-\d+\/\d+|[\d./]+)(?:(-<|<|-)(\d+-\d+\/\d+|[\d./]+))?$/;

/** A range as printed: `3-<10` holds 3 and not 10, `>3.15-6.3` holds 6.3 and not 3.15; `<=1`, `>0<3`, `>=1-1/8`, `48-60`, `24`. */
export function bounds(text: string, unit: Unit): Bounds {
  const parts = RANGE.exec(text);
  if (parts === null) throw new RangeError(`not a printed range: ${text}`);
  const [, lead, first, joint, second] = parts;
  const low = lead?.startsWith("<") ? undefined : first;
  const high = lead?.startsWith("<") ? first : lead === undefined && joint === undefined ? first : second;
  return {
    printed: text,
    from: low === undefined ? null : printed(low, unit),
    fromIncluded: lead !== ">",
    to: high === undefined ? null : printed(high, unit),
    toIncluded: joint === "-" || (joint === undefined && lead !== "<"),
  };
}

/** True when the range holds the length, its ends as printed. */
export function holds(range: Bounds, length: Length): boolean {
  const above = range.from === null || (range.fromIncluded ? length >= range.from : length > range.from);
  return above && (range.to === null || (range.toIncluded ? length <= range.to : length < range.to));
}

function printed(text: string, unit: Unit): Length {
  const reading = parseLength(text, unit);
  if (!reading.ok) throw new RangeError(`table value ${reading.message}`);
  return reading.value;
}
