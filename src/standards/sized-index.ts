/** Tables indexed by diameter, once; a miss names the nearest sizes. */
import type { Length } from "../units/length.js";
import type { Lookup, Sized, Sourced, StandardTable } from "./model.js";

/** A table with its rows by diameter, and sorted by diameter. */
export interface SizedIndex<Row extends Sized> {
  readonly edition: string;
  readonly clause: string;
  readonly byDiameter: ReadonlyMap<Length, Row>;
  readonly sorted: readonly Row[];
}

/** Indexes a table; where a diameter stands twice the first row is kept. */
export function indexByDiameter<Row extends Sized>(table: StandardTable<Row>): SizedIndex<Row> {
  const reversed = [...table.rows].reverse();
  return {
    edition: table.edition,
    clause: table.clause,
    byDiameter: new Map(reversed.map((row) => [row.diameter, row])),
    sorted: [...table.rows].sort((a, b) => a.diameter - b.diameter),
  };
}

/** The row of a diameter; a miss names the nearest sizes. */
export function findSized<Row extends Sized>(index: SizedIndex<Row>, diameter: Length): Lookup<Row> {
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
