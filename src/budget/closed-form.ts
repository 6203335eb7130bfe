/**
 * Worst case and root-sum-square, in closed form.
 *
 * Worst case of a plate that may shift: rods anywhere in discs of radius R_i, holes of radial clearance c_i. It always drops
 * on if and only if R_i + R_j <= c_i + c_j for every pair. Needed: two rods pushed apart along their line, and no motion
 * changes a distance. Enough: at most one rod has R_i > c_i; shift the plate by (1 - c_i/R_i) of its deviation, and the pair
 * condition covers the others. A common error shifts the plate and drops out. A held plate: R_i <= c_i for every rod.
 */
import type { BudgetRod, BudgetTerm, ClosedForm, Governing } from "./model.js";

type Combine = (reaches: readonly number[]) => number;

const sum: Combine = (reaches) => reaches.reduce((total, reach) => total + reach, 0);
/** Rounded up to 1 nm. */
const rootSumSquare: Combine = (reaches) => Math.ceil(Math.sqrt(sum(reaches.map((reach) => reach * reach))));

/** Every error at its reach, in the worst directions. */
export function worstCase(rods: readonly BudgetRod[]): ClosedForm {
  return closedForm(rods, sum);
}

/** Independent terms by the root of the sum of their squares: a figure of comparison, no probability. */
export function rootSumSquareCase(rods: readonly BudgetRod[]): ClosedForm {
  return closedForm(rods, rootSumSquare);
}

function closedForm(rods: readonly BudgetRod[], combine: Combine): ClosedForm {
  const held = least(rods.map((rod) => ofRod(rod, combine([...own(rod), ...shared(rod)]))));
  return { held, free: rods.length < 2 ? ofRod(firstOf(rods), 0) : freePlate(rods, combine) };
}

function freePlate(rods: readonly BudgetRod[], combine: Combine): Governing {
  const reaches = rods.map(own);
  let governing: Governing | null = null;
  for (const [i, a] of rods.entries()) {
    for (const [k, b] of rods.slice(i + 1).entries()) {
      const error = combine([...(reaches[i] ?? []), ...(reaches[i + 1 + k] ?? [])]);
      const pair = ofPair(a, b, error);
      if (governing === null || pair.spare < governing.spare) governing = pair;
    }
  }
  return governing === null ? ofRod(firstOf(rods), 0) : capped(governing, rods);
}

/** No hole has more to spare than its clearance, nor does a plate fit with a rod larger than its hole. */
function capped(pair: Governing, rods: readonly BudgetRod[]): Governing {
  const tightest = least(rods.map((rod) => ofRod(rod, 0)));
  return tightest.spare < pair.spare ? tightest : pair;
}

/** Twice the reach of each term that is the rod's own; a square zone by the circle around it, rounded up. */
function own({ terms }: BudgetRod): readonly number[] {
  return terms.map((term) => around(term, term.twice));
}

function shared({ terms }: BudgetRod): readonly number[] {
  return terms.filter(({ commonTwice }) => commonTwice > 0).map((term) => around(term, term.commonTwice));
}

/** Twice the radius of the circle around a zone. */
export function around({ zone }: Pick<BudgetTerm, "zone">, twice: number): number {
  return zone === "square" ? Math.ceil(twice * Math.SQRT2) : twice;
}

function ofRod({ tag, clearanceTwice }: BudgetRod, errorTwice: number): Governing {
  const spare = (clearanceTwice - errorTwice) / 2;
  return { subject: tag, tags: [tag], errorTwice, clearanceTwice, holds: errorTwice <= clearanceTwice, spare };
}

function ofPair(a: BudgetRod, b: BudgetRod, errorTwice: number): Governing {
  const clearanceTwice = a.clearanceTwice + b.clearanceTwice;
  return {
    subject: `${a.tag}-${b.tag}`,
    tags: [a.tag, b.tag],
    errorTwice,
    clearanceTwice,
    holds: errorTwice <= clearanceTwice,
    spare: (clearanceTwice - errorTwice) / 4,
  };
}

function least(all: readonly Governing[]): Governing {
  return all.reduce((worst, each) => (each.spare < worst.spare ? each : worst));
}

function firstOf(rods: readonly BudgetRod[]): BudgetRod {
  const [first] = rods;
  if (first === undefined) throw new RangeError("a base without rods");
  return first;
}
