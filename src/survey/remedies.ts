/**
 * Where the plate does not drop on: the smallest larger hole, or slot, that would let it, each with the checks of the base
 * plate again. A slot is held as the round hole around it. None of this is a permission: the engineer decides.
 */

import type { CheckContext, CheckRow, Rule } from "../checks/model.js";
import { basePlateEdge } from "../checks/rules/base-plate-edge.js";
import { washerOverHole } from "../checks/rules/washer-cover.js";
import { washerOnPlate } from "../checks/rules/washer-on-plate.js";
import { judge } from "../checks/run.js";
import { point, toLattice } from "../geometry/index.js";
import type { Point } from "../geometry/vocabulary.js";
import type { Job } from "../job/model/job.js";
import { given } from "../job/model/job.js";
import type { PlacedBase } from "../plan/model.js";
import type { PlacedRod } from "../rods/model.js";
import { makePlate } from "../template/index.js";
import type { Plate } from "../template/model.js";
import type { Length } from "../units/length.js";
import { inches, millimetres, nanometres, toMillimetres } from "../units/length.js";
import type { BestPosition, Remedy } from "./model.js";
import type { HoleOverRod } from "./motion.js";
import { bestPosition, inPlateAxes } from "./motion.js";

const RULES: readonly Rule[] = [washerOverHole, washerOnPlate, basePlateEdge];

/** Holes are made larger by this, and at most by that. */
const STEP = { in: inches(1 / 16), mm: millimetres(1) } as const;
const MOST_STEPS = { in: 48, mm: 75 } as const;

/** A rod of the group with its hole; every one must be known. */
export interface KnownHole extends HoleOverRod {
  readonly placed: PlacedRod;
  readonly hole: Length;
}

interface RemedyCase {
  readonly job: Job;
  readonly standing: PlacedBase;
  readonly plate: Plate | null;
  readonly holes: readonly KnownHole[];
}

/** One hole alone and its slot, for each that governs; and all the holes alike. Sizes by 1/16 in or 1 mm. */
export function remediesOf(
  job: Job,
  standing: PlacedBase,
  holes: readonly KnownHole[],
  best: BestPosition,
): readonly Remedy[] {
  const made = makePlate(job, standing.base, standing.ownRods);
  const remedy: RemedyCase = { job, standing, holes, plate: made.ok ? made.value : null };
  const tags = best.governs.map(({ tag }) => tag);
  return [...tags.flatMap((tag) => alone(remedy, tag)), ...allAlike(remedy)];
}

function larger(hole: KnownHole, by: number): KnownHole {
  return { ...hole, clearance: hole.clearance + toMillimetres(nanometres(by)) / 2, hole: nanometres(hole.hole + by) };
}

/** The least number of steps with which it drops on; null where the most does not do. */
function leastSteps(job: Job, change: (by: number) => readonly KnownHole[]): number | null {
  const fits = (steps: number): boolean => bestPosition(change(steps * STEP[job.unit])).spare >= 0;
  let [low, high]: [number, number] = [0, MOST_STEPS[job.unit]];
  if (!fits(high)) return null;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (fits(middle)) high = middle;
    else low = middle;
  }
  return high;
}

function alone(remedy: RemedyCase, tag: string): readonly Remedy[] {
  const { job, holes } = remedy;
  const change = (by: number) => holes.map((hole) => (hole.tag === tag ? larger(hole, by) : hole));
  const steps = leastSteps(job, change);
  if (steps === null) return [];
  const changed = change(steps * STEP[job.unit]);
  const best = bestPosition(changed);
  const [before, after] = [holes.find((each) => each.tag === tag), changed.find((each) => each.tag === tag)];
  if (before === undefined || after === undefined) return [];
  const hole: Remedy = {
    kind: "hole",
    tags: [tag],
    by: nanometres(steps * STEP[job.unit]),
    hole: after.hole,
    slot: null,
    spare: best.spare,
    rows: checksWith(remedy, [after]),
  };
  return [hole, slotOf(remedy, before, best)];
}

/**
 * From the position that the larger hole allows: the rod lies at `offset` from the hole's centre; a slot of the hole's width,
 * cut in that direction by whole steps, holds it there.
 */
function slotOf(remedy: RemedyCase, hole: KnownHole, { motion, spare }: BestPosition): Remedy {
  const rod = inPlateAxes(motion, hole.rod);
  const offset = { x: rod.x - hole.x, y: rod.y - hole.y };
  const away = Math.hypot(offset.x, offset.y);
  const step = STEP[remedy.job.unit];
  const by = nanometres(Math.ceil(toLattice(away - hole.clearance) / step) * step);
  const around = { ...larger(hole, by), ...shifted(hole, offset, away, toMillimetres(by) / 2) };
  return {
    kind: "slot",
    tags: [hole.tag],
    by,
    hole: hole.hole,
    slot: { length: nanometres(hole.hole + by), direction: (Math.atan2(offset.y, offset.x) * 180) / Math.PI },
    spare: nanometres(Math.min(spare, toLattice(toMillimetres(by) + hole.clearance - away))),
    rows: checksWith(remedy, [around]),
  };
}

function shifted(hole: Point, offset: Point, away: number, by: number): Point {
  return { x: hole.x + (offset.x / away) * by, y: hole.y + (offset.y / away) * by };
}

function allAlike(remedy: RemedyCase): readonly Remedy[] {
  const { job, holes } = remedy;
  const change = (by: number) => holes.map((hole) => larger(hole, by));
  const steps = leastSteps(job, change);
  if (steps === null) return [];
  const by = nanometres(steps * STEP[job.unit]);
  const changed = change(by);
  const sizes = [...new Set(changed.map(({ hole }) => hole))];
  const { spare } = bestPosition(changed);
  return sizes.map((hole) => {
    const alike = changed.filter((each) => each.hole === hole);
    const tags = alike.map(({ tag }) => tag);
    return { kind: "all holes", tags, by, hole, slot: null, spare, rows: checksWith(remedy, alike) };
  });
}

/** The rules about washer and edge for these holes, as they would then be. */
function checksWith({ job, standing, plate }: RemedyCase, changed: readonly KnownHole[]): readonly CheckRow[] {
  if (plate === null) return [];
  const holes = new Map(changed.map((hole) => [hole.tag, hole]));
  const rods = standing.ownRods.map((rod) => {
    const hole = holes.get(rod.tag);
    if (hole === undefined) return rod;
    const group = { ...rod.group, baseHole: given(hole.hole, "survey: a larger hole") };
    return { ...rod, group, center: point(hole.x, hole.y) };
  });
  const context: CheckContext = { job, base: standing.base, rods, plate };
  return RULES.flatMap((rule) =>
    rule
      .check(context)
      .filter(({ subject }) => holes.has(subject))
      .map((verdict) => judge(rule, verdict, rule.clause(context), rule.edition(context))),
  );
}
