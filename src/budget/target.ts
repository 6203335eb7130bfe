/** What would raise the probability to the target: the smallest base-plate holes, or the tightest placing, that does it. */

import { greatestOf, leastOf } from "../units/extremes.js";
import type { Unit } from "../units/index.js";
import { millimetres, NM_PER_INCH, nanometres } from "../units/index.js";
import { worstCase } from "./closed-form.js";
import type { BudgetRod, BudgetSpec, HoleChange, PlacingChange, Probability, TargetAnswer } from "./model.js";
import { askedForm } from "./model.js";
import { isShared } from "./terms.js";
import { estimateWith, trialsOf } from "./trials.js";

/** Steps of holes: 1/16 in, 1 mm. Steps of tolerances: 1/32 in, 0.5 mm. */
const HOLE_STEP: Readonly<Record<Unit, number>> = { in: NM_PER_INCH / 16, mm: millimetres(1) };
const PLACING_STEP: Readonly<Record<Unit, number>> = { in: NM_PER_INCH / 32, mm: millimetres(0.5) };
/** Trials of each candidate: what the standard error asks for near the target, within these. */
const [LEAST_TRIALS, MOST_TRIALS] = [4000, 200_000];

type Estimate = (rods: readonly BudgetRod[]) => Probability;

/** Trials that a probability near the target needs; 0 without a target. */
export function trialsForTarget({ target, standardError }: BudgetSpec): number {
  if (target.kind === "missing") return 0;
  const wanted = (target.value * (1 - target.value)) / standardError ** 2;
  return Math.min(MOST_TRIALS, Math.max(LEAST_TRIALS, Math.ceil(wanted)));
}

/** The answer for a job that names a target. The same trials as gave `now` are run for every candidate. */
export function answerTarget(
  rods: readonly BudgetRod[],
  spec: BudgetSpec,
  unit: Unit,
  target: number,
  now: Probability,
): TargetAnswer {
  const samples = Math.min(MOST_TRIALS, now.samples);
  const estimate: Estimate = (candidate) => estimateWith(trialsOf(candidate, spec), samples, spec.plate);
  const probability = now[spec.plate];
  return {
    target,
    probability,
    met: probability >= target,
    holes: smallestHoles(rods, spec, HOLE_STEP[unit], estimate, target),
    placing: widestPlacing(rods, spec, PLACING_STEP[unit], estimate, target),
    samples,
  };
}

/** The least whole number in (low, high] for which `holds` is true; it holds for `high`. */
function leastThat(low: number, high: number, holds: (count: number) => boolean): number {
  let [no, yes] = [low, high];
  while (yes - no > 1) {
    const middle = Math.floor((no + yes) / 2);
    if (holds(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}

function smallestHoles(
  rods: readonly BudgetRod[],
  spec: BudgetSpec,
  step: number,
  estimate: Estimate,
  target: number,
): TargetAnswer["holes"] {
  const changed = (count: number): readonly BudgetRod[] => rods.map((rod) => withHole(rod, count * step));
  const share = (count: number): number => estimate(changed(count))[spec.plate];
  const tightest = leastOf(rods.map(({ clearanceTwice }) => clearanceTwice));
  const least = -Math.floor(tightest / step);
  const enough = stepsThatAlwaysFit(changed, least, spec);
  const count = leastThat(least - 1, enough, (middle) => share(middle) >= target);
  const sizes = new Map(changed(count).map(({ size, hole }) => [`${size} ${hole}`, { size, hole }]));
  return { change: [...sizes.values()] satisfies HoleChange[], probability: share(count) };
}

function withHole(rod: BudgetRod, more: number): BudgetRod {
  return { ...rod, hole: nanometres(rod.hole + more), clearanceTwice: rod.clearanceTwice + more };
}

/** By the worst case, which is certain: no trial is needed. */
function stepsThatAlwaysFit(
  changed: (count: number) => readonly BudgetRod[],
  least: number,
  { plate }: BudgetSpec,
): number {
  const fits = (count: number): boolean => askedForm(worstCase(changed(count)), plate).holds;
  let high = Math.max(1, least);
  while (!fits(high)) high *= 2;
  return leastThat(least - 1, high, fits);
}

function widestPlacing(
  rods: readonly BudgetRod[],
  spec: BudgetSpec,
  step: number,
  estimate: Estimate,
  target: number,
): TargetAnswer["placing"] {
  const widest = greatestOf(rods.flatMap(({ terms }) => terms.filter(isShared).map(reachOf)));
  const most = Math.ceil(widest / step);
  const changed = (count: number): readonly BudgetRod[] => rods.map((rod) => tighter(rod, count * step));
  const share = (count: number): number => estimate(changed(count))[spec.plate];
  if (share(most) < target) return null;
  const count = leastThat(-1, most, (middle) => share(middle) >= target);
  return { change: placingsOf(changed(count)), probability: share(count) };
}

const reachOf = ({ twice, commonTwice }: { readonly twice: number; readonly commonTwice: number }): number =>
  (twice + commonTwice) / 2;

/** Placing or setting less by `by`, not below zero; the common part keeps its share. */
function tighter(rod: BudgetRod, by: number): BudgetRod {
  const terms = rod.terms.map((term) => {
    if (!isShared(term)) return term;
    const before = term.twice + term.commonTwice;
    const after = Math.max(0, before - 2 * by);
    const commonTwice = before === 0 ? 0 : Math.floor((term.commonTwice * after) / before);
    return { ...term, twice: after - commonTwice, commonTwice };
  });
  return { ...rod, terms };
}

function placingsOf(rods: readonly BudgetRod[]): readonly PlacingChange[] {
  const all = rods.flatMap(({ size, terms }) =>
    terms.filter(isShared).map((term) => ({
      size,
      term: term.name === "setting" ? ("setting" as const) : ("placing" as const),
      reach: nanometres(reachOf(term)),
    })),
  );
  return [...new Map(all.map((each) => [`${each.size} ${each.reach}`, each])).values()];
}
