/** One base: terms, closed forms, probability, distribution, what governs and what would meet the target. */
import type { Base, Job } from "../job/model/job.js";
import type { PlacedRod } from "../rods/index.js";
import { greatestOf } from "../units/extremes.js";
import type { Unit } from "../units/index.js";
import { millimetres, NM_PER_INCH } from "../units/index.js";
import { around, rootSumSquareCase, worstCase } from "./closed-form.js";
import type { BaseBudget, BudgetRod, ClosedForm, Governs, PlateFreedom, ReckonedBase, TermName } from "./model.js";
import { askedForm, askedShare, TERM_NAMES } from "./model.js";
import { answerTarget, trialsForTarget } from "./target.js";
import { budgetTerms } from "./terms.js";
import { drawPicture, estimate, MOST_SAMPLES, trialsOf } from "./trials.js";

/** Steps of the histogram, finest first. */
const BIN_STEPS: Readonly<Record<Unit, readonly number[]>> = {
  in: [256, 128, 64, 32, 16, 8, 4, 2, 1].map((part) => NM_PER_INCH / part),
  mm: [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50].map((size) => millimetres(size)),
};

/** The budget of a base, or what is wanting for it. */
export function reckonBudget(job: Job, base: Base, placed: readonly PlacedRod[]): BaseBudget {
  const { unit, budget: spec } = job;
  const { mark, quantity } = base;
  const terms = budgetTerms(job, base, placed);
  if (!terms.ok) return { kind: "not-checked", mark, quantity, unit, why: terms.why };
  const { rods } = terms;
  const worst = worstCase(rods);
  const trials = trialsOf(rods, spec);
  const probability = estimate(trials, spec, trialsForTarget(spec));
  const picture = drawPicture(trials, rods, spec.plate, BIN_STEPS[unit]);
  return {
    kind: "reckoned",
    mark,
    quantity,
    unit,
    spec,
    rods,
    worst,
    rss: rootSumSquareCase(rods),
    probability,
    histogram: picture.histogram,
    governs: { ...governingTerm(rods, worst, spec.plate), rods: picture.rods },
    target: spec.target.kind === "given" ? answerTarget(rods, spec, unit, spec.target.value, probability) : null,
    notes: probability.samples < MOST_SAMPLES ? terms.notes : [...terms.notes, TOO_FINE],
  };
}

const TOO_FINE = `The trials ended at ${MOST_SAMPLES}, before the standard error asked for was reached.`;

/** The largest part of the error of the governing rod or pair; the first named at a tie; none where no error counts. */
function governingTerm(rods: readonly BudgetRod[], worst: ClosedForm, plate: PlateFreedom): Omit<Governs, "rods"> {
  const { subject, tags, errorTwice } = askedForm(worst, plate);
  if (errorTwice === 0) return { subject, term: null, share: 0 };
  const parts = new Map<TermName, number>();
  for (const rod of rods.filter(({ tag }) => tags.includes(tag))) {
    for (const term of rod.terms) {
      const common = plate === "held" ? around(term, term.commonTwice) : 0;
      parts.set(term.name, (parts.get(term.name) ?? 0) + around(term, term.twice) + common);
    }
  }
  const total = [...parts.values()].reduce((sum, part) => sum + part, 0);
  const most = greatestOf(parts.values());
  return { subject, term: TERM_NAMES.find((name) => parts.get(name) === most) ?? null, share: most / total };
}

/** Worst first: not checked last; then by the probability asked for, then by what the worst case leaves. */
export function worstBudgetsFirst(budgets: readonly BaseBudget[]): readonly BaseBudget[] {
  const reckoned = budgets.filter((budget): budget is ReckonedBase => budget.kind === "reckoned");
  const spare = (budget: ReckonedBase): number => askedForm(budget.worst, budget.spec.plate).spare;
  return [
    ...reckoned.sort((a, b) => askedShare(a) - askedShare(b) || spare(a) - spare(b)),
    ...budgets.filter(({ kind }) => kind === "not-checked"),
  ];
}
