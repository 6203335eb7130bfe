/** One group as built: errors, best fit, and whether its base plate drops on. */

import { millimetresBetween, toLattice } from "../geometry/index.js";
import { baseHoleOf } from "../job/model/base-hole.js";
import type { Job } from "../job/model/job.js";
import type { PlacedBase } from "../plan/model.js";
import { leastOf } from "../units/extremes.js";
import { formatWithUnit } from "../units/index.js";
import type { Length } from "../units/length.js";
import { nanometres } from "../units/length.js";
import { rodAsBuilt } from "./as-built.js";
import type { DesignedRod } from "./match.js";
import type { BestPosition, GroupSurvey, PointOnPlan, Remedy, RodAsBuilt, SurveyTerms, Verdict } from "./model.js";
import { bestMotion, bestPosition, movedHole } from "./motion.js";
import { placedRows } from "./placed-rows.js";
import type { KnownHole } from "./remedies.js";
import { remediesOf } from "./remedies.js";

/** A group of which at least one rod is surveyed. */
export function surveyGroup(
  job: Job,
  standing: PlacedBase,
  targets: readonly DesignedRod[],
  points: ReadonlyMap<DesignedRod, readonly PointOnPlan[]>,
  terms: SurveyTerms,
): Omit<GroupSurvey, "placing"> {
  const rods = targets.flatMap((target) => {
    const own = points.get(target);
    return own === undefined ? [] : [rodAsBuilt(target, own, terms)];
  });
  const missing = targets.filter((target) => !points.has(target)).map(({ planned }) => planned.rod.tag);
  const fit = bestMotion(rods.map(({ placed, at }) => ({ from: placed.center, to: at })));
  const holes = rods.flatMap(knownHole);
  const best = holes.length === 0 ? null : bestPosition(holes);
  const isWhole = missing.length === 0 && holes.length === rods.length;
  const verdict = best === null ? "not-checked" : verdictOf(best.spare, isWhole, terms);
  const remedies = best !== null && best.spare < 0 ? remediesOf(job, standing, holes, best) : [];
  return {
    standing,
    base: standing.base,
    mark: standing.base.mark,
    at: standing.name.slice(standing.base.mark.length + 1),
    verdict,
    why: [...reasons(job, rods, missing, verdict, terms), ...hopeless(job, best, remedies)],
    rods: rods.map((rod) => withMargin(rod, best)),
    missing,
    fit,
    best,
    spareOnLine: onLine(holes),
    rows: placedRows(job, rods, fit, terms),
    remedies,
  };
}

function knownHole(rod: RodAsBuilt): readonly KnownHole[] {
  const baseHole = baseHoleOf(rod.placed.group, { orTable: false });
  if (baseHole.kind === "missing" || rod.clearanceTwice === null) return [];
  const { x, y } = rod.placed.center;
  const clearance = rod.clearanceTwice / 2e6;
  return [{ tag: rod.tag, x, y, clearance, rod: rod.at, placed: rod.placed, hole: baseHole.value }];
}

/**
 * A point that is right within the accuracy changes the spare by that much at most: the largest distance of the fit moves no
 * further than any rod. Rods that are missing can only lessen the spare.
 */
function verdictOf(spare: Length, isWhole: boolean, { accuracy }: SurveyTerms): Verdict {
  const doubt = accuracy.kind === "given" ? accuracy.value : 0;
  if (spare < -doubt || (spare < 0 && accuracy.kind === "missing")) return "does not fit";
  if (!isWhole) return "not-checked";
  if (accuracy.kind === "given" && Math.abs(spare) <= doubt) return "within measuring uncertainty";
  return "fits";
}

function reasons(
  job: Job,
  rods: readonly RodAsBuilt[],
  missing: readonly string[],
  verdict: Verdict,
  { accuracy }: SurveyTerms,
): readonly string[] {
  const holes = rods.filter(({ clearanceTwice }) => clearanceTwice === null).map(({ tag }) => tag);
  const part = verdict === "does not fit" ? ": those that are known decide already" : "";
  return [
    ...(missing.length === 0 ? [] : [`no point of ${missing.join(", ")}${part}`]),
    ...(holes.length === 0 ? [] : [`no base-plate hole is given for ${holes.join(", ")} (basePlate.hole)${part}`]),
    accuracy.kind === "missing"
      ? "accuracy of the survey not stated: the points are taken as they are, and what they cannot tell is not known (survey.accuracy)"
      : `points within ${formatWithUnit(accuracy.value, job.unit)} of the true places`,
  ];
}

function hopeless({ unit }: Job, best: BestPosition | null, remedies: readonly Remedy[]): readonly string[] {
  if (best === null || best.spare >= 0 || remedies.length > 0) return [];
  return [`no hole up to ${unit === "in" ? "3 in" : "75 mm"} larger lets it drop on`];
}

function withMargin(rod: RodAsBuilt, best: BestPosition | null): RodAsBuilt {
  if (best === null || rod.clearanceTwice === null) return rod;
  const away = millimetresBetween(movedHole(best.motion, rod.placed.center), rod.at);
  return { ...rod, margin: nanometres(toLattice(rod.clearanceTwice / 2e6 - away)) };
}

function onLine(holes: readonly KnownHole[]): Length | null {
  if (holes.length === 0) return null;
  return toLattice(leastOf(holes.map(({ x, y, clearance, rod }) => clearance - Math.hypot(x - rod.x, y - rod.y))));
}
