/** The best filling of one bar by value: a bounded knapsack, by branch and bound. */
import type { Steps } from "./model.js";

/** What may go into a bar. */
export interface FillChoice {
  readonly sizes: readonly number[];
  readonly values: readonly number[];
  /** Most of each. */
  readonly limits: readonly number[];
  readonly capacity: number;
  /** Only a filling that is worth more is looked for. */
  readonly above: number;
}

/** The best that was found; worth `above` and empty where there is none. `isBest`: nothing is better by `gain`. */
export interface BestFill {
  readonly value: number;
  readonly counts: readonly number[];
  readonly isBest: boolean;
}

interface Candidate {
  readonly at: number;
  readonly size: number;
  readonly value: number;
  readonly limit: number;
}

/** Best value per length first; what is worth nothing is left out. */
function candidates({ sizes, values, limits, capacity }: FillChoice): readonly Candidate[] {
  return sizes
    .map((size, at) => ({
      at,
      size,
      value: values[at] ?? 0,
      limit: Math.min(limits[at] ?? 0, Math.floor(capacity / size)),
    }))
    .filter(({ value, limit }) => value > 0 && limit > 0)
    .sort((a, b) => b.value / b.size - a.value / a.size || b.size - a.size);
}

/**
 * Highest value that fits. A branch is left where it cannot be better by `gain`: 1 for whole values, less what a double may
 * be off.
 */
export function fillBar(choice: FillChoice, gain: number, steps: Steps): BestFill {
  const items = candidates(choice);
  const taken = new Array<number>(items.length).fill(0);
  let best = choice.above;
  let bestTaken: readonly number[] = [...taken];
  const search = (k: number, room: number, value: number): void => {
    steps.left -= 1;
    if (value > best) {
      best = value;
      bestTaken = [...taken];
    }
    const item = items[k];
    if (item === undefined || mostFrom(items, k, room) + value < best + gain) return;
    for (let count = Math.min(item.limit, Math.floor(room / item.size)); count >= 0; count--) {
      if (steps.left <= 0) break;
      taken[k] = count;
      search(k + 1, room - count * item.size, value + count * item.value);
    }
    taken[k] = 0;
  };
  search(0, choice.capacity, 0);
  const counts = new Array<number>(choice.sizes.length).fill(0);
  for (const [k, { at }] of items.entries()) counts[at] = bestTaken[k] ?? 0;
  return { value: best, counts, isBest: steps.left > 0 };
}

/** Never less than what is worth taking from item `k` on: the last one that fits is taken in part. */
function mostFrom(items: readonly Candidate[], k: number, room: number): number {
  let [left, value] = [room, 0];
  for (let i = k; i < items.length; i++) {
    const item = items[i];
    if (item === undefined) break;
    const whole = item.limit * item.size;
    if (whole >= left) return value + (left * item.value) / item.size;
    left -= whole;
    value += item.limit * item.value;
  }
  return value;
}

/** Cells of a table of fillings: one a step of room. */
const MOST_CELLS = 20_000;

/**
 * At least the highest value that fits, exact where the sizes are small numbers: sizes are shortened to a grid, so that what
 * fits the bar fits here too. Values are whole.
 */
export function mostInBar({ sizes, values, limits, capacity }: Omit<FillChoice, "above">): number {
  const grid = Math.ceil((capacity + 1) / MOST_CELLS);
  const most = new Float64Array(Math.floor(capacity / grid) + 1);
  for (const { size, value } of batchesOf({ sizes, values, limits, capacity }))
    putBatch(most, Math.floor(size / grid), value, null);
  return most[most.length - 1] ?? 0;
}

/** Cells of a table by which a bar is filled. */
const TABLE_CELLS = 4_000;

/**
 * As `fillBar`, by a table of all rooms, which takes the same time whatever the values: exact for a bar of few units; of a longer one
 * sizes are lengthened to a grid, so that what is found fits.
 */
export function fillByTable(choice: FillChoice): BestFill {
  const grid = Math.ceil(choice.capacity / TABLE_CELLS);
  const fill = fillTable({
    ...choice,
    sizes: choice.sizes.map((size) => Math.ceil(size / grid)),
    capacity: Math.floor(choice.capacity / grid),
  });
  return { ...fill, isBest: grid === 1 };
}

function fillTable(choice: FillChoice): BestFill {
  const { sizes, capacity, above } = choice;
  const most = new Float64Array(capacity + 1);
  const batches = batchesOf(choice);
  const used = batches.map(({ size, value }) => {
    const isUsed = new Uint8Array(capacity + 1);
    putBatch(most, size, value, isUsed);
    return isUsed;
  });
  const counts = new Array<number>(sizes.length).fill(0);
  const value = most[capacity] ?? 0;
  if (value <= above) return { value: above, counts, isBest: true };
  let room = capacity;
  for (let b = batches.length - 1; b >= 0; b--) {
    const batch = batches[b];
    if (batch === undefined || used[b]?.[room] !== 1) continue;
    counts[batch.at] = (counts[batch.at] ?? 0) + batch.count;
    room -= batch.size;
  }
  return { value, counts, isBest: true };
}

interface Batch {
  readonly at: number;
  readonly count: number;
  readonly size: number;
  readonly value: number;
}

/** 1, 2, 4, ... pieces of each size, which together make any count up to its limit. */
function batchesOf({ sizes, values, limits, capacity }: Omit<FillChoice, "above">): readonly Batch[] {
  const batches: Batch[] = [];
  for (const [at, size] of sizes.entries()) {
    const value = values[at] ?? 0;
    let left = value > 0 ? Math.min(limits[at] ?? 0, Math.floor(capacity / size)) : 0;
    for (let batch = 1; left > 0; batch *= 2) {
      const count = Math.min(batch, left);
      left -= count;
      batches.push({ at, count, size: count * size, value: count * value });
    }
  }
  return batches;
}

function putBatch(most: Float64Array, size: number, value: number, used: Uint8Array | null): void {
  for (let room = most.length - 1; room >= size; room--) {
    const other = (most[room - size] ?? 0) + value;
    if (other <= (most[room] ?? 0)) continue;
    most[room] = other;
    if (used !== null) used[room] = 1;
  }
}
