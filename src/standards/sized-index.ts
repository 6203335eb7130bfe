/** Tables indexed by size and diameter, once; a miss names the nearest sizes. */
import type { Length, Unit } from "../units/length.js";
import type { Lookup, Sized, Sourced, StandardTable } from "./model.js";
import { diameterOf } from "./sizes.js";

/** A table with its rows by printed size, by diameter, and sorted by diameter. */
export interface SizedIndex<Row extends Sized> {
  readonly edition: string;
  readonly clause: string;
  readonly bySize: ReadonlyMap<string, Row>;
  readonly byDiameter: ReadonlyMap<Length, Row>;
  readonly sorted: readonly Row[];
}

/** Indexes a table; where a size stands twice the first row is kept. */
export function indexBySize<Row extends Sized>(table: StandardTable<Row>): SizedIndex<Row> {
  const reversed = [...table.rows].reverse();
  return {
    edition: table.edition,
    clause: table.clause,
    bySize: new Map(reversed.map((row) => [row.size, row])),
    byDiameter: new Map(reversed.map((row) => [row.diameter, row])),
    sorted: [...table.rows].sort((a, b) => a.diameter - b.diameter),
  };
}

/** Finds a size, as printed or in any other way of writing it; `unit` is the unit of a bare number. */
export function findSized<Row extends Sized>(index: SizedIndex<Row>, size: string, unit: Unit = "in"): Lookup<Row> {
  const direct = index.bySize.get(size);
  if (direct !== undefined && unit === "in") return found(index, direct);
  const diameter = diameterOf(size, unit);
  if (diameter === null) return { found: false, nearest: [] };
  const row = index.byDiameter.get(diameter);
  return row === undefined ? { found: false, nearest: nearestSizes(index.sorted, diameter) } : found(index, row);
}

/** A found row with the edition and clause of its table. */
export function found<Row extends Sourced>(table: { edition: string; clause: string }, row: Row): Lookup<Row> {
  return { found: true, row, edition: table.edition, clause: table.clause };
}

/** The two sizes nearest to a diameter, smaller first. Rows are sorted by diameter; a repeated size counts once. */
export function nearestSizes(sorted: readonly Sized[], diameter: Length): readonly string[] {
  const distance = (row: Sized): number => Math.abs(row.diameter - diameter);
  const once = sorted.filter((row, at) => row.diameter !== sorted[at - 1]?.diameter);
  const nearest = [...once].sort((a, b) => distance(a) - distance(b) || a.diameter - b.diameter).slice(0, 2);
  return nearest.sort((a, b) => a.diameter - b.diameter).map((row) => row.size);
}
