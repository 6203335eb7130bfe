/** Holes of bolts that join steel: AISC 360 Table J3.3 for inch bolts, ISO 273 for metric ones. */
import type { Length } from "../units/length.js";
import { aisc360BoltHoleRule, aisc360BoltHoles } from "./aisc-360-22/bolt-holes.js";
import { iso273Holes } from "./iso-273/clearance-holes.js";
import type { Lookup, Sourced } from "./model.js";
import { evaluate } from "./rules.js";
import { found, nearestSizes } from "./sized-index.js";

/** The hole of a bolt, diameter. */
export interface StandardHole extends Sourced {
  readonly hole: Length;
}

/** The standard hole of Table J3.3 for an inch bolt; the medium series of ISO 273 for a metric one. */
export function findBoltHole(system: "inch" | "metric", diameter: Length): Lookup<StandardHole> {
  return system === "metric" ? mediumHole(diameter) : standardHole(diameter);
}

function standardHole(diameter: Length): Lookup<StandardHole> {
  const row = aisc360BoltHoles.rows.find((each) => each.diameter === diameter);
  if (row !== undefined) return found(aisc360BoltHoles, { ...sourced(row), hole: row.standard });
  if (diameter < aisc360BoltHoleRule.from)
    return { found: false, nearest: nearestSizes(aisc360BoltHoles.rows, diameter) };
  const hole = evaluate(aisc360BoltHoleRule.standard, diameter);
  return found(aisc360BoltHoles, { ...sourced(aisc360BoltHoleRule), hole });
}

function mediumHole(diameter: Length): Lookup<StandardHole> {
  const row = iso273Holes.rows.find((each) => each.diameter === diameter);
  if (row === undefined) return { found: false, nearest: nearestSizes(iso273Holes.rows, diameter) };
  return found(iso273Holes, { ...sourced(row), hole: row.medium });
}

function sourced({ source, confidence, note }: Sourced): Sourced {
  return { source, confidence, note };
}
