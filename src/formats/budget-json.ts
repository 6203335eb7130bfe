/** Budgets in machine form. Lengths are in the job's unit, rounded to 1e-6 in or 1e-5 mm; errors and clearances are radii. */

import type { BaseBudget, BudgetRod, Governing, ReckonedBase, TargetAnswer } from "../budget/index.js";
import { around, askedForm, BUDGET_CAUTIONS } from "../budget/index.js";
import type { Printable } from "../diagnostics/printable.js";
import { terminalJson } from "../diagnostics/printable.js";
import type { PlacingHead } from "../summary/model.js";
import type { Unit } from "../units/length.js";
import { toUnit } from "../units/length.js";

/** Budgets in machine form. */
export type BudgetForm = ReturnType<typeof budgetForm>;

/** The text that `budget --json` prints. */
export function writeBudgetJson(job: PlacingHead, budgets: readonly BaseBudget[]): Printable {
  return terminalJson(budgetForm(job, budgets));
}

/** In the order given. */
export function budgetForm(job: PlacingHead, budgets: readonly BaseBudget[]) {
  const bases = budgets.map((budget) =>
    budget.kind === "reckoned"
      ? reckonedForm(budget)
      : { mark: budget.mark, quantity: budget.quantity, status: "not-checked", why: budget.why },
  );
  return { schema: 1, job, bases, cautions: BUDGET_CAUTIONS };
}

function reckonedForm(budget: ReckonedBase) {
  const { mark, quantity, unit, spec, rods, worst, rss, probability, governs, target, notes } = budget;
  return {
    mark,
    quantity,
    status: "reckoned",
    errors: {
      rods: spec.rods,
      zone: spec.zone,
      spread: spec.spread,
      ...(spec.spread === "normal" ? { sigmas: spec.sigmas } : {}),
      common: spec.common,
    },
    plate: { freedom: spec.plate, maxTurn: spec.maxTurn },
    rods: rods.map((rod) => rodForm(rod, unit)),
    worst: { held: governingForm(worst.held, unit), free: governingForm(worst.free, unit) },
    rss: { held: governingForm(rss.held, unit), free: governingForm(rss.free, unit) },
    probability: { ...probability, seed: spec.seed, certain: askedForm(worst, spec.plate).holds },
    governs,
    histogram: histogramForm(budget),
    target: target === null ? null : targetForm(target, unit),
    notes,
  };
}

function rodForm({ tag, size, at, diameter, hole, clearanceTwice, terms }: BudgetRod, unit: Unit) {
  return {
    tag,
    size,
    x: toUnit(at.x * 1e6, unit),
    y: toUnit(at.y * 1e6, unit),
    diameter: toUnit(diameter, unit),
    hole: toUnit(hole, unit),
    clearance: toUnit(clearanceTwice / 2, unit),
    terms: terms.map((term) => ({
      name: term.name,
      zone: term.zone,
      reach: toUnit(term.twice / 2, unit),
      common: toUnit(term.commonTwice / 2, unit),
      radius: toUnit((around(term, term.twice) + around(term, term.commonTwice)) / 2, unit),
      from: term.from,
    })),
  };
}

/** Of a pair, the sums of both. */
function governingForm({ subject, errorTwice, clearanceTwice, spare, holds }: Governing, unit: Unit) {
  return {
    subject,
    error: toUnit(errorTwice / 2, unit),
    clearance: toUnit(clearanceTwice / 2, unit),
    spare: toUnit(spare, unit),
    holds,
  };
}

function histogramForm({ histogram: { step, from, counts, samples, drops, mean }, unit }: ReckonedBase) {
  return {
    step: toUnit(step, unit),
    from: toUnit(from * step, unit),
    counts,
    samples,
    drops,
    mean: toUnit(mean, unit),
  };
}

function targetForm({ target, probability, met, holes, placing, samples }: TargetAnswer, unit: Unit) {
  return {
    target,
    probability,
    met,
    samples,
    holes: {
      change: holes.change.map(({ size, hole }) => ({ size, hole: toUnit(hole, unit) })),
      probability: holes.probability,
    },
    placing:
      placing === null
        ? null
        : {
            change: placing.change.map(({ size, term, reach }) => ({ size, term, reach: toUnit(reach, unit) })),
            probability: placing.probability,
          },
  };
}
