/**
 * The mask of a QR code (ISO/IEC 18004, "Data masking"): each of the eight is scored and the best is taken, the one that the
 * library itself would choose, in a fraction of its time: what a version has under each mask is made once.
 */
import { encode } from "uqr";

/** Rows of modules, true where dark. */
export type Modules = readonly (readonly boolean[])[];

/** Of error correction: 15 % of a code may be lost. */
const LEVEL = "M";
const MASKS = [0, 1, 2, 3, 4, 5, 6, 7] as const;

/** The modules of a text, masked best. */
export function encodeQr(text: string): { readonly size: number; readonly data: Modules } {
  const { version, size, data } = encode(text, { ecc: LEVEL, border: 0, maskPattern: 0 });
  const first = Uint8Array.from(data.flat(), Number);
  let [best, least] = [first, Number.POSITIVE_INFINITY];
  for (const own of masksOf(version)) {
    const masked = first.map((dark, i) => dark ^ (own[i] ?? 0));
    const penalty = penaltyOf(masked, size);
    if (penalty < least) [best, least] = [masked, penalty];
  }
  return { size, data: data.map((row, y) => row.map((_, x) => best[y * size + x] === 1)) };
}

const known = new Map<number, readonly Uint8Array[]>();

/** What each mask turns of a code under mask 0, in this version: it does not depend on the text. */
function masksOf(version: number): readonly Uint8Array[] {
  const found = known.get(version);
  if (found !== undefined) return found;
  const blanks = MASKS.map((mask) => blank(version, mask));
  const [none = new Uint8Array()] = blanks;
  const made = blanks.map((each) => each.map((dark, i) => dark ^ (none[i] ?? 0)));
  known.set(version, made);
  return made;
}

function blank(version: number, maskPattern: number): Uint8Array {
  const options = { ecc: LEVEL, border: 0, maskPattern, minVersion: version, maxVersion: version } as const;
  return Uint8Array.from(encode("", options).data.flat(), Number);
}

/** How hard a code is to read: long runs, blocks, what looks like a finder, and what is far from half dark. */
function penaltyOf(modules: Uint8Array, size: number): number {
  let [penalty, dark] = [0, 0];
  const runs = new Int32Array(size + 2);
  for (let line = 0; line < size; line += 1) {
    penalty += linePenalty(modules, { from: line * size, step: 1, size }, runs);
    penalty += linePenalty(modules, { from: line, step: size, size }, runs);
  }
  for (let i = 0; i < modules.length; i += 1) {
    dark += modules[i] ?? 0;
    if (i % size < size - 1 && i + size < modules.length && isBlock(modules, i, size)) penalty += BLOCK;
  }
  return penalty + balancePenalty(dark, modules.length);
}

/** Scores of the standard. */
const [LONG_RUN, BLOCK, FINDER, BALANCE] = [3, 3, 40, 10];

interface Line {
  readonly from: number;
  readonly step: number;
  readonly size: number;
}

/** Runs of a line light and dark in turn, a light one first; the paper around it is light. */
function linePenalty(modules: Uint8Array, { from, step, size }: Line, runs: Int32Array): number {
  let [penalty, color, run, count] = [0, 0, 0, 0];
  for (let k = 0, i = from; k < size; k += 1, i += step) {
    if (modules[i] === color) {
      run += 1;
      if (run === 5) penalty += LONG_RUN;
      else if (run > 5) penalty += 1;
      continue;
    }
    runs[count] = count === 0 ? run + size : run;
    if (color === 0) penalty += finderPenalty(runs, count);
    count += 1;
    color = 1 - color;
    run = 1;
  }
  if (color === 1) {
    runs[count] = run;
    count += 1;
    run = 0;
  }
  runs[count] = run + size;
  return penalty + finderPenalty(runs, count);
}

/** Dark 1, light 1, dark 3, light 1, dark 1, light 4 at one end: up to the light run at `last`. */
function finderPenalty(runs: Int32Array, last: number): number {
  if (last < 6) return 0;
  const back = (k: number): number => runs[last - k] ?? 0;
  const n = back(1);
  if (back(2) !== n || back(3) !== 3 * n || back(4) !== n || back(5) !== n) return 0;
  const [after, before] = [back(0), back(6)];
  return (after >= 4 * n && before >= n ? FINDER : 0) + (before >= 4 * n && after >= n ? FINDER : 0);
}

/** Four alike, the one at `i` at the upper left. */
function isBlock(modules: Uint8Array, i: number, size: number): boolean {
  const color = modules[i];
  return modules[i + 1] === color && modules[i + size] === color && modules[i + size + 1] === color;
}

/** For each 5 % that the dark ones are off half of all. */
function balancePenalty(dark: number, all: number): number {
  return (Math.ceil(Math.abs(dark * 20 - all * 10) / all) - 1) * BALANCE;
}
