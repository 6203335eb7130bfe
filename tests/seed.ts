/**
 * One seed for whatever tests draw, so that a run repeats on every machine; RODPLATE_SEED draws other cases. Property tests
 * take it by themselves, and draw sixty cases where they name no other number.
 */
import fc from "fast-check";

export const SEED = Number(process.env.RODPLATE_SEED ?? 20261124);
fc.configureGlobal({ seed: SEED, numRuns: 60 });

/** Mulberry32 (public domain, T. Ettinger), 0 to 1: one sequence a `stream`, the same for the same seed. */
export function drawFrom(stream: number): () => number {
  let state = SEED + stream;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
