/** Threads by size, in any way of writing it, or by series and diameter. */
import type { Length, Unit } from "../units/length.js";
import { eightUnThreads } from "./asme-b1-1/eight-un.js";
import { uncThreads } from "./asme-b1-1/unc.js";
import { metricThreads } from "./iso-261/coarse-threads.js";
import type { Lookup, ThreadRow, ThreadSeries } from "./model.js";
import { findSized, found, indexByDiameter, type SizedIndex } from "./sized-index.js";
import { diameterOf } from "./sizes.js";

const INDEXES: Readonly<Record<ThreadSeries, SizedIndex<ThreadRow>>> = {
  UNC: indexByDiameter(uncThreads),
  "8UN": indexByDiameter(eightUnThreads),
  "metric coarse": indexByDiameter(metricThreads),
};
const US_SIZES = indexByDiameter({ ...uncThreads, rows: [...uncThreads.rows, ...eightUnThreads.rows] });

/**
 * The thread of a size as written: `1-1/4`, `1.25`, `1 1/4"`, `M30`, `m30`; `unit` is the unit of a bare number. Metric
 * coarse, UNC, or 8UN where the size has no UNC thread (1-5/8, 1-7/8).
 */
export function findThread(written: string, unit: Unit = "in"): Lookup<ThreadRow> {
  const diameter = diameterOf(written, unit);
  if (diameter === null) return { found: false, nearest: [] };
  const metric = INDEXES["metric coarse"];
  if (/^\s*m/i.test(written)) return findSized(metric, diameter);
  const [first, second] = unit === "mm" ? [metric, US_SIZES] : [US_SIZES, metric];
  const row = first.byDiameter.get(diameter) ?? second.byDiameter.get(diameter);
  return row === undefined ? findSized(first, diameter) : found(INDEXES[row.series], row);
}

/** Smallest and largest size that have a thread: `1/4 to 4`, `M10 to M100`. */
export const threadSpans = { us: spanOf(US_SIZES), metric: spanOf(INDEXES["metric coarse"]) } as const;

/** Sizes of rods from 1/2 in and M12 up, as printed, smallest first: UNC with the 8UN sizes between them, metric coarse. */
export const rodSizes: Readonly<Record<Unit, readonly string[]>> = {
  in: sizesFrom(US_SIZES, "1/2", "in"),
  mm: sizesFrom(INDEXES["metric coarse"], "M12", "mm"),
};

function sizesFrom({ sorted }: SizedIndex<ThreadRow>, least: string, unit: Unit): readonly string[] {
  const from = diameterOf(least, unit) ?? 0;
  const listed = sorted.filter(({ diameter }, at) => diameter >= from && diameter !== sorted[at - 1]?.diameter);
  return listed.map(({ size }) => size);
}

function spanOf({ sorted }: SizedIndex<ThreadRow>): string {
  return `${sorted.at(0)?.size} to ${sorted.at(-1)?.size}`;
}

/** The thread of a series with a nominal diameter. */
export function findThreadInSeries(series: ThreadSeries, diameter: Length): Lookup<ThreadRow> {
  return findSized(INDEXES[series], diameter);
}
