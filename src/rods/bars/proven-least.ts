/**
 * The least cost that any cutting has, proven in whole numbers. Each size is given a worth such that no filling of a bar is
 * worth more than the bar; so all bars together cost at least what all pieces are worth. (Dual-feasible worths; Gilmore and
 * Gomory 1961, Farley 1990.) The worths come from doubles and are then made feasible exactly.
 */
import { type FillChoice, fillBar, mostInBar } from "./fill-bar.js";
import type { CuttingProblem } from "./model.js";

/** Whole worths of the sizes: no filling of a bar is worth more than `cost` x `scale`. */
export interface ProvenWorth {
  readonly worth: readonly number[];
  /** Worth of one unit of cost; whole. */
  readonly scale: number;
}

/** Of the dearest bar: with some thousand bars all sums stay safe integers. */
const FINENESS = 2 ** 38;
const EXACT_STEPS = 60_000;

/** Worths as near to those given as whole numbers allow, feasible without a doubt. */
export function proveWorth(problem: CuttingProblem, worth: readonly number[]): ProvenWorth {
  const dearest = problem.bars.reduce((most, { cost }) => Math.max(most, cost), 1);
  const scale = Math.max(Math.floor(FINENESS / dearest), 1);
  const whole = worth.map((each) => (Number.isFinite(each) ? Math.max(Math.floor(each * scale), 0) : 0));
  const [over, under] = worstBar(problem, whole, scale);
  if (over <= under) return { worth: whole, scale };
  return { worth: whole.map((each) => Number((BigInt(each) * under) / over)), scale };
}

/** The highest worth of a filling to the worth of its bar, of the bar where it is highest; at least 1. */
function worstBar(
  { sizes, counts, bars }: CuttingProblem,
  values: readonly number[],
  scale: number,
): readonly [bigint, bigint] {
  let worst: readonly [bigint, bigint] = [1n, 1n];
  for (const { capacity, cost } of bars) {
    const most = BigInt(mostWorth({ sizes, values, limits: counts, capacity, above: cost * scale }));
    const allowed = BigInt(cost) * BigInt(scale);
    if (most * worst[1] > worst[0] * allowed) worst = [most, allowed];
  }
  return worst;
}

/** Shares of a bar by which its fillings are allowed to be worth more, where fewer do not do: each loses the bound as much. */
const ALLOWED_MORE = [0, 2 ** -22, 2 ** -19, 2 ** -16, 2 ** -13, 2 ** -11, 2 ** -9];

/**
 * At least the highest worth of a filling, and at least `above`. Where the lengths of pieces share no large unit there are too many
 * fillings of almost the worth of the bar to look at each: then none is looked for that is worth a little more.
 */
function mostWorth({ above, ...choice }: FillChoice): number {
  for (const share of ALLOWED_MORE) {
    const fill = fillBar({ ...choice, above: above + Math.ceil(above * share) }, WHOLE, { left: EXACT_STEPS });
    if (fill.isBest) return fill.value;
  }
  return mostInBar(choice);
}

/** Whole values differ by 1; a double of this size may be off by less than the rest. */
const WHOLE = 0.99;

/** No cutting costs less: what the pieces are worth, rounded up to what bars can cost together. */
export function leastCost({ counts, bars }: CuttingProblem, { worth, scale }: ProvenWorth): number {
  const total = worth.reduce((sum, each, i) => sum + BigInt(each) * BigInt(counts[i] ?? 0), 0n);
  const least = (total + BigInt(scale) - 1n) / BigInt(scale);
  return nextCost(
    bars.map(({ cost }) => cost),
    Number(least),
  );
}

const MOST_SUMS = 200_000;

/** The least sum of bars' costs that is not below `least`; that itself where the sums are too many to look through. */
export function nextCost(costs: readonly number[], least: number): number {
  const [only] = costs;
  if (costs.length === 1 && only !== undefined) return Math.ceil(least / only) * only;
  const dearest = costs.reduce((most, cost) => Math.max(most, cost), 1);
  if (least + dearest > MOST_SUMS) return least;
  const isSum = new Uint8Array(least + dearest + 1);
  isSum[0] = 1;
  for (let sum = 1; sum < isSum.length; sum++) {
    if (costs.some((cost) => isSum[sum - cost] === 1)) isSum[sum] = 1;
    if (sum >= least && isSum[sum] === 1) return sum;
  }
  return least;
}
