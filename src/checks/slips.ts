/** Slips of the hand: a length that stands in another unit than was meant, or whose decimal point was lost. Guesses, never taken for it. */
import type { Unit } from "../units/index.js";
import { formatLength, NM_PER_INCH, NM_PER_MM } from "../units/index.js";

type SlipUnit = "in" | "ft" | "mm" | "m";

const NM: Readonly<Record<SlipUnit, number>> = {
  in: NM_PER_INCH,
  ft: 12 * NM_PER_INCH,
  mm: NM_PER_MM,
  m: 1000 * NM_PER_MM,
};

const NAMES: Readonly<Record<SlipUnit, string>> = { in: "inches", ft: "feet", mm: "millimetres", m: "metres" };

/** The unit that was read and the one that was meant. */
export type SlipPair = readonly [read: SlipUnit, meant: SlipUnit];

/** The commonest first. */
const PAIRS: readonly SlipPair[] = [
  ["ft", "in"],
  ["in", "ft"],
  ["in", "mm"],
  ["mm", "in"],
  ["m", "ft"],
  ["ft", "m"],
  ["m", "mm"],
  ["mm", "m"],
  ["ft", "mm"],
  ["mm", "ft"],
];

/** Factors of a decimal point that was lost, or set one place too far left. */
const TENS: readonly number[] = [10, 1 / 10];

/** Lengths that would be plausible, in nanometres, both ends included. */
export interface Plausible {
  readonly from: number;
  readonly to: number;
}

/** A length and what would be plausible for it. */
interface Judged {
  readonly value: number;
  readonly plausible: Plausible;
}

/** A length that would be plausible, and the slip that makes of it what was read, as a question: `12 ft where 12 in is meant?` */
export interface SuspectedSlip {
  readonly meant: number;
  readonly words: string;
}

/**
 * The likeliest slip that makes the length out of a plausible one: of the pair that other lengths suggest, else the one whose figure
 * is the roundest. null where none does, or where the length is plausible as it is.
 */
export function suspectSlip(
  length: number,
  plausible: Plausible,
  unit: Unit,
  favoured: SlipPair | null = null,
): SuspectedSlip | null {
  if (isWithin(length, plausible)) return null;
  const fitting = PAIRS.filter((pair) => explains(pair, { value: length, plausible }));
  const [best] = fitting.toSorted((a, b) => rankOf(length, a, favoured) - rankOf(length, b, favoured));
  if (best !== undefined) {
    const figure = figureIn(length, best[0]);
    return { meant: undone(length, best), words: `${figure} ${best[0]} where ${figure} ${best[1]} is meant?` };
  }
  const ten = TENS.find(
    (factor) => isWithin(length / factor, plausible) && roughness(length / factor, unit) < ROUGHEST,
  );
  if (ten === undefined) return null;
  const shown = (value: number) => formatLength(Math.round(value), unit);
  return { meant: length / ten, words: `${shown(length)} where ${shown(length / ten)} is meant?` };
}

/** The pair that explains most of the lengths that are not plausible, where it explains two at least: a whole job in another unit. */
export function favouredPair(lengths: readonly Judged[]): SlipPair | null {
  const strange = lengths.filter(({ value, plausible }) => !isWithin(value, plausible));
  const ranked = PAIRS.map((pair) => ({ pair, count: strange.filter((length) => explains(pair, length)).length }));
  const [best] = ranked.toSorted((a, b) => b.count - a.count);
  return best === undefined || best.count < 2 ? null : best.pair;
}

function isWithin(length: number, { from, to }: Plausible): boolean {
  return length >= from && length <= to;
}

/** A figure that nobody would write explains nothing. */
function explains(pair: SlipPair, { value, plausible }: Judged): boolean {
  if (isSurveyed(pair) && Math.abs(value) < SURVEYED) return false;
  return isWithin(undone(value, pair), plausible) && isFigure(value, pair[0]) && isWritten(value, pair);
}

const OTHERS: Readonly<Record<SlipUnit, readonly SlipUnit[]>> = {
  in: ["mm", "m"],
  ft: ["mm", "m"],
  mm: ["in", "ft"],
  m: ["in", "ft"],
};

/** A round figure, or a decimal where the other system has no round one: 100 ft was not typed as 30.48 m. */
function isFigure(value: number, unit: SlipUnit): boolean {
  const own = roughness(value, unit);
  return own < ROUGHEST || (own === ROUGHEST && OTHERS[unit].every((other) => roughness(value, other) >= ROUGHEST));
}

/** Parts of a foot are written as halves and quarters, if at all: 2-1/4 in is not 0.1875 ft. */
function isWritten(value: number, [read]: SlipPair): boolean {
  return read !== "ft" || Math.abs(value) >= NM.ft || roughness(value, read) <= 2;
}

/** Metres and feet are mixed up in distances and elevations, not in sizes of plates: from this on. */
const SURVEYED = 3 * NM.m;

function isSurveyed(pair: SlipPair): boolean {
  return pair.every((unit) => unit === "m" || unit === "ft");
}

function undone(length: number, [read, meant]: SlipPair): number {
  return (length / NM[read]) * NM[meant];
}

function rankOf(length: number, pair: SlipPair, favoured: SlipPair | null): number {
  return pair === favoured ? -1 : roughness(length, pair[0]);
}

/** 0 for a whole number of the unit, 1 to 4 for halves to sixteenths, 5 for a decimal of up to three places, then `ROUGHEST` + 1. */
function roughness(length: number, unit: SlipUnit): number {
  const figure = length / NM[unit];
  const isWhole = (value: number) => Math.abs(value - Math.round(value)) < 1e-6;
  const halvings = [0, 1, 2, 3, 4].find((power) => isWhole(figure * 2 ** power));
  return halvings ?? (isWhole(figure * 1000) ? ROUGHEST : ROUGHEST + 1);
}

const ROUGHEST = 5;

/** The length as a number of one unit: inches as fractions, the others as decimals. */
function figureIn(length: number, unit: SlipUnit): string {
  if (unit === "in" || unit === "mm") return formatLength(Math.round(length), unit);
  return String(Number((length / NM[unit]).toFixed(4)));
}

/** How near a ratio is to that of a slip. */
const SAME_RATIO = 1e-3;

/** What a ratio of two distances that should be one suggests: `feet where inches are meant?`; "" for any other. */
export function suspectRatio(ratio: number): string {
  const slip = PAIRS.find(([read, meant]) => Math.abs((ratio * NM[meant]) / NM[read] - 1) < SAME_RATIO);
  if (slip !== undefined) return `${NAMES[slip[0]]} where ${NAMES[slip[1]]} are meant?`;
  const ten = TENS.find((factor) => Math.abs(ratio / factor - 1) < SAME_RATIO);
  return ten === undefined ? "" : `a decimal point too far ${ten > 1 ? "right" : "left"}?`;
}
