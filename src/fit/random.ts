/**
 * Random numbers for trials: pure-rand's xoroshiro128+ from a seed, the same on every machine. Values are made with + - * /
 * and comparisons only; a logarithm decides over about 1 in 80 draws of a normal and never enters a value, so that engines
 * whose logarithms differ in the last digit agree.
 */
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";

/** Draws of one stream. */
export interface RandomSource {
  /** Uniform in (-1, 1), in steps of 2^-31, never 0. */
  signed(): number;
  /** Normal with mean 0 and deviation 1. */
  normal(): number;
}

/** First draws that are thrown away: they still show the bits of the seed. */
const WARM_UP = 32;
const STEP = 2 ** -31;

/** The stream of a seed, a whole number of 32 bits. */
export function randomSource(seed: number): RandomSource {
  if (!Number.isInteger(seed) || Math.abs(seed) > 0xffffffff)
    throw new RangeError(`a seed is a whole number of 32 bits: ${seed}`);
  const generator = xoroshiro128plus(seed | 0);
  for (let i = 0; i < WARM_UP; i++) generator.next();
  const signed = (): number => (generator.next() + 0.5) * STEP;
  return { signed, normal: () => normal(signed) };
}

/** J. L. Leva, A fast normal random number generator, ACM TOMS 18 (1992) 449: ratio of uniforms with quadratic bounds. */
const LEVA = {
  s: 0.449871,
  t: -0.386595,
  a: 0.196,
  b: 0.25472,
  inner: 0.27597,
  outer: 0.27846,
  width: 1.7156,
} as const;

function normal(signed: () => number): number {
  for (;;) {
    const u = (signed() + 1) / 2;
    const v = (LEVA.width / 2) * signed();
    const x = u - LEVA.s;
    const y = Math.abs(v) - LEVA.t;
    const q = x * x + y * (LEVA.a * y - LEVA.b * x);
    if (q < LEVA.inner || (q <= LEVA.outer && v * v <= -4 * u * u * Math.log(u))) return v / u;
  }
}
