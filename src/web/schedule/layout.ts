/** Where the lines of the schedule stand, so that only those in sight are drawn. */
import type { LiveBase } from "../../tasks/live/model.js";
import type { Fault } from "./lines.js";

/** Heights in dots. */
export interface Heights {
  readonly base: number;
  readonly group: number;
  readonly fault: number;
}

/** Bases that are shown, in order: where each begins, in dots and in lines. One entry more than bases: the end. */
export interface Layout {
  readonly shown: readonly number[];
  readonly tops: readonly number[];
  readonly firsts: readonly number[];
  readonly groups: readonly number[];
  readonly heights: Heights;
}

/** A line of cells: the place of its base among those shown, and 0, or the number of a group from 1. */
export interface Spot {
  readonly at: number;
  readonly sub: number;
}

/** Lays the shown bases out. */
export function layOut(
  bases: readonly LiveBase[],
  shown: readonly number[],
  faults: ReadonlyMap<number, readonly Fault[]>,
  heights: Heights,
): Layout {
  const [tops, firsts, groups]: [number[], number[], number[]] = [[0], [0], []];
  for (const index of shown) {
    const base = bases[index];
    const count = base === undefined ? 0 : groupsOf(base);
    const told = faults.get(index)?.length ?? 0;
    groups.push(count);
    tops.push((tops.at(-1) ?? 0) + heights.base + count * heights.group + told * heights.fault);
    firsts.push((firsts.at(-1) ?? 0) + 1 + count + told);
  }
  return { shown, tops, firsts, groups, heights };
}

/** How many groups of rods a base has; 0 where it has none of its own. */
export function groupsOf({ written, given }: LiveBase): number {
  let count = 0;
  for (const texts of [written, given])
    for (const path in texts)
      if (path.startsWith("groups[")) count = Math.max(count, Number.parseInt(path.slice(7), 10) + 1);
  return count;
}

/** Places of the first base in sight and of the one after the last, a few more at either end. */
export function inSight({ tops }: Layout, from: number, to: number): readonly [number, number] {
  const first = placeAt(tops, from);
  const last = placeAt(tops, to) + 1;
  return [Math.max(0, first - 4), Math.min(tops.length - 1, last + 4)];
}

/** The place of the base that stands at a height. */
export function placeAt(tops: readonly number[], y: number): number {
  let [low, high] = [0, Math.max(0, tops.length - 2)];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((tops[middle] ?? 0) <= y) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Top and bottom of a line of cells. */
export function edgesOf({ tops, heights }: Layout, { at, sub }: Spot): readonly [number, number] {
  const top = (tops[at] ?? 0) + (sub === 0 ? 0 : heights.base + (sub - 1) * heights.group);
  return [top, top + (sub === 0 ? heights.base : heights.group)];
}

/** So many lines of cells farther down, or up; stops at the ends. */
export function moved({ shown, groups }: Layout, spot: Spot, by: number): Spot {
  let { at, sub } = spot;
  for (let left = Math.abs(by); left > 0; left -= 1) {
    if (by > 0) {
      if (sub < (groups[at] ?? 0)) sub += 1;
      else if (at < shown.length - 1) [at, sub] = [at + 1, 0];
      else break;
    } else if (sub > 0) sub -= 1;
    else if (at > 0) [at, sub] = [at - 1, groups[at - 1] ?? 0];
    else break;
  }
  return { at, sub };
}

/** The last line. */
export function lastSpot({ shown, groups }: Layout): Spot {
  const at = Math.max(0, shown.length - 1);
  return { at, sub: groups[at] ?? 0 };
}

/** Which comes first. */
export function compareSpots(a: Spot, b: Spot): number {
  return a.at - b.at || a.sub - b.sub;
}

/** A spot that is there, the nearest to one that may be no more. */
export function held({ shown, groups }: Layout, { at, sub }: Spot): Spot {
  const near = Math.min(Math.max(0, at), Math.max(0, shown.length - 1));
  return { at: near, sub: Math.min(sub, groups[near] ?? 0) };
}

/** Every line of cells from one to the other, both taken in. */
export function spotsBetween(layout: Layout, a: Spot, b: Spot): readonly Spot[] {
  const [first, last] = compareSpots(a, b) <= 0 ? [a, b] : [b, a];
  const spots: Spot[] = [];
  for (let spot = first; compareSpots(spot, last) <= 0; ) {
    spots.push(spot);
    const next = moved(layout, spot, 1);
    if (compareSpots(next, spot) === 0) break;
    spot = next;
  }
  return spots;
}
