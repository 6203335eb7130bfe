/** Budgets for tests of their sheets, through the real stages. Invented data. */
import type { ReckonedBase } from "../../../src/budget/index.js";
import { reckonBudget } from "../../../src/budget/index.js";
import type { BudgetSpec } from "../../../src/job/model/budget.js";
import type { Base, Job } from "../../../src/job/model/job.js";
import { given } from "../../../src/job/model/job.js";
import { resolveBudget } from "../../../src/job/resolve/budget.js";
import { placeRods } from "../../../src/rods/index.js";
import { inches, millimetres } from "../../../src/units/index.js";
import { baseFixture, groupFixture, jobFixture } from "../../fixture.js";

/** What differs from the fixtures. */
export interface BudgetCase {
  readonly spec?: Partial<BudgetSpec>;
  readonly base?: Base;
  readonly job?: Partial<Job>;
}

const holed = (hole: number): Base => baseFixture({ groups: [groupFixture({ baseHole: given(inches(hole), "job") })] });
const components: Partial<BudgetSpec> = {
  rods: "components",
  setting: given(inches(5 / 16), "job"),
  lean: given({ by: inches(1 / 8), per: inches(12) }, "job"),
  baseHoles: given(inches(1 / 16), "job"),
  common: 0.3,
};

export const budgetCases: Readonly<Record<string, BudgetCase>> = {
  "as the edition has it": {},
  "holes that are too small": { base: holed(1.625) },
  "a rod larger than its hole": { base: holed(1.2) },
  "every trial alike": { spec: { placing: given(inches(0), "job") } },
  "components and a target": { spec: { ...components, target: given(0.99, "job") }, base: holed(1.625) },
  "fixed in place, square, normal": {
    spec: { plate: "held", zone: "square", spread: "normal", sigmas: 2 },
    base: holed(1.75),
  },
  "millimetres and long words": {
    spec: { placing: given(millimetres(6), "job"), target: given(0.995, "job") },
    base: baseFixture({
      mark: "W".repeat(60),
      groups: ["A", "B", "C"].map((letter, i) =>
        groupFixture({
          letter,
          pattern: {
            kind: "points",
            at: [
              { x: inches(i), y: inches(9) },
              { x: inches(-i - 1), y: inches(-9) },
            ],
          },
        }),
      ),
    }),
    job: {
      unit: "mm",
      title: "Extension ".repeat(40),
      number: "9".repeat(80),
      owner: "Fabricator ".repeat(20),
      drawnBy: "W".repeat(60),
    },
  },
};

/** Job and budget of a case. */
export function reckonCase({ spec = {}, base = baseFixture(), job = {} }: BudgetCase): {
  readonly job: Job;
  readonly budget: ReckonedBase;
} {
  const whole = jobFixture({ ...job, budget: { ...resolveBudget(), standardError: 0.02, ...spec } });
  const rods = placeRods(base);
  if (!rods.ok) throw new Error("no layout");
  const budget = reckonBudget(whole, base, rods.value);
  if (budget.kind !== "reckoned") throw new Error(budget.why.join("; "));
  return { job: whole, budget };
}
