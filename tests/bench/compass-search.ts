/** The baseline of fits and trials: a general-purpose minimiser that knows nothing of plates. */

/** The 26 directions of a cube, so that the kinks of a largest distance do not stop the search on their edges too soon. */
const WAYS = [-1, 0, 1]
  .flatMap((x) => [-1, 0, 1].flatMap((y) => [-1, 0, 1].map((turn) => [x, y, turn] as const)))
  .filter((way) => way.some((part) => part !== 0));

/** Steps in any direction as long as the value falls, else halves the steps (Hooke and Jeeves 1961, without pattern moves). */
export function compassSearch(
  value: (at: readonly number[]) => number,
  start: readonly number[],
  steps: readonly number[],
  least: number,
): number {
  let at = start;
  let best = value(at);
  for (let scale = 1; scale > least && best > 0; ) {
    let moved = false;
    for (const way of WAYS) {
      const next = at.map((part, axis) => part + (way[axis] ?? 0) * (steps[axis] ?? 0) * scale);
      const there = value(next);
      if (there >= best) continue;
      at = next;
      best = there;
      moved = true;
    }
    if (!moved) scale /= 2;
  }
  return best;
}
