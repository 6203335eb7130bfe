/** From a base's groups to tagged rods. */
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { ProgramFault } from "../diagnostics/program-fault.js";
import type { Point } from "../geometry/index.js";
import { millimetresBetween, toLattice } from "../geometry/index.js";
import type { Base, RodGroup } from "../job/model/job.js";
import { countRods, MOST_RODS, rodPositions } from "../patterns/index.js";
import { formatLength } from "../units/index.js";
import type { Length } from "../units/length.js";
import type { PlacedRod } from "./model.js";
import { clockwiseFromNorthWest } from "./order.js";

/** Two rods whose centres are closer than this stand on one spot, in millimetres. */
const COINCIDENT = 0.01;

/**
 * Positions and tags of a base's rods, group by group; rods on one spot are findings at the base. Throws where a base has
 * none, or more than the reader of jobs lets through.
 */
export function placeRods(base: Base): Outcome<readonly PlacedRod[]> {
  const count = base.groups.reduce((sum, { pattern }) => sum + countRods(pattern), 0);
  if (count === 0 || count > MOST_RODS) throw new ProgramFault(`base ${base.mark} has ${count} rods`);
  const rods = base.groups.flatMap(placeGroup);
  const findings = coincidences(base, rods);
  return findings.length > 0 ? { ok: false, findings } : { ok: true, value: rods, findings };
}

function placeGroup(group: RodGroup): readonly PlacedRod[] {
  const ordered = clockwiseFromNorthWest(rodPositions(group.pattern));
  return ordered.map((center, i) => ({ tag: `${group.letter}${i + 1}`, group, center }));
}

function coincidences({ place }: Base, rods: readonly PlacedRod[]): readonly Finding[] {
  return rods.flatMap((a, i) =>
    rods.slice(i + 1).flatMap((b): readonly Finding[] => {
      if (millimetresBetween(a.center, b.center) >= COINCIDENT) return [];
      const message = `rods ${a.tag} and ${b.tag} stand on one spot, ${describe(a.center)}: each rod needs its own`;
      return [{ code: "coincident-rods", severity: "error", at: place, message }];
    }),
  );
}

/** A position in both units, since a base does not know the job's. */
function describe({ x, y }: Point): string {
  const at = [toLattice(x), toLattice(y)] as const;
  const inUnit = (unit: "in" | "mm") => at.map((length: Length) => formatLength(length, unit)).join(", ");
  return `(${inUnit("in")}) in or (${inUnit("mm")}) mm`;
}
