/** The budget as written -> with its defaults. */
import type { BudgetSpec } from "../model/budget.js";
import { optional } from "../model/values.js";
import type { BudgetDocument } from "../schema/budget.js";

/** The fit's own bound on the turn: a bound of the solver, not a permission. */
const DEFAULT_MAX_TURN = 0.05;

/** A budget of which the job says what `written` holds, or nothing. */
export function resolveBudget(written: BudgetDocument = {}): BudgetSpec {
  const { rods, zone, spread, sigmas, common, plate, turn, seed, standardError } = written;
  return {
    rods: rods ?? "edition",
    placing: optional(written.placing, "budget.placing", "the placing edition holds"),
    setting: optional(written.setting, "budget.setting", "how far the template may be set off its place is not given"),
    cutting: optional(
      written.cutting,
      "budget.cutting",
      "how far a template hole may be cut off its place is not given",
    ),
    lean: optional(written.lean, "budget.lean", "no lean of the rods is given"),
    baseHoles: optional(written.baseHoles, "budget.baseHoles", "no position error of the base plate's holes is given"),
    zone: zone ?? "round",
    spread: spread ?? "uniform",
    sigmas: sigmas ?? 3,
    common: common ?? 0,
    plate: plate ?? "free",
    maxTurn: turn === undefined ? DEFAULT_MAX_TURN : (turn * Math.PI) / 180,
    target: optional(written.target, "budget.target", "no probability is asked for"),
    seed: seed ?? 1,
    standardError: standardError ?? 0.002,
  };
}

/** Keys that belong to the other way of reckoning, which is never added to this one. */
export function budgetFaults(written: BudgetDocument): readonly { readonly key: string; readonly message: string }[] {
  const components = written.rods === "components";
  const wrong = components ? (["placing"] as const) : (["setting", "cutting", "lean"] as const);
  const message = components
    ? "is given beside components, which make up the as-placed tolerance; allowed is one of them"
    : "is a component of the as-placed tolerance and is never added to it; allowed with rods: components";
  return wrong.filter((key) => written[key] !== undefined).map((key) => ({ key, message }));
}
