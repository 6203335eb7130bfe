/** Which things on a plan stand in each other's way, and which two are nearest: by cells, so that not all pairs are tried. */
import type { Extent } from "../../geometry/index.js";
import { gapBetweenExtents, joinExtents, NO_EXTENT } from "../../geometry/index.js";
import { greatestOf } from "../../units/extremes.js";

/** A thing and the box around it, millimetres. */
export interface Boxed<T> {
  readonly item: T;
  readonly box: Extent;
}

/** Two things and twice the clear distance between them in nanometres, negative where they overlap. */
export interface Meeting<T> {
  readonly a: T;
  readonly b: T;
  readonly twice: number;
}

/** `overlapping` in the order given; `nearest` the pair with the least clear distance, null for fewer than two things. */
export interface Neighbours<T> {
  readonly overlapping: readonly Meeting<T>[];
  readonly nearest: Meeting<T> | null;
}

/** Looks at things whose boxes are near, farther and farther until two are found. `twiceGap` is never less than the boxes' gap. */
export function findNeighbours<T>(things: readonly Boxed<T>[], twiceGap: (a: T, b: T) => number): Neighbours<T> {
  if (things.length < 2) return { overlapping: [], nearest: null };
  const size = greatestOf(
    things.map(({ box }) => Math.max(box.x1 - box.x0, box.y1 - box.y0)),
    1,
  );
  const reach = reachOf(things);
  for (let within = size / 2; ; within *= 2) {
    const meetings = pairsWithin(things, within, size).map(([a, b]) => ({ a, b, twice: twiceGap(a, b) }));
    const nearest = meetings.reduce<Meeting<T> | null>(
      (best, one) => (best === null || one.twice < best.twice ? one : best),
      null,
    );
    const isSure = nearest !== null && nearest.twice / 2e6 <= within;
    if (isSure || within > reach) return { overlapping: meetings.filter(({ twice }) => twice < 0), nearest };
  }
}

/** No two boxes are farther apart than this, in millimetres. */
function reachOf(things: readonly Boxed<unknown>[]): number {
  const whole = things.map(({ box }) => box).reduce(joinExtents, NO_EXTENT);
  return whole.x1 - whole.x0 + whole.y1 - whole.y0;
}

/** Pairs whose boxes are at most `within` apart, each once, in the order given. */
function pairsWithin<T>(things: readonly Boxed<T>[], within: number, size: number): (readonly [T, T])[] {
  const side = size + within;
  const cells = new Map<string, number[]>();
  const pairs: (readonly [T, T])[] = [];
  things.forEach(({ item, box }, index) => {
    const seen = new Set<number>();
    const { x0, y0, x1, y1 } = box;
    for (let i = Math.floor((x0 - within) / side); i <= Math.floor((x1 + within) / side); i += 1)
      for (let j = Math.floor((y0 - within) / side); j <= Math.floor((y1 + within) / side); j += 1)
        for (const other of cells.get(`${i} ${j}`) ?? []) seen.add(other);
    for (const other of [...seen].sort((a, b) => a - b)) {
      const before = things[other];
      if (before !== undefined && gapBetweenExtents(before.box, box) <= within) pairs.push([before.item, item]);
    }
    for (let i = Math.floor(x0 / side); i <= Math.floor(x1 / side); i += 1)
      for (let j = Math.floor(y0 / side); j <= Math.floor(y1 / side); j += 1) {
        const held = cells.get(`${i} ${j}`);
        if (held === undefined) cells.set(`${i} ${j}`, [index]);
        else held.push(index);
      }
  });
  return pairs;
}
