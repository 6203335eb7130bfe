/** Edge distances of base-plate holes, and the increment C2, by edition. */
import type { Length } from "../units/length.js";
import { aisc360FiveEdgeRule, aisc360FiveEdges } from "./aisc-360-05/edges.js";
import { aisc360C2, aisc360MetricC2, type C2TableRow } from "./aisc-360-22/c2.js";
import { aisc360EdgeRule, aisc360Edges } from "./aisc-360-22/edges.js";
import { aisc360MetricEdgeRule, aisc360MetricEdges } from "./aisc-360-22/edges-metric.js";
import type { LeastEdgeRow } from "./edges.js";
import { unknownEdition } from "./editions.js";
import { en1993Distances } from "./en-1993-1-8/distances.js";
import type { BeyondRule, C2Row, EdgeRow, Lookup, Sourced, StandardTable } from "./model.js";
import { evaluate } from "./rules.js";
import { found, nearestSizes } from "./sized-index.js";
import { holds } from "./sizes.js";

interface EdgeTable {
  readonly table: StandardTable<LeastEdgeRow>;
  readonly byDiameter: ReadonlyMap<Length, LeastEdgeRow>;
  readonly beyond: BeyondRule;
  readonly c2: StandardTable<C2TableRow> | null;
}

const TABLES: ReadonlyMap<string, EdgeTable> = new Map([
  ["AISC 360-22", edgeTable(aisc360Edges, aisc360EdgeRule, aisc360C2)],
  ["AISC 360-22M", edgeTable(aisc360MetricEdges, aisc360MetricEdgeRule, aisc360MetricC2)],
  ["AISC 360-05", edgeTable(aisc360FiveEdges, aisc360FiveEdgeRule, null)],
]);

/**
 * Least distance from hole centre to edge. AISC: by rod diameter, for a standard hole (larger holes add C2). EN 1993-1-8: 1.2
 * times the hole's diameter.
 */
export function findEdge(edition: string, diameter: Length, hole: Length): Lookup<EdgeRow> {
  if (edition === "EN 1993-1-8") return byHole(hole);
  const { table, byDiameter, beyond } = TABLES.get(edition) ?? unknownEdition("edges", edition);
  const row = byDiameter.get(diameter);
  if (row !== undefined) return found(table, { ...sourced(row), least: row.least, printed: row.printed });
  if (diameter > beyond.beyond) {
    return found(table, { ...sourced(beyond), least: evaluate(beyond.rule, diameter), printed: beyond.printed });
  }
  return { found: false, nearest: nearestSizes(table.rows, diameter) };
}

/** Edge distance increment C2 for a rod diameter. Tabulated with AISC 360-22 only. */
export function findC2(edition: string, diameter: Length): Lookup<C2Row> {
  if (edition === "EN 1993-1-8") return { found: false, nearest: [] };
  const { c2 } = TABLES.get(edition) ?? unknownEdition("edges", edition);
  const row = c2?.rows.find((candidate) => holds(candidate.diameter, diameter));
  if (c2 === null || row === undefined) return { found: false, nearest: nearestC2(c2, diameter) };
  return found(c2, { ...row, longSlotPerpendicular: evaluate(row.longSlotPerpendicular, diameter) });
}

function nearestC2(c2: StandardTable<C2TableRow> | null, diameter: Length): readonly string[] {
  const rows = c2?.rows ?? [];
  const below = rows.findLast(({ diameter: range }) => range.to !== null && range.to < diameter);
  const above = rows.find(({ diameter: range }) => range.from !== null && range.from > diameter);
  return [below, above].flatMap((row) => (row === undefined ? [] : [row.diameter.printed]));
}

function byHole(hole: Length): Lookup<EdgeRow> {
  const row = en1993Distances.rows.find(({ symbol }) => symbol === "e2");
  if (row === undefined) throw new RangeError("EN 1993-1-8 Table 3.3 has no row e2");
  const least = evaluate({ factor: row.factor, add: 0 as Length }, hole);
  return found(en1993Distances, { ...sourced(row), least, printed: `${row.factor} d0` });
}

function edgeTable(
  table: StandardTable<LeastEdgeRow>,
  beyond: BeyondRule,
  c2: StandardTable<C2TableRow> | null,
): EdgeTable {
  return { table, byDiameter: new Map(table.rows.map((row) => [row.diameter, row])), beyond, c2 };
}

function sourced({ source, confidence, note }: Sourced): Sourced {
  return { source, confidence, note };
}
