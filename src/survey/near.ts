/** Points by place: those within a distance, without looking at all of them. */
import type { Point } from "../geometry/vocabulary.js";

/** A point lies where it should when it is this near to its own place, or to any where its name says none: 24 in, in millimetres. */
export const NEAR = 609.6;

/** A thing and how far it is. */
export interface NearPoint<T> {
  readonly item: T;
  /** Millimetres. */
  readonly distance: number;
}

/** Finds what is near a place. */
export interface PlaceIndex<T> {
  /** Within `reach`, nearest first, the earlier first at a tie. */
  near(at: Point): readonly NearPoint<T>[];
}

/** Squares of `reach` millimetres: a point's own and the eight around it hold all that is near. */
export function indexPlaces<T>(items: readonly T[], placeOf: (item: T) => Point, reach: number): PlaceIndex<T> {
  const squares = new Map<string, T[]>();
  const cell = (value: number): number => Math.floor(value / reach);
  for (const item of items) {
    const { x, y } = placeOf(item);
    const key = `${cell(x)} ${cell(y)}`;
    const square = squares.get(key);
    if (square === undefined) squares.set(key, [item]);
    else square.push(item);
  }
  const steps = [-1, 0, 1];
  return {
    near: ({ x, y }) =>
      steps
        .flatMap((i) => steps.flatMap((j) => squares.get(`${cell(x) + i} ${cell(y) + j}`) ?? []))
        .map((item) => ({ item, distance: Math.hypot(placeOf(item).x - x, placeOf(item).y - y) }))
        .filter(({ distance }) => distance <= reach)
        .sort((a, b) => a.distance - b.distance),
  };
}
