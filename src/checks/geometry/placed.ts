/** What the job's rules say of placed bases: names, and pairs that stand too near. */
import { listed } from "../../diagnostics/listed.js";
import type { Contour } from "../../geometry/index.js";
import { extentOf } from "../../geometry/index.js";
import type { PlacedBase } from "../../plan/index.js";
import type { JobContext } from "../job-model.js";
import type { RuleResult } from "../model.js";
import { compare, notApplicable } from "../results.js";
import { twiceClear } from "./clear-distance.js";
import type { Neighbours } from "./neighbours.js";
import { findNeighbours } from "./neighbours.js";

/** Subject of a row that is about the whole plan. */
export const PLAN = "plan";

const MOST_NAMES = 6;

/** Names joined, the seventh and later ones counted. */
export function namesOf(bases: readonly { readonly name: string }[]): string {
  return listed(
    bases.map(({ name }) => name),
    MOST_NAMES,
  );
}

/** A shape that stands on the plan. */
export interface Standing {
  readonly placed: PlacedBase;
  readonly contour: Contour;
}

/** Neighbours among shapes on the plan. */
export function neighbouringShapes(shapes: readonly Standing[]): Neighbours<Standing> {
  const boxed = shapes.map((item) => ({ item, box: extentOf(item.contour) }));
  return findNeighbours(boxed, (a, b) => twiceClear(a.contour, b.contour));
}

/** A row for every pair that overlaps; where none does, one for the nearest pair. Touching passes. */
export function judgeNeighbours<T extends { readonly placed: PlacedBase }>(
  { overlapping, nearest }: Neighbours<T>,
  note: (a: T, b: T, twice: number) => string,
): readonly RuleResult[] {
  if (nearest === null) return [notApplicable(PLAN, "fewer than two of them stand on the plan")];
  const shown = overlapping.length > 0 ? overlapping : [nearest];
  return shown.map(({ a, b, twice }) =>
    compare(`${a.placed.name} - ${b.placed.name}`, twice, ">=", 0, note(a, b, twice)),
  );
}

/** The bases of the plan, or none: a job without placements has no rows about them. */
export function placedBases({ plan }: JobContext): readonly PlacedBase[] {
  return plan?.bases ?? [];
}
