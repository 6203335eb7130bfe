/** The probability by trials, and the distribution of spare clearance over the first of them. Millimetres. */
import type { DropCounts, ErrorSpread, ErrorTerm, Trials } from "../fit/index.js";
import { countDrops, fitTrials, standardErrorOf } from "../fit/index.js";
import type { BudgetRod, BudgetSpec, Governs, Histogram, PlateFreedom, Probability } from "./model.js";
import { isShared } from "./terms.js";

const PER_MM = 2e6;
const BATCH = 2000;
const LEAST_SAMPLES = 4000;
/** Trials that are fitted whole, for the picture. */
const PICTURE_SAMPLES = 4000;

/** Most trials of a base. */
export const MOST_SAMPLES = 2_000_000;

/** What is tried for these rods. */
export function trialsOf(rods: readonly BudgetRod[], spec: BudgetSpec): Trials {
  const { spread, sigmas, common, maxTurn, seed } = spec;
  const shape: ErrorSpread =
    spread === "uniform" ? { kind: "uniform" } : { kind: "normal", sigma: 1 / sigmas, truncated: true };
  return {
    holes: rods.map(({ at: { x, y }, clearanceTwice }) => ({ x, y, clearance: clearanceTwice / PER_MM })),
    terms: errorTerms(rods, shape, common > 0),
    maxTurn,
    seed,
  };
}

/** With a common part, placing and setting draw it even where it is zero: the draws do not hang on any size. */
function errorTerms(rods: readonly BudgetRod[], spread: ErrorSpread, common: boolean): readonly ErrorTerm[] {
  const reach = (of: (rod: BudgetRod) => number | undefined) => rods.map((rod) => (of(rod) ?? 0) / PER_MM);
  return (rods[0]?.terms ?? []).flatMap((term, k): ErrorTerm[] => {
    const shape = { zone: term.zone === "round" ? "disc" : "square", spread } as const;
    const own = { ...shape, common: false, reach: reach(({ terms }) => terms[k]?.twice) };
    if (!common || !isShared(term)) return [own];
    return [own, { ...shape, common: true, reach: reach(({ terms }) => terms[k]?.commonTwice) }];
  });
}

/** Trials until the standard error asked for is reached, `least` of them at least, or the most. */
export function estimate(trials: Trials, { plate, standardError }: BudgetSpec, least: number): Probability {
  const enough = (counts: DropCounts): boolean =>
    counts.samples >= MOST_SAMPLES ||
    (counts.samples >= Math.max(least, LEAST_SAMPLES) && cautiousError(counts, plate) <= standardError);
  return sharesOf(countDrops(trials, BATCH, enough), plate);
}

/** A given number of trials, rounded up to whole batches. */
export function estimateWith(trials: Trials, samples: number, plate: PlateFreedom): Probability {
  return sharesOf(
    countDrops(trials, BATCH, (counts) => counts.samples >= samples),
    plate,
  );
}

/** With two trials of each outcome added (Agresti and Coull 1998), since a share of 0 or 1 would end too early. */
function cautiousError(counts: DropCounts, plate: PlateFreedom): number {
  return standardErrorOf((counts[plate] + 2) / (counts.samples + 4), counts.samples + 4);
}

function sharesOf({ samples, held, shifted, free }: DropCounts, plate: PlateFreedom): Probability {
  const shares = { held: held / samples, shifted: shifted / samples, free: free / samples };
  return { ...shares, standardError: standardErrorOf(shares[plate], samples), samples };
}

/** Spare clearance and deciding rods of each of the first trials. */
export interface Picture {
  readonly histogram: Histogram;
  readonly rods: Governs["rods"];
}

/** Fits the first trials whole; steps of the histogram by unit. */
export function drawPicture(
  trials: Trials,
  rods: readonly BudgetRod[],
  plate: PlateFreedom,
  steps: readonly number[],
): Picture {
  const spares: number[] = [];
  const weights = rods.map(() => 0);
  for (const { value, active } of fitTrials(trials, PICTURE_SAMPLES, plate)) {
    spares.push(-value * 1e6);
    for (const hole of active) weights[hole] = (weights[hole] ?? 0) + 1 / active.length / PICTURE_SAMPLES;
  }
  const ranked = rods.map(({ tag }, i) => ({ tag, share: weights[i] ?? 0 })).sort((a, b) => b.share - a.share);
  return { histogram: histogramOf(spares, steps), rods: ranked };
}

const MOST_BINS = 36;
/** Fits are certified to far less than this: a rod in touch is inside. */
const TOUCH = 1;

/** The finest of the steps that needs no more bins than look well. */
export function histogramOf(spares: readonly number[], steps: readonly number[]): Histogram {
  const least = spares.reduce((low, spare) => Math.min(low, spare), Number.POSITIVE_INFINITY);
  const most = spares.reduce((high, spare) => Math.max(high, spare), Number.NEGATIVE_INFINITY);
  const step = steps.find((each) => (most - least) / each <= MOST_BINS) ?? steps.at(-1) ?? 1;
  const bin = (spare: number): number => Math.floor((spare < 0 && spare >= -TOUCH ? 0 : spare) / step);
  const from = bin(least);
  const counts = Array.from({ length: bin(most) - from + 1 }, () => 0);
  for (const spare of spares) counts[bin(spare) - from] = (counts[bin(spare) - from] ?? 0) + 1;
  const drops = spares.filter((spare) => spare >= -TOUCH).length;
  const mean = spares.reduce((sum, spare) => sum + spare, 0) / spares.length;
  return { step, from, counts, samples: spares.length, drops, mean };
}
