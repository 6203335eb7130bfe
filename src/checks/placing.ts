/** Placing tolerances of the job's edition, for rules. Rods held by a template and cast in are fixed bolts in EN 1090-2. */
import type { PlacingRow } from "../standards/index.js";
import { findPlacing } from "../standards/index.js";
import type { CheckContext, RuleResult } from "./model.js";
import { notTabulated } from "./results.js";
import type { RodHole } from "./rods.js";

/** Clause of a row for which no tolerance was found. */
export const PLACING_CLAUSE = "placing tolerance in plan";

/** The tolerance of a rod with its clause, or the not-checked row that takes its place. */
export type Placing =
  | { readonly found: true; readonly row: PlacingRow; readonly clause: string }
  | { readonly found: false; readonly result: RuleResult };

/** As-placed tolerance in plan of this rod by the named edition. */
export function placingOf({ job }: CheckContext, { tag, rod, diameter }: RodHole): Placing {
  const { placing } = job.editions;
  const lookup = findPlacing(placing, diameter, "fixed");
  if (lookup.found) return { found: true, row: lookup.row, clause: lookup.clause };
  const what = `${placing} has no placing tolerance for rod ${rod.size}`;
  return { found: false, result: notTabulated(tag, what, lookup.nearest, "rules.placing") };
}
