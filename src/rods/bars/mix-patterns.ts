/**
 * Patterns and how often each is cut, as if a part of a bar could be cut: the linear relaxation by Gilmore and Gomory (1961),
 * its columns made as they are wanted. In doubles: nothing that is proven rests on them.
 */
import { type BestFill, type FillChoice, fillBar, fillByTable } from "./fill-bar.js";
import type { CuttingProblem, Filling, Steps } from "./model.js";

/** The mix, and what a piece of each size is worth in it. */
export interface PatternMix {
  readonly parts: readonly { readonly filling: Filling; readonly times: number }[];
  readonly worth: readonly number[];
}

interface Basis {
  readonly fillings: Filling[];
  readonly costs: number[];
  readonly times: Float64Array;
  /** Inverse of the basis, a row after the other. */
  readonly inverse: readonly Float64Array[];
}

const SMALLEST_GAIN = 1e-9;
/** For one pattern; and where neither these nor a table find any that gains. */
const PRICING_STEPS = 4000;
const LAST_STEPS = 300_000;
/** What such a pattern gains at least, of the cost of its bar: where less is gained too many are as good. */
const LAST_GAIN = 1e-4;

/** Every size has a count above zero and fits a bar. `known`: patterns that are looked at first. */
export function mixPatterns(problem: CuttingProblem, steps: Steps, known: readonly Filling[] = []): PatternMix {
  const basis = firstBasis(problem);
  let worth = worthIn(basis);
  const made = known.filter(({ counts }) => counts.some((count) => count > 0));
  const most = 100 * problem.sizes.length + 1000;
  for (let round = 0; round < most && steps.left > 0; round++) {
    steps.left -= problem.sizes.length;
    const old = bestKnown(problem, worth, made);
    const next = old ?? bestPattern(problem, worth, steps);
    if (next === null) break;
    const out = enter(basis, next, costOf(problem, next));
    if (out < 0) break;
    const entered = basis.inverse[out];
    if (entered !== undefined && round % REFRESH !== 0)
      addRow(worth, entered, costOf(problem, next) - worthOf(next, worth));
    else worth = worthIn(basis);
    if (old === null) made.push(next);
  }
  const parts = basis.fillings.map((filling, i) => ({ filling, times: basis.times[i] ?? 0 }));
  return { parts, worth: worthIn(basis) };
}

/** Worths are carried on from step to step, and so often reckoned anew, so that what doubles lose does not add up. */
const REFRESH = 50;

/** A known pattern is taken only where it gains as much as this. */
const KNOWN_GAIN = 1e-5;

function bestKnown(problem: CuttingProblem, worth: readonly number[], known: readonly Filling[]): Filling | null {
  let best: Filling | null = null;
  let gain = KNOWN_GAIN;
  for (const filling of known) {
    const value = worthOf(filling, worth);
    const gained = value / costOf(problem, filling) - 1;
    if (gained > gain) [best, gain] = [filling, gained];
  }
  return best;
}

function worthOf({ counts }: Filling, worth: readonly number[]): number {
  let value = 0;
  for (let i = 0; i < counts.length; i++) value += (counts[i] ?? 0) * (worth[i] ?? 0);
  return value;
}

function costOf({ bars }: CuttingProblem, { bar }: Filling): number {
  return bars[bar]?.cost ?? 0;
}

/** One pattern a size, on the bar that is cheapest for it. */
function firstBasis(problem: CuttingProblem): Basis {
  const { sizes, counts } = problem;
  const fillings = sizes.map((_, i) => alone(problem, i));
  const per = fillings.map(({ counts: own }, i) => own[i] ?? 1);
  return {
    fillings,
    costs: fillings.map((filling) => costOf(problem, filling)),
    times: Float64Array.from(counts, (count, i) => count / (per[i] ?? 1)),
    inverse: sizes.map((_, i) => Float64Array.from(sizes, (_size, k) => (k === i ? 1 / (per[i] ?? 1) : 0))),
  };
}

