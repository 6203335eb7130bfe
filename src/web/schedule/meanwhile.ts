/** A change waits for those before it: where the bases that were picked stand when its turn comes. */

interface Marked {
  readonly mark: string;
}

/**
 * Finds the place that a base of the list as it was seen has in the list as it is now; null: it cannot be told, or it is gone.
 * Its mark tells it; one whose mark was changed in place is told by all others having stayed.
 */
export function placesNow(seen: readonly Marked[], now: readonly Marked[]): (index: number) => number | null {
  if (seen === now) return (index) => (index < now.length ? index : null);
  const places = new Map<string, number[]>();
  for (const [index, { mark }] of now.entries()) places.set(mark, [...(places.get(mark) ?? []), index]);
  const known = new Set(seen.map(({ mark }) => mark));
  return (index) => {
    const mark = seen[index]?.mark;
    const there = now[index]?.mark;
    if (mark === undefined) return null;
    if (there === mark) return index;
    const [only, ...others] = places.get(mark) ?? [];
    if (only !== undefined) return others.length === 0 ? only : null;
    return now.length === seen.length && there !== undefined && !known.has(there) ? index : null;
  };
}

/** All of them, or null. */
export function allNow(
  seen: readonly Marked[],
  now: readonly Marked[],
  indices: readonly number[],
): readonly number[] | null {
  const placeOf = placesNow(seen, now);
  const places = indices.map(placeOf);
  return places.every((place) => place !== null) ? places : null;
}
