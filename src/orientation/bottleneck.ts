/** Which rod belongs where: the assignment of one list of points to another whose largest distance is least. */
import type { Point } from "../geometry/index.js";
import { millimetresBetween } from "../geometry/index.js";
import { greatestOf, leastOf } from "../units/extremes.js";

/** For each of the first points the index of its partner, and the largest cost of a pair. */
export interface Assignment {
  readonly partners: readonly number[];
  readonly worst: number;
}

interface Edge {
  readonly to: number;
  readonly cost: number;
}

/** Places that rods are assigned to, in the order of their x. */
export interface Places {
  readonly points: readonly Point[];
  readonly order: readonly number[];
}

/** Puts places in order once, for many assignments to them. */
export function placesOf(points: readonly Point[]): Places {
  return { points, order: points.map((_, i) => i).sort((a, b) => xOf(points, a) - xOf(points, b)) };
}

/** The assignment with the least largest distance, in millimetres; null where none stays below `limit`. */
export function assignNearest(from: readonly Point[], to: Places, limit = Infinity): Assignment | null {
  if (from.length !== to.points.length) return null;
  const edges: (readonly Edge[])[] = [];
  for (const point of from) {
    const near = edgesFrom(point, to, limit);
    if (near.length === 0) return null;
    edges.push(near);
  }
  return assignLeast(edges);
}

/**
 * The least largest distance of any assignment, in millimetres; null where none stays below `limit`. Where no two points are
 * nearest to one place, that is each to its nearest: then no assignment has to be looked for.
 */
export function leastLargest(from: readonly Point[], to: Places, limit = Infinity): number | null {
  if (from.length !== to.points.length) return null;
  const taken = new Uint8Array(from.length);
  let worst = 0;
  let clash = false;
  for (const point of from) {
    const nearest = nearestPlace(point, to, limit);
    if (nearest < 0) return null;
    worst = Math.max(worst, millimetresBetween(point, to.points[nearest] as Point));
    clash ||= taken[nearest] === 1;
    taken[nearest] = 1;
  }
  if (clash) return assignNearest(from, to, limit)?.worst ?? null;
  return worst < limit ? worst : null;
}

/** Index of the place nearest to a point, below `limit`; -1 where there is none. */
function nearestPlace(point: Point, { points, order }: Places, limit: number): number {
  let nearest = -1;
  let least = limit * limit;
  for (let k = firstAtLeast(order, points, point.x - limit); k < order.length; k++) {
    const j = order[k] as number;
    const at = points[j] as Point;
    if (at.x > point.x + limit) break;
    const square = (at.x - point.x) * (at.x - point.x) + (at.y - point.y) * (at.y - point.y);
    if (square >= least) continue;
    nearest = j;
    least = square;
  }
  return nearest;
}

function edgesFrom(point: Point, { points, order }: Places, limit: number): readonly Edge[] {
  const near: Edge[] = [];
  for (let k = firstAtLeast(order, points, point.x - limit); k < order.length; k++) {
    const j = order[k] as number;
    const at = points[j] as Point;
    if (at.x > point.x + limit) break;
    if (Math.abs(at.y - point.y) >= limit) continue;
    const cost = millimetresBetween(point, at);
    if (cost < limit) near.push({ to: j, cost });
  }
  return near;
}

function xOf(points: readonly Point[], i: number): number {
  return points[i]?.x ?? 0;
}

/** First place in an order by x whose x is at least `least`. */
function firstAtLeast(order: readonly number[], points: readonly Point[], least: number): number {
  let [low, high] = [0, order.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (xOf(points, order[middle] ?? 0) < least) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The assignment over any costs, a row a point, with the least largest one. */
export function assignCosts(costs: readonly (readonly number[])[]): Assignment | null {
  return assignLeast(costs.map((row) => row.map((cost, to) => ({ to, cost }))));
}

/** First the least that any assignment needs: often it is enough. Then the costs above it are halved. */
function assignLeast(edges: readonly (readonly Edge[])[]): Assignment | null {
  if (edges.some((row) => row.length === 0)) return null;
  const least = greatestOf(edges.map((row) => leastOf(row.map(({ cost }) => cost))));
  const first = match(edges, least);
  if (first !== null) return { partners: first, worst: least };
  const costs = [...new Set(edges.flatMap((row) => row.map(({ cost }) => cost)))].filter((cost) => cost > least);
  costs.sort((a, b) => a - b);
  let found: Assignment | null = null;
  let [low, high] = [0, costs.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    const worst = costs[middle] as number;
    const partners = match(edges, worst);
    if (partners === null) low = middle + 1;
    else [found, high] = [{ partners, worst }, middle];
  }
  return found;
}

/** A complete matching over edges up to `most`, by augmenting paths; null where there is none. */
function match(edges: readonly (readonly Edge[])[], most: number): readonly number[] | null {
  const taken: number[] = edges.map(() => -1);
  const seen: number[] = edges.map(() => -1);
  const place = (row: number, round: number): boolean =>
    (edges[row] ?? []).some(({ to, cost }) => {
      if (cost > most || seen[to] === round) return false;
      seen[to] = round;
      const holder = taken[to] ?? -1;
      if (holder >= 0 && !place(holder, round)) return false;
      taken[to] = row;
      return true;
    });
  for (let row = 0; row < edges.length; row++) if (!place(row, row)) return null;
  const partners = edges.map(() => -1);
  taken.forEach((row, to) => {
    partners[row] = to;
  });
  return partners;
}
