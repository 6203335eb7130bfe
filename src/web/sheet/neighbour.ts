/** Where the arrow keys lead among things that stand on a drawing. */

/** Steps of the arrow keys, y down. */
export const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Nearer than this, millimetres, nothing lies in a direction. */
const LEAST = 0.2;

/** The nearest place in a direction, y down; what lies aside counts twice. Its index; null: there is none. */
export function neighbourOf(
  places: readonly { readonly x: number; readonly y: number }[],
  from: number,
  [sx, sy]: readonly [number, number],
): number | null {
  const start = places[from];
  let best: { readonly index: number; readonly away: number } | null = null;
  for (const [index, { x, y }] of places.entries()) {
    const [dx, dy] = [x - (start?.x ?? 0), y - (start?.y ?? 0)];
    const along = dx * sx + dy * sy;
    const away = along + 2 * (Math.abs(dx * sy) + Math.abs(dy * sx));
    if (index !== from && along > LEAST && (best === null || away < best.away)) best = { index, away };
  }
  return best?.index ?? null;
}
