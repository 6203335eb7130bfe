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

/** The unit that was read and the one that was meant, the commonest first. */
const PAIRS: readonly (readonly [read: SlipUnit, meant: SlipUnit])[] = [
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

/** A length that would be plausible, and the slip that makes of it what was read, as a question: `12 ft where 12 in is meant?` */
export interface SuspectedSlip {
  readonly meant: number;
  readonly words: string;
}

/** The likeliest slip that makes the length out of a plausible one; null where none does, or where it is plausible as it is. */
export function suspectSlip(length: number, { from, to }: Plausible, unit: Unit): SuspectedSlip | null {
  const fits = (meant: number) => meant >= from && meant <= to;
  if (fits(length)) return null;
  for (const [read, meant] of PAIRS) {
    const undone = (length / NM[read]) * NM[meant];
    if (!fits(undone)) continue;
    const figure = figureIn(length, read);
    return { meant: undone, words: `${figure} ${read} where ${figure} ${meant} is meant?` };
  }
  const ten = TENS.find((factor) => fits(length / factor));
  if (ten === undefined) return null;
  const shown = (value: number) => formatLength(Math.round(value), unit);
  return { meant: length / ten, words: `${shown(length)} where ${shown(length / ten)} is meant?` };
}

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
  return slip === undefined ? "" : `${NAMES[slip[0]]} where ${NAMES[slip[1]]} are meant?`;
}
