/**
 * The least and the greatest of a list of any length. `Math.max(...list)` hands over an argument an item, and a list of some
 * ten thousand overflows the stack.
 */

/** The greatest of the values and of `floor`; `floor` where there are none. */
export function greatestOf(values: Iterable<number>, floor = Number.NEGATIVE_INFINITY): number {
  let most = floor;
  for (const value of values) most = Math.max(most, value);
  return most;
}

/** The least of the values and of `ceiling`; `ceiling` where there are none. */
export function leastOf(values: Iterable<number>, ceiling = Number.POSITIVE_INFINITY): number {
  let few = ceiling;
  for (const value of values) few = Math.min(few, value);
  return few;
}