/** Nothing but that size in the bar that gives it at the least cost. */
function alone({ sizes, counts, bars }: CuttingProblem, i: number): Filling {
  let best = { bar: 0, count: 1, each: Infinity };
  for (const [bar, { capacity, cost }] of bars.entries()) {
    const count = Math.min(Math.floor(capacity / (sizes[i] ?? 1)), counts[i] ?? 0);
    if (count > 0 && cost / count < best.each) best = { bar, count, each: cost / count };
  }
  return { bar: best.bar, counts: sizes.map((_, k) => (k === i ? best.count : 0)) };
}

function worthIn({ costs, inverse }: Basis): number[] {
  const worth = new Array<number>(costs.length).fill(0);
  for (const [r, row] of inverse.entries()) addRow(worth, row, costs[r] ?? 0);
  return worth;
}

/** `to` += `factor` x `row`. */
function addRow(to: number[] | Float64Array, row: Float64Array, factor: number): void {
  if (factor === 0) return;
  for (let i = 0; i < row.length; i++) to[i] = (to[i] ?? 0) + factor * (row[i] ?? 0);
}

/** The pattern that gains most by its bar's cost; null: none gains. */
function bestPattern({ sizes, counts, bars }: CuttingProblem, worth: readonly number[], steps: Steps): Filling | null {
  let best: Filling | null = null;
  let gain = SMALLEST_GAIN;
  for (const [bar, { capacity, cost }] of bars.entries()) {
    const above = cost * (1 + gain);
    const fill = priced({ sizes, values: worth, limits: counts, capacity, above }, SMALLEST_GAIN * cost, steps);
    if (fill.value <= above) continue;
    gain = fill.value / cost - 1;
    best = { bar, counts: fill.counts };
  }
  return best;
}

function priced(choice: FillChoice, gain: number, steps: Steps): BestFill {
  const fill = pricedIn(PRICING_STEPS, choice, gain, steps);
  if (fill.isBest || fill.value > choice.above) return fill;
  const tabled = fillByTable(choice);
  if (tabled.isBest || tabled.value > choice.above || steps.left <= 0) return tabled;
  const least = LAST_GAIN * choice.above;
  return pricedIn(Math.min(LAST_STEPS, steps.left), { ...choice, above: choice.above + least }, least, steps);
}

function pricedIn(most: number, choice: FillChoice, gain: number, steps: Steps): BestFill {
  const own: Steps = { left: most };
  const fill = fillBar(choice, gain, own);
  steps.left -= most - own.left;
  return fill;
}

const LEAST_PIVOT = 1e-9;

/** The pattern takes the place of the one that runs out first: which that was; -1: it takes none's. */
function enter(basis: Basis, filling: Filling, cost: number): number {
  const { times, inverse } = basis;
  const held = filling.counts.flatMap((count, i) => (count > 0 ? [{ i, count }] : []));
  const change = inverse.map((row) => held.reduce((sum, { i, count }) => sum + count * (row[i] ?? 0), 0));
  const { out, ratio } = firstOut(times, change);
  const pivot = inverse[out];
  const by = change[out];
  if (pivot === undefined || by === undefined) return -1;
  for (let i = 0; i < pivot.length; i++) pivot[i] = (pivot[i] ?? 0) / by;
  for (let r = 0; r < change.length; r++) {
    const row = inverse[r];
    const factor = change[r] ?? 0;
    if (r === out || row === undefined || factor === 0) continue;
    addRow(row, pivot, -factor);
    times[r] = (times[r] ?? 0) - factor * ratio;
  }
  times[out] = ratio;
  basis.fillings[out] = filling;
  basis.costs[out] = cost;
  return out;
}

/** The pattern of the basis that runs out first, and how often the new one is cut by then; -1: none. */
function firstOut(times: Float64Array, change: readonly number[]): { readonly out: number; readonly ratio: number } {
  let [out, least] = [-1, Infinity];
  for (let r = 0; r < change.length; r++) {
    const each = change[r] ?? 0;
    const ratio = Math.max(times[r] ?? 0, 0) / each;
    if (each > LEAST_PIVOT && ratio < least) [out, least] = [r, ratio];
  }
  return { out, ratio: least };
}
