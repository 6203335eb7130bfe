/** Which rod belongs where: the assignment of one list of points to another whose largest distance is least. */
import type { Point } from "../geometry/index.js";
import { millimetresBetween } from "../geometry/index.js";
import { greatestOf, leastOf } from "../units/extremes.js";

/** For each of the first points the index of its partner, and the largest cost of a pair. */
export interface Assignment {
  readonly partners: readonly number[];
  readonly worst: number;
}

/** What one point may be assigned to: places and costs, index by index. */
export interface Edges {
  readonly to: Int32Array;
  readonly cost: Float64Array;
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
  if (limit === Infinity) return assignBy(from, to, 0, (_from, _to, distance) => distance);
  const edges: Edges[] = [];
  for (const point of from) {
    const near = edgesWithin(point, to, limit);
    if (near.to.length === 0) return null;
    edges.push(near);
  }
  return assignEdges(edges);
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

/** Places nearer to a point than `limit`, each with its distance in millimetres. */
export function edgesWithin(point: Point, { points, order }: Places, limit: number): Edges {
  const [to, costs]: [number[], number[]] = [[], []];
  for (let k = firstAtLeast(order, points, point.x - limit); k < order.length; k++) {
    const j = order[k] as number;
    const at = points[j] as Point;
    if (at.x > point.x + limit) break;
    if (Math.abs(at.y - point.y) >= limit) continue;
    const cost = millimetresBetween(point, at);
    if (cost >= limit) continue;
    to.push(j);
    costs.push(cost);
  }
  return { to: Int32Array.from(to), cost: Float64Array.from(costs) };
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

/** First look for partners within this many millimetres, and the slack. */
const FIRST_LOOK = 50;

/**
 * The assignment with the least largest cost, where `costOf` is the distance less `slack` at most: places far away are looked
 * at only where near ones do not do. The same as over all of them.
 */
export function assignBy(
  from: readonly Point[],
  to: Places,
  slack: number,
  costOf: (from: number, to: number, distance: number) => number,
): Assignment | null {
  const near = from.map((point, i) =>
    inOrder(edgesWithin(point, to, FIRST_LOOK + slack), (place, distance) => costOf(i, place, distance)),
  );
  const found = assignEdges(near);
  if (found !== null && found.worst < FIRST_LOOK) return found;
  const every = Int32Array.from(to.points.keys());
  return assignEdges(from.map((_, i) => ({ to: every, cost: costsOfAll(from, i, to, costOf) })));
}

/** A loop, since it runs some ten thousand times for a plate of many rods. */
function costsOfAll(
  from: readonly Point[],
  i: number,
  { points }: Places,
  costOf: (from: number, to: number, distance: number) => number,
): Float64Array {
  const at = from[i] as Point;
  const cost = new Float64Array(points.length);
  for (let j = 0; j < points.length; j++) cost[j] = costOf(i, j, millimetresBetween(at, points[j] as Point));
  return cost;
}

/** The same places in the order of their numbers, each at its own cost. */
function inOrder({ to, cost }: Edges, costOf: (to: number, distance: number) => number): Edges {
  const order = [...to.keys()].sort((a, b) => (to[a] as number) - (to[b] as number));
  return {
    to: Int32Array.from(order, (k) => to[k] as number),
    cost: Float64Array.from(order, (k) => costOf(to[k] as number, cost[k] as number)),
  };
}

/**
 * The assignment over costs of some of the places, a row a point, with the least largest one; null where there is none. First
 * the least that any assignment needs: often it is enough.
 */
export function assignEdges(edges: readonly Edges[]): Assignment | null {
  if (edges.some(({ to }) => to.length === 0)) return null;
  const least = greatestOf(edges.map(({ cost }) => leastOf(cost)));
  const first = matchRows(edges, least);
  if (first.placed === edges.length) return { partners: partnersOf(first.holders), worst: least };
  const worst = leastWorst(edges, least, first.holders);
  return worst === null ? null : { partners: partnersOf(matchRows(edges, worst).holders), worst };
}

function partnersOf(holders: Int32Array): readonly number[] {
  const partners = new Array<number>(holders.length).fill(-1);
  holders.forEach((row, to) => {
    partners[row] = to;
  });
  return partners;
}

/** As many rows as edges up to `most` can hold, by augmenting paths. `holders`: the row at each place, or -1. */
function matchRows(edges: readonly Edges[], most: number): { readonly holders: Int32Array; readonly placed: number } {
  const holders = new Int32Array(edges.length).fill(-1);
  const seen = new Int32Array(edges.length).fill(-1);
  const place = (row: number, round: number): boolean => {
    const { to, cost } = edges[row] as Edges;
    for (let k = 0; k < to.length; k++) {
      const at = to[k] as number;
      if ((cost[k] as number) > most || seen[at] === round) continue;
      seen[at] = round;
      const holder = holders[at] as number;
      if (holder >= 0 && !place(holder, round)) continue;
      holders[at] = row;
      return true;
    }
    return false;
  };
  let placed = 0;
  for (let row = 0; row < edges.length; row++) if (place(row, row)) placed++;
  return { holders, placed };
}

/**
 * The least largest cost of a complete matching; null where there is none. What is matched at `least`, which every matching
 * needs, is kept; each row left over takes the augmenting path whose largest cost is least (Derigs and Zimmermann 1978).
 */
function leastWorst(edges: readonly Edges[], least: number, holders: Int32Array): number | null {
  const isPlaced = new Set(holders);
  let worst = least;
  for (let row = 0; row < edges.length; row++) {
    if (isPlaced.has(row)) continue;
    const needed = augment(edges, holders, row);
    if (needed === null) return null;
    worst = Math.max(worst, needed);
  }
  return worst;
}

/** Places a row by the path whose largest cost is least, and says that cost; null where there is no path. */
function augment(edges: readonly Edges[], holders: Int32Array, start: number): number | null {
  const reach = new Float64Array(edges.length).fill(Infinity);
  const from = new Int32Array(edges.length).fill(-1);
  const done = new Uint8Array(edges.length);
  let [row, largest] = [start, -Infinity];
  for (;;) {
    const { to, cost } = edges[row] as Edges;
    for (let k = 0; k < to.length; k++) {
      const at = to[k] as number;
      const through = Math.max(largest, cost[k] as number);
      if (done[at] === 1 || through >= (reach[at] as number)) continue;
      reach[at] = through;
      from[at] = row;
    }
    const next = nearestOpen(reach, done);
    if (next < 0) return null;
    done[next] = 1;
    largest = reach[next] as number;
    row = holders[next] as number;
    if (row >= 0) continue;
    takePath(holders, from, next, start);
    return largest;
  }
}

function nearestOpen(reach: Float64Array, done: Uint8Array): number {
  let nearest = -1;
  let least = Infinity;
  for (let to = 0; to < reach.length; to++) {
    const cost = reach[to] ?? Infinity;
    if (done[to] === 1 || cost >= least) continue;
    nearest = to;
    least = cost;
  }
  return nearest;
}

/** Walks back from a free place: each row on the way gives up its place to the one before. */
function takePath(holders: Int32Array, from: Int32Array, free: number, start: number): void {
  for (let to = free; to >= 0; ) {
    const row = from[to] ?? -1;
    const held = row === start ? -1 : holders.indexOf(row);
    holders[to] = row;
    to = held;
  }
}
