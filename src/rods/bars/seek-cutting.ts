/**
 * Looks for a cutting of a given cost, or finds that there is none. Every bar may lose so much of its worth; what all bars lose
 * together is known beforehand, so that fillings that lose more are never looked at.
 */
import type { CuttingProblem, Filling, Steps } from "./model.js";
import type { ProvenWorth } from "./proven-least.js";

/** none: proven. unknown: the steps did not do. */
export type Sought =
  | { readonly kind: "found"; readonly fillings: readonly Filling[] }
  | { readonly kind: "none" | "unknown" };

interface Offer extends Filling {
  readonly loss: number;
}

/** Fillings of one bar that are tried at most; where there are more nothing is proven any longer. */
const MOST_OFFERS = 400;
const MOST_REMEMBERED = 20_000;

/** A cutting that costs at most `cost`. The longest piece that is left is always cut next. */
export function seekCutting(problem: CuttingProblem, proven: ProvenWorth, cost: number, steps: Steps): Sought {
  const rest = [...problem.counts];
  const path: Filling[] = [];
  const failed = new Set<string>();
  let isComplete = true;
  const all = proven.worth.reduce((sum, each, i) => sum + each * (rest[i] ?? 0), 0);
  const seek = (first: number, left: number, loss: number): boolean => {
    const longest = rest.findIndex((count, i) => i >= first && count > 0);
    if (longest < 0) return true;
    const key = `${left}:${rest.slice(longest).join()}`;
    if (failed.has(key)) return false;
    const { offers, isAll } = offerFillings(problem, proven, rest, longest, left, loss, steps);
    if (!isAll) isComplete = false;
    for (const offer of offers) {
      if (steps.left <= 0) isComplete = false;
      if (steps.left <= 0) return false;
      take(rest, offer, -1);
      path.push(offer);
      if (seek(longest, left - costOf(problem, offer), loss - offer.loss)) return true;
      path.pop();
      take(rest, offer, 1);
    }
    if (failed.size < MOST_REMEMBERED) failed.add(key);
    return false;
  };
  const isFound = seek(0, cost, cost * proven.scale - all);
  if (isFound) return { kind: "found", fillings: path.map(({ bar, counts }) => ({ bar, counts })) };
  return { kind: isComplete ? "none" : "unknown" };
}

function costOf({ bars }: CuttingProblem, { bar }: Filling): number {
  return bars[bar]?.cost ?? 0;
}

function take(rest: number[], { counts }: Filling, sign: 1 | -1): void {
  for (const [i, count] of counts.entries()) rest[i] = (rest[i] ?? 0) + sign * count;
}

/** Full fillings with one `longest` at least that lose no more than that, the least loss first. */
function offerFillings(
  { sizes, bars }: CuttingProblem,
  { worth, scale }: ProvenWorth,
  rest: readonly number[],
  longest: number,
  left: number,
  mostLoss: number,
  steps: Steps,
): { readonly offers: readonly Offer[]; readonly isAll: boolean } {
  const offers: Offer[] = [];
  let isAll = true;
  const kinds = rest.flatMap((count, i) => (i > longest && count > 0 ? [i] : []));
  const density = mostPerLength(kinds, sizes, worth);
  const counts = new Array<number>(sizes.length).fill(0);
  for (const [bar, { capacity, cost }] of bars.entries()) {
    if (cost > left) continue;
    const fill = (k: number, room: number, loss: number, smallestLeft: number): void => {
      steps.left -= 1;
      const kind = kinds[k];
      if (kind === undefined) {
        if (room < smallestLeft && loss <= mostLoss) isAll = keep(offers, { bar, counts: [...counts], loss }) && isAll;
        return;
      }
      if (steps.left <= 0 || loss - room * (density[k] ?? 0) > mostLoss + SLACK) return;
      const size = sizes[kind] ?? 1;
      const most = Math.min(rest[kind] ?? 0, Math.floor(room / size));
      for (let count = most; count >= 0; count--) {
        counts[kind] = count;
        const spare = count < (rest[kind] ?? 0) ? Math.min(size, smallestLeft) : smallestLeft;
        fill(k + 1, room - count * size, loss - count * (worth[kind] ?? 0), spare);
      }
      counts[kind] = 0;
    };
    const size = sizes[longest] ?? 1;
    const most = Math.min(rest[longest] ?? 0, Math.floor(capacity / size));
    for (let count = most; count >= 1; count--) {
      counts[longest] = count;
      const spare = count < (rest[longest] ?? 0) ? size : Infinity;
      fill(0, capacity - count * size, cost * scale - count * (worth[longest] ?? 0), spare);
    }
    counts[longest] = 0;
  }
  offers.sort((a, b) => a.loss - b.loss);
  return { offers: offers.slice(0, MOST_OFFERS), isAll: isAll && steps.left > 0 };
}

/** What a double may be off in a worth. */
const SLACK = 0.01;

/** From each kind on: the highest worth of a unit of length. */
function mostPerLength(
  kinds: readonly number[],
  sizes: readonly number[],
  worth: readonly number[],
): readonly number[] {
  const density = new Array<number>(kinds.length).fill(0);
  let most = 0;
  for (let k = kinds.length - 1; k >= 0; k--) {
    const i = kinds[k] ?? 0;
    most = Math.max(most, (worth[i] ?? 0) / (sizes[i] ?? 1));
    density[k] = most;
  }
  return density;
}

/** False where the worst of the offers had to be left out. */
function keep(offers: Offer[], offer: Offer): boolean {
  offers.push(offer);
  if (offers.length < 2 * MOST_OFFERS) return true;
  offers.sort((a, b) => a.loss - b.loss);
  offers.length = MOST_OFFERS;
  return false;
}
