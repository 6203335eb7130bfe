/** Budgets as CSV: a line a base, and a line a term of a rod. Lengths in the job's unit; errors and clearances are radii. */
import type { BaseBudget, ReckonedBase } from "../budget/index.js";
import { around, askedForm } from "../budget/index.js";
import type { Unit } from "../units/length.js";
import { toUnit } from "../units/length.js";
import type { CsvCell } from "./csv-cells.js";
import { writeCsvRows } from "./csv-cells.js";

/** Headings of `budget.csv`. */
const BUDGET_COLUMNS = [
  "base",
  "quantity",
  "status",
  "plate",
  "governing",
  "governing term",
  "share of the term",
  "worst error",
  "clearance",
  "worst spare",
  "always drops on",
  "rss spare",
  "probability",
  "standard error",
  "samples",
  "seed",
  "probability held",
  "probability shifted",
  "probability free",
  "target",
  "target reached",
  "hole for target",
  "placing for target",
  "unit",
  "note",
] as const;

/** Headings of `budget-rods.csv`. */
const BUDGET_ROD_COLUMNS = [
  "base",
  "rod",
  "x",
  "y",
  "rod diameter",
  "base-plate hole",
  "clearance",
  "term",
  "zone",
  "reach",
  "common",
  "radius",
  "from",
  "unit",
] as const;

/** `budget.csv`: one line a base, in the order given. */
export function writeBudgetCsv(budgets: readonly BaseBudget[]): string {
  return writeCsvRows([BUDGET_COLUMNS, ...budgets.map(baseRow)]);
}

function baseRow(budget: BaseBudget): readonly CsvCell[] {
  const { mark, quantity, unit } = budget;
  if (budget.kind === "reckoned") return [mark, quantity, "reckoned", ...figures(budget), unit, budget.notes.join(" ")];
  const empty = BUDGET_COLUMNS.slice(3, -2).map(() => null);
  return [mark, quantity, "not-checked", ...empty, unit, budget.why.join("; ")];
}

function figures({ spec, worst, rss, probability, governs, target, unit }: ReckonedBase): readonly CsvCell[] {
  const governing = askedForm(worst, spec.plate);
  const radius = (twice: number): number => toUnit(twice / 2, unit);
  return [
    spec.plate,
    governing.subject,
    governs.term,
    rounded(governs.share),
    radius(governing.errorTwice),
    radius(governing.clearanceTwice),
    toUnit(governing.spare, unit),
    governing.holds ? "yes" : "no",
    toUnit(askedForm(rss, spec.plate).spare, unit),
    probability[spec.plate],
    rounded(probability.standardError),
    probability.samples,
    spec.seed,
    probability.held,
    probability.shifted,
    probability.free,
    target?.target ?? null,
    target === null ? null : target.met ? "yes" : "no",
    target === null ? null : target.holes.change.map(({ size, hole }) => sized(size, hole, unit)).join("; "),
    target === null
      ? null
      : (target.placing?.change.map(({ size, reach }) => sized(size, reach, unit)).join("; ") ?? "none"),
  ];
}

const sized = (size: string, length: number, unit: Unit): string => `rod ${size}: ${toUnit(length, unit)}`;
const rounded = (share: number): number => Math.round(share * 1e6) / 1e6;

/** One line a rod and term. */
export function writeBudgetRodsCsv(budgets: readonly BaseBudget[]): string {
  const rows = budgets.flatMap((budget) => (budget.kind === "reckoned" ? termRows(budget) : []));
  return writeCsvRows([BUDGET_ROD_COLUMNS, ...rows]);
}

function termRows({ mark, rods, unit }: ReckonedBase): readonly (readonly CsvCell[])[] {
  const radius = (twice: number): number => toUnit(twice / 2, unit);
  return rods.flatMap(({ tag, at, diameter, hole, clearanceTwice, terms }) =>
    terms.map((term) => [
      mark,
      tag,
      toUnit(at.x * 1e6, unit),
      toUnit(at.y * 1e6, unit),
      toUnit(diameter, unit),
      toUnit(hole, unit),
      radius(clearanceTwice),
      term.name,
      term.zone,
      radius(term.twice),
      radius(term.commonTwice),
      radius(around(term, term.twice) + around(term, term.commonTwice)),
      term.from,
      unit,
    ]),
  );
}
