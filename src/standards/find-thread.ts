/** Threads by size, in any way of writing it. */
import type { Unit } from "../units/length.js";
import { eightUnThreads } from "./asme-b1-1/eight-un.js";
import { uncThreads } from "./asme-b1-1/unc.js";
import { metricThreads } from "./iso-261/coarse-threads.js";
import type { Lookup, ThreadRow, ThreadSeries } from "./model.js";
import { findSized, indexBySize, type SizedIndex } from "./sized-index.js";

const INDEXES: Readonly<Record<ThreadSeries, SizedIndex<ThreadRow>>> = {
  UNC: indexBySize(uncThreads),
  "8UN": indexBySize(eightUnThreads),
  "metric coarse": indexBySize(metricThreads),
};
const US_SIZES = indexBySize({ ...uncThreads, rows: [...uncThreads.rows, ...eightUnThreads.rows] });

/**
 * The thread of a size: `1-1/4`, `1.25`, `1 1/4"`, `M30`, `m30`; `unit` is the unit of a bare number. Without a series: metric
 * coarse, UNC, or 8UN where the size has no UNC thread (1-5/8, 1-7/8).
 */
export function findThread(text: string | number, unit: Unit = "in", series?: ThreadSeries): Lookup<ThreadRow> {
  const size = String(text);
  if (series !== undefined) return findSized(INDEXES[series], size, unit);
  if (/^\s*m/i.test(size)) return findSized(INDEXES["metric coarse"], size, unit);
  const first = unit === "mm" ? INDEXES["metric coarse"] : US_SIZES;
  const reading = findSized(first, size, unit);
  if (reading.found) return inItsSeries(reading.row);
  const second = findSized(unit === "mm" ? US_SIZES : INDEXES["metric coarse"], size, unit);
  return second.found ? inItsSeries(second.row) : reading;
}

/** The row with the edition and clause of its own series. */
function inItsSeries(row: ThreadRow): Lookup<ThreadRow> {
  const { edition, clause } = INDEXES[row.series];
  return { found: true, row, edition, clause };
}
