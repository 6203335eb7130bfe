/** Pairs of a plate's holes or rods. */

/** Two things of one list, the earlier first, and the margin between them. */
export interface Pair<T> {
  readonly first: T;
  readonly second: T;
  readonly margin: number;
}

interface Nearest {
  readonly other: number;
  readonly margin: number;
}

/**
 * For each item its governing pair, the one with the least margin (the earlier partner at a tie); each pair once, in the
 * order of the list. `margin` returns null for a pair that is not to be looked at; it is asked once a pair.
 */
export function governingPairs<T>(items: readonly T[], margin: (a: T, b: T) => number | null): readonly Pair<T>[] {
  const best = new Map<number, Nearest>();
  items.forEach((a, i) => {
    for (let j = i + 1; j < items.length; j++) {
      const value = margin(a, items[j] as T);
      if (value === null) continue;
      improve(best, i, { other: j, margin: value });
      improve(best, j, { other: i, margin: value });
    }
  });
  return items.flatMap((item, i) => {
    const nearest = best.get(i);
    if (nearest === undefined || isSaidBefore(best, i, nearest)) return [];
    const other = items[nearest.other] as T;
    return nearest.other > i
      ? [{ first: item, second: other, margin: nearest.margin }]
      : [{ first: other, second: item, margin: nearest.margin }];
  });
}

/**
 * Of items whose missing inputs stand in at their best, the governing pairs that fail all the same and hang on one of those:
 * they fail whatever the inputs are. Pairs that hang on none are left to `governingPairs`.
 */
export function pairsThatFailAnyway<T>(
  items: readonly T[],
  missingOf: (item: T) => readonly unknown[],
  margin: (a: T, b: T) => number,
): readonly Pair<T>[] {
  return governingPairs(items, (a, b) => {
    if (missingOf(a).length + missingOf(b).length === 0) return null;
    const value = margin(a, b);
    return value < 0 ? value : null;
  });
}

function improve(best: Map<number, Nearest>, at: number, candidate: Nearest): void {
  const known = best.get(at);
  if (known === undefined || candidate.margin < known.margin) best.set(at, candidate);
}

function isSaidBefore(best: ReadonlyMap<number, Nearest>, i: number, nearest: Nearest): boolean {
  return nearest.other < i && best.get(nearest.other)?.other === i;
}

/** The pair of the whole list with the least margin, the earliest at a tie; null where there is none. */
export function leastPair<T>(items: readonly T[], margin: (a: T, b: T) => number | null): Pair<T> | null {
  return governingPairs(items, margin).reduce<Pair<T> | null>(
    (least, pair) => (least === null || pair.margin < least.margin ? pair : least),
    null,
  );
}
