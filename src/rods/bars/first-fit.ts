/** A cutting that is quickly found: the longest piece first, each into the first bar that has room for it. */
import type { CuttingProblem, Filling } from "./model.js";

/** All pieces from bars of the one kind; null where a piece does not fit it. */
export function firstFit({ sizes, counts, bars }: CuttingProblem, bar: number): readonly Filling[] | null {
  const capacity = bars[bar]?.capacity ?? 0;
  const open: { room: number; readonly counts: number[] }[] = [];
  for (const [i, size] of sizes.entries()) {
    let left = counts[i] ?? 0;
    if (left > 0 && size > capacity) return null;
    for (let at = 0; left > 0; at++) {
      const target = open[at] ?? { room: capacity, counts: sizes.map(() => 0) };
      if (at === open.length) open.push(target);
      const count = Math.min(left, Math.floor(target.room / size));
      target.counts[i] = (target.counts[i] ?? 0) + count;
      target.room -= count * size;
      left -= count;
    }
  }
  return open.map(({ counts: own }) => smallestBar({ sizes, bars }, own, bar));
}

/** The cheapest bar that holds the same. */
export function smallestBar(
  { sizes, bars }: Pick<CuttingProblem, "sizes" | "bars">,
  counts: readonly number[],
  otherwise: number,
): Filling {
  const size = counts.reduce((sum, count, i) => sum + count * (sizes[i] ?? 0), 0);
  let best = otherwise;
  for (const [bar, { capacity, cost }] of bars.entries())
    if (capacity >= size && cost < (bars[best]?.cost ?? Infinity)) best = bar;
  return { bar: best, counts };
}
