/** Trials: how often the plate drops on when held, when it may shift, and when it may shift and turn. */
import { dropTest } from "./drop-test.js";
import type { ErrorTerm } from "./errors.js";
import { drawErrors } from "./errors.js";
import { fitPlate } from "./fit-plate.js";
import type { Fit, FitHole } from "./model.js";
import { randomSource } from "./random.js";

/** What is tried. Errors are those of the rods against the holes, in the unit of the holes. */
export interface Trials {
  readonly holes: readonly FitHole[];
  readonly terms: readonly ErrorTerm[];
  /** Radians either way. */
  readonly maxTurn: number;
  readonly seed: number;
}

/** Counts of trials that drop on; each is part of the next. */
export interface DropCounts {
  readonly samples: number;
  readonly held: number;
  readonly shifted: number;
  readonly free: number;
}

/** Runs trials in batches until `enough` says so. The same seed gives the same trials, however they are batched. */
export function countDrops(trials: Trials, batch: number, enough: (counts: DropCounts) => boolean): DropCounts {
  const { holes, terms, maxTurn, seed } = trials;
  const dx = new Float64Array(holes.length);
  const dy = new Float64Array(holes.length);
  const draw = drawErrors(terms, randomSource(seed), dx, dy);
  const test = dropTest(holes, maxTurn);
  let [samples, held, shifted, free] = [0, 0, 0, 0];
  do {
    for (let i = 0; i < batch; i++) {
      draw();
      const drop = test.judge(dx, dy);
      if (drop === "held") held++;
      if (drop === "held" || drop === "shifted") shifted++;
      if (drop !== "none") free++;
    }
    samples += batch;
  } while (!enough({ samples, held, shifted, free }));
  return { samples, held, shifted, free };
}

/** The first `samples` of the same trials, each with its whole fit. */
export function* fitTrials({ holes, terms, maxTurn, seed }: Trials, samples: number): Generator<Fit> {
  const dx = new Float64Array(holes.length);
  const dy = new Float64Array(holes.length);
  const draw = drawErrors(terms, randomSource(seed), dx, dy);
  for (let i = 0; i < samples; i++) {
    draw();
    const rods = holes.map(({ x, y }, k) => ({ x: x + (dx[k] as number), y: y + (dy[k] as number) }));
    yield fitPlate(holes, rods, { maxTurn });
  }
}

/** Binomial standard error of a share. */
export function standardErrorOf(share: number, samples: number): number {
  return Math.sqrt((share * (1 - share)) / samples);
}
