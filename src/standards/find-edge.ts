/** Least edge distances of base-plate holes by edition: by the hole's diameter, or by the rod's with the increment C2. */
import { type Length, nanometres } from "../units/length.js";
import { aisc360FiveEdgeRule, aisc360FiveEdges } from "./aisc-360-05/edges.js";
import { aisc360TenBoltHoleRule, aisc360TenBoltHoles } from "./aisc-360-10/bolt-holes.js";
import { aisc360BoltHoleRule, aisc360BoltHoles } from "./aisc-360-22/bolt-holes.js";
import { aisc360MetricBoltHoleRule, aisc360MetricBoltHoles } from "./aisc-360-22/bolt-holes-metric.js";
import { aisc360C2, aisc360MetricC2, type C2TableRow } from "./aisc-360-22/c2.js";
import { aisc360EdgeRule, aisc360Edges } from "./aisc-360-22/edges.js";
import { aisc360MetricEdgeRule, aisc360MetricEdges } from "./aisc-360-22/edges-metric.js";
import type { BoltHoleRow, BoltHoleRule } from "./bolt-holes.js";
import type { LeastEdgeRow } from "./edges.js";
import type { EdgeEdition } from "./editions.js";
import { en1993Distances, type HoleDistanceRow } from "./en-1993-1-8/distances.js";
import type { BeyondRule, EdgeIncrement, EdgeRow, Lookup, Sourced, StandardTable } from "./model.js";
import { evaluate } from "./rules.js";
import { found, nearestSizes } from "./sized-index.js";
import { holds } from "./sizes.js";

/** A multiple of the hole's diameter, whatever the rod. */
interface ByHole {
  readonly by: "hole";
  readonly table: StandardTable<HoleDistanceRow>;
}

/** A table by rod diameter for standard holes; a larger hole adds C2, where the edition holds it. */
interface ByRod {
  readonly by: "rod";
  readonly table: StandardTable<LeastEdgeRow>;
  readonly beyond: BeyondRule;
  readonly holes: StandardTable<BoltHoleRow>;
  readonly largeHoles: BoltHoleRule;
  readonly c2: StandardTable<C2TableRow> | null;
}

const INCH_HOLES = { holes: aisc360BoltHoles, largeHoles: aisc360BoltHoleRule } as const;
const METRIC_HOLES = { holes: aisc360MetricBoltHoles, largeHoles: aisc360MetricBoltHoleRule } as const;
const HOLES_BEFORE_2016 = { holes: aisc360TenBoltHoles, largeHoles: aisc360TenBoltHoleRule } as const;

const EDGES: Readonly<Record<EdgeEdition, ByHole | ByRod>> = {
  "AISC 360-22": { by: "rod", table: aisc360Edges, beyond: aisc360EdgeRule, ...INCH_HOLES, c2: aisc360C2 },
  "AISC 360-22M": {
    by: "rod",
    table: aisc360MetricEdges,
    beyond: aisc360MetricEdgeRule,
    ...METRIC_HOLES,
    c2: aisc360MetricC2,
  },
  "AISC 360-05": { by: "rod", table: aisc360FiveEdges, beyond: aisc360FiveEdgeRule, ...HOLES_BEFORE_2016, c2: null },
  "EN 1993-1-8:2005": { by: "hole", table: en1993Distances },
};

/**
 * Least distance from hole centre to edge. AISC: Table J3.4 by rod diameter, for a standard hole of Table J3.3; a larger hole
 * adds C2 of Table J3.5, which `increment` tells. EN 1993-1-8: 1.2 times the hole's diameter.
 */
export function findEdge(edition: EdgeEdition, diameter: Length, hole: Length): Lookup<EdgeRow> {
  const edges = EDGES[edition];
  if (edges.by === "hole") return byHole(edges, hole);
  const row = edges.table.rows.find((candidate) => candidate.diameter === diameter);
  const increment = incrementFor(edges, diameter, hole);
  if (row !== undefined) {
    return found(edges.table, { ...sourced(row), least: row.least, printed: row.printed, by: "rod", increment });
  }
  const { beyond, rule, printed } = edges.beyond;
  if (diameter <= beyond) return { found: false, nearest: nearestSizes(edges.table.rows, diameter) };
  return found(edges.table, {
    ...sourced(edges.beyond),
    least: evaluate(rule, diameter),
    printed,
    by: "rod",
    increment,
  });
}

/** A hole of unknown class is taken as larger than oversized. */
function incrementFor(edges: ByRod, diameter: Length, hole: Length): EdgeIncrement {
  const sizes = boltHole(edges, diameter);
  if (sizes !== null && hole <= sizes.standard) return { kind: "none" };
  const row = edges.c2?.rows.find((candidate) => holds(candidate.diameter, diameter));
  if (edges.c2 === null || row === undefined) return { kind: "not held" };
  const beyondTable = sizes === null || hole > sizes.oversized;
  return { kind: "C2", value: row.oversized, clause: edges.c2.clause, beyondTable };
}

/** Standard and oversized holes of Table J3.3: its row, or its rule row for large bolts. */
function boltHole({ holes, largeHoles }: ByRod, diameter: Length): Pick<BoltHoleRow, "standard" | "oversized"> | null {
  const row = holes.rows.find((candidate) => candidate.diameter === diameter);
  if (row !== undefined || diameter < largeHoles.from) return row ?? null;
  return { standard: evaluate(largeHoles.standard, diameter), oversized: evaluate(largeHoles.oversized, diameter) };
}

function byHole({ table }: ByHole, hole: Length): Lookup<EdgeRow> {
  const row = table.rows.find(({ symbol }) => symbol === "e2");
  if (row === undefined) throw new RangeError(`${table.edition} ${table.clause} has no row e2`);
  const least = evaluate({ factor: row.factor, add: nanometres(0) }, hole);
  return found(table, { ...sourced(row), least, printed: `${row.factor} d0`, by: "hole" });
}

function sourced({ source, confidence, note }: Sourced): Sourced {
  return { source, confidence, note };
}
