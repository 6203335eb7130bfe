/** Bars for all pieces: a mix of patterns rounded off step by step, what is left searched through, and the least that is proven. */
import { firstFit } from "./first-fit.js";
import { mixPatterns, type PatternMix } from "./mix-patterns.js";
import type { Cutting, CuttingProblem, Filling, Repeated, Steps } from "./model.js";
import { leastCost, nextCost, type ProvenWorth, proveWorth } from "./proven-least.js";
import { seekCutting } from "./seek-cutting.js";

/** Work for one list of pieces, and of it for the search of the whole and of what rounding leaves. */
const STEPS = { mix: 4_000_000, whole: 400_000, rest: 800_000 };
/** Of one such rest. */
const SEEK_STEPS = 100_000;
/** A list of more pieces is searched only where rounding has left few. */
const MOST_PIECES = 240;

/** The best that is known, while it gets better. */
interface Best {
  fillings: readonly Repeated[];
  cost: number;
}

/** Every size has a count above zero and fits one of the bars. The same problem gives the same cutting. */
export function solveCutting(problem: CuttingProblem): Cutting {
  const best = quickBest(problem);
  if (problem.sizes.length === 0) return { ...best, least: 0 };
  const steps = { left: STEPS.mix };
  const mix = mixPatterns(problem, steps);
  const proven = proveWorth(problem, mix.worth);
  const least = leastCost(problem, proven);
  if (best.cost > least) roundOff(problem, mix, { least, best, steps, seeking: { left: STEPS.rest } });
  const shown =
    best.cost > least && piecesOf(problem) <= MOST_PIECES ? searchWhole(problem, proven, least, best) : least;
  return { fillings: best.fillings, cost: best.cost, least: shown };
}

function piecesOf({ counts }: CuttingProblem): number {
  return counts.reduce((sum, count) => sum + count, 0);
}

function costOf({ bars }: CuttingProblem, fillings: readonly Repeated[]): number {
  return fillings.reduce((sum, { filling, times }) => sum + times * (bars[filling.bar]?.cost ?? 0), 0);
}

function once(fillings: readonly Filling[]): readonly Repeated[] {
  return fillings.map((filling) => ({ filling, times: 1 }));
}

/** First fit, on the kind of bar on which it does best. */
function quickBest(problem: CuttingProblem): Best {
  const best: Best = { fillings: [], cost: Infinity };
  for (const bar of problem.bars.keys()) {
    const fillings = firstFit(problem, bar);
    if (fillings !== null) takeBetter(problem, best, once(fillings));
  }
  return best;
}

function takeBetter(problem: CuttingProblem, best: Best, fillings: readonly Repeated[]): void {
  const cost = costOf(problem, fillings);
  if (cost < best.cost) Object.assign(best, { fillings, cost });
}

/** What is left of a problem, without the sizes of which nothing is; `kept`: where these stood. */
function restOf(problem: CuttingProblem, counts: readonly number[]): { rest: CuttingProblem; kept: readonly number[] } {
  const kept = counts.flatMap((count, i) => (count > 0 ? [i] : []));
  const pick = (list: readonly number[]) => kept.map((i) => list[i] ?? 0);
  return { rest: { bars: problem.bars, sizes: pick(problem.sizes), counts: pick(counts) }, kept };
}

function widen({ bar, counts }: Filling, kept: readonly number[], length: number): Filling {
  const wide = new Array<number>(length).fill(0);
  for (const [k, i] of kept.entries()) wide[i] = counts[k] ?? 0;
  return { bar, counts: wide };
}

function narrow({ bar, counts }: Filling, kept: readonly number[], limits: readonly number[]): Filling {
  return { bar, counts: kept.map((i, k) => Math.min(counts[i] ?? 0, limits[k] ?? 0)) };
}

/** What rounding goes by. */
interface Rounding {
  readonly least: number;
  readonly best: Best;
  readonly steps: Steps;
  readonly seeking: Steps;
}

