/** Least edge distances of base-plate holes by edition. */
import { aisc360FiveEdges } from "../standards/aisc-360-05/edges.js";
import { aisc360TenBoltHoleRule, aisc360TenBoltHoles } from "../standards/aisc-360-10/bolt-holes.js";
import { aisc360BoltHoleRule, aisc360BoltHoles } from "../standards/aisc-360-22/bolt-holes.js";
import { aisc360MetricBoltHoleRule, aisc360MetricBoltHoles } from "../standards/aisc-360-22/bolt-holes-metric.js";
import { findC2, findEdge } from "../standards/index.js";
import type { Length } from "../units/index.js";
import type { Words } from "./words.js";

/** Twice the least distance from the hole's centre, with how it comes about; or what the edition does not hold. */
export type LeastEdge =
  | { readonly found: true; readonly twice: number; readonly clause: string; readonly note: string }
  | { readonly found: false; readonly what: string; readonly nearest: readonly string[] };

const GUIDANCE = "guidance only: C2 is tabulated for oversized holes, and this hole is larger";

/** EN 1993-1-8: 1.2 d0. AISC 360: Table J3.4, plus C2 of Table J3.5 where the hole is larger than standard. */
export function leastEdge(edition: string, size: string, diameter: Length, hole: Length, say: Words): LeastEdge {
  const edge = findEdge(edition, diameter, hole);
  if (!edge.found)
    return { found: false, what: `${edition} has no edge distance for rod ${size}`, nearest: edge.nearest };
  const { least, printed } = edge.row;
  if (edition === "EN 1993-1-8") {
    return { found: true, twice: 2 * least, clause: edge.clause, note: `${printed}, hole ${say.length(hole)}` };
  }
  const table = `${edge.clause} ${say.length(least)} for rod ${size}`;
  const increment = incrementFor(edition, diameter, hole);
  switch (increment.kind) {
    case "none":
      return { found: true, twice: 2 * least, clause: edge.clause, note: `${table}; standard hole, no C2` };
    case "missing":
      return {
        found: false,
        what: `the hole is larger than standard, and no C2 is held with ${edition} for rod ${size}`,
        nearest: increment.nearest,
      };
    case "added": {
      const note = `${table} + C2 ${say.length(increment.c2)}${increment.beyond ? `; ${GUIDANCE}` : ""}`;
      return {
        found: true,
        twice: 2 * (least + increment.c2),
        clause: `${edge.clause} + C2 of ${increment.clause}`,
        note,
      };
    }
  }
}

type Increment =
  | { readonly kind: "none" }
  | { readonly kind: "missing"; readonly nearest: readonly string[] }
  | { readonly kind: "added"; readonly c2: Length; readonly clause: string; readonly beyond: boolean };

/** A hole of unknown class is taken as larger than oversized. */
function incrementFor(edition: string, diameter: Length, hole: Length): Increment {
  const sizes = boltHole(edition, diameter);
  if (sizes !== null && hole <= sizes.standard) return { kind: "none" };
  const c2 = findC2(edition, diameter);
  if (!c2.found) return { kind: "missing", nearest: c2.nearest };
  const beyond = sizes === null || hole > sizes.oversized;
  return { kind: "added", c2: c2.row.oversized, clause: c2.clause, beyond };
}

interface BoltHoleSizes {
  readonly standard: number;
  readonly oversized: number;
}

/** Standard and oversized holes of Table J3.3 of the same edition: its row, or its rule row for large bolts. */
function boltHole(edition: string, diameter: Length): BoltHoleSizes | null {
  const { table, rule } = boltHolesOf(edition);
  const row = table.rows.find((candidate) => candidate.diameter === diameter);
  if (row !== undefined || diameter < rule.from) return row ?? null;
  return { standard: diameter + rule.standard.add, oversized: diameter + rule.oversized.add };
}

function boltHolesOf(edition: string) {
  if (edition === aisc360MetricBoltHoles.edition)
    return { table: aisc360MetricBoltHoles, rule: aisc360MetricBoltHoleRule };
  if (edition === aisc360FiveEdges.edition) return { table: aisc360TenBoltHoles, rule: aisc360TenBoltHoleRule };
  return { table: aisc360BoltHoles, rule: aisc360BoltHoleRule };
}
