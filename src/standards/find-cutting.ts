/** Deviations of cut edges after ISO 9013. */
import type { Length } from "../units/length.js";
import { iso9013Class1 } from "./iso-9013-2017/deviations-class-1.js";
import { iso9013Class2 } from "./iso-9013-2017/deviations-class-2.js";
import { perpendicularity } from "./iso-9013-2017/perpendicularity.js";
import type { Bounds, DeviationRow, Lookup, PerpendicularityRow, StandardTable } from "./model.js";
import { found } from "./sized-index.js";
import { holds } from "./sizes.js";

const CLASSES: Readonly<Record<1 | 2, StandardTable<DeviationRow>>> = { 1: iso9013Class1, 2: iso9013Class2 };

/** Limit deviation of a nominal dimension cut from plate of a thickness. A miss names the nearest printed ranges. */
export function findIso9013Deviation(grade: 1 | 2, thickness: Length, nominal: Length): Lookup<DeviationRow> {
  const table = CLASSES[grade];
  const inBand = table.rows.filter((row) => holds(row.thickness, thickness));
  const row = inBand.find((candidate) => holds(candidate.nominal, nominal));
  if (row !== undefined) return found(table, row);
  const ranges = inBand.length > 0 ? inBand.map((each) => each.nominal) : table.rows.map((each) => each.thickness);
  const what = inBand.length > 0 ? "dimension" : "thickness";
  return { found: false, nearest: nearestRanges(ranges, inBand.length > 0 ? nominal : thickness, what) };
}

/** Perpendicularity tolerance of a range: u = base + perThickness x thickness, in mm as printed. */
export function iso9013Perpendicularity(range: PerpendicularityRow["range"]): PerpendicularityRow {
  const row = perpendicularity.rows.find((candidate) => candidate.range === range);
  if (row === undefined) throw new RangeError(`no ISO 9013 range ${range}`);
  return row;
}

function nearestRanges(ranges: readonly Bounds[], length: Length, what: string): readonly string[] {
  const once = [...new Map(ranges.map((range) => [range.printed, range])).values()];
  const nearest = once.toSorted((a, b) => distance(a, length) - distance(b, length)).slice(0, 2);
  return nearest.sort((a, b) => (a.from ?? 0) - (b.from ?? 0)).map((range) => `${what} ${range.printed} mm`);
}

function distance(range: Bounds, length: Length): number {
  if (range.from !== null && length <= range.from) return range.from - length;
  return range.to === null ? 0 : Math.max(0, length - range.to);
}