/** Takes the whole part of the mix, mixes what is left anew, and so on; each time the rest is finished in the quickest ways. */
function roundOff(problem: CuttingProblem, first: PatternMix, rounding: Rounding): void {
  const counts = [...problem.counts];
  const taken: Repeated[] = [];
  const wide = (filling: Filling, kept: readonly number[]) => widen(filling, kept, problem.sizes.length);
  let { rest, kept } = restOf(problem, counts);
  let mix = first;
  while (rest.sizes.length > 0 && rounding.best.cost > rounding.least) {
    for (const { filling, times } of wholeParts(rest, mix.parts)) {
      const whole = wide(filling, kept);
      taken.push({ filling: whole, times });
      for (const [i, count] of whole.counts.entries()) counts[i] = (counts[i] ?? 0) - times * count;
    }
    const known = mix.parts.map(({ filling }) => wide(filling, kept));
    ({ rest, kept } = restOf(problem, counts));
    const [limits, at] = [rest.counts, kept];
    mix = mixPatterns(
      rest,
      rounding.steps,
      known.map((each) => narrow(each, at, limits)),
    );
    finish(problem, taken, { rest, worth: mix.worth, wide: (each) => wide(each, at) }, rounding);
  }
}

/** What is left when some bars are filled, and its fillings as those of the whole. */
interface Rest {
  readonly rest: CuttingProblem;
  readonly worth: readonly number[];
  readonly wide: (filling: Filling) => Filling;
}

/** The rest by first fit; and searched through for a cutting that comes to the least. */
function finish(
  problem: CuttingProblem,
  taken: readonly Repeated[],
  { rest, worth, wide }: Rest,
  { least, best, seeking }: Rounding,
): void {
  const put = (fillings: readonly Filling[]) => takeBetter(problem, best, [...taken, ...once(fillings.map(wide))]);
  for (const bar of rest.bars.keys()) {
    const fillings = firstFit(rest, bar);
    if (fillings !== null) put(fillings);
  }
  const left = least - costOf(problem, taken);
  if (best.cost <= least || left <= 0 || piecesOf(rest) > MOST_PIECES || rest.sizes.length === 0) return;
  const proven = proveWorth(rest, worth);
  if (leastCost(rest, proven) > left) return;
  const own = { left: Math.min(SEEK_STEPS, seeking.left) };
  const before = own.left;
  const sought = seekCutting(rest, proven, left, own);
  seeking.left -= before - own.left;
  if (sought.kind === "found") put(sought.fillings);
}

/** How often each pattern is cut for sure; where none is, the one that nearly is. */
function wholeParts(rest: CuttingProblem, parts: readonly { filling: Filling; times: number }[]): readonly Repeated[] {
  const left = [...rest.counts];
  const takeUpTo = (filling: Filling, wanted: number): readonly Repeated[] => {
    const times = filling.counts.reduce(
      (most, n, i) => (n > 0 ? Math.min(most, Math.floor((left[i] ?? 0) / n)) : most),
      wanted,
    );
    for (const [i, n] of filling.counts.entries()) left[i] = (left[i] ?? 0) - times * n;
    return times > 0 ? [{ filling, times }] : [];
  };
  const whole = parts.flatMap(({ filling, times }) => takeUpTo(filling, Math.floor(times + NEARLY)));
  if (whole.length > 0) return whole;
  const nearest = [...parts].sort((a, b) => b.times - a.times);
  for (const { filling } of nearest) {
    const one = takeUpTo(filling, 1);
    if (one.length > 0) return one;
  }
  const some = rest.sizes.findIndex((_, i) => (left[i] ?? 0) > 0);
  const bar = rest.bars.findIndex(({ capacity }) => capacity >= (rest.sizes[some] ?? 0));
  return [{ filling: { bar, counts: rest.sizes.map((_, i) => (i === some ? 1 : 0)) }, times: 1 }];
}

const NEARLY = 1e-6;

/** Looks for a cutting that costs the least; where there is none the least is more. Gives the least that is proven then. */
function searchWhole(problem: CuttingProblem, proven: ProvenWorth, least: number, best: Best): number {
  const costs = problem.bars.map(({ cost }) => cost);
  const steps = { left: STEPS.whole };
  let shown = least;
  while (best.cost > shown) {
    const sought = seekCutting(problem, proven, shown, steps);
    if (sought.kind === "found") takeBetter(problem, best, once(sought.fillings));
    if (sought.kind !== "none") return shown;
    shown = nextCost(costs, shown + 1);
  }
  return shown;
}
