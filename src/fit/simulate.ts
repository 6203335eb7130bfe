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

/** What may be done with the plate. */
export type Freedom = "held" | "shifted" | "free";

/** The first `samples` of the same trials, each with the whole fit of a plate that is held, may shift, or may turn too. */
export function* fitTrials(
  { holes, terms, maxTurn, seed }: Trials,
  samples: number,
  freedom: Freedom,
): Generator<Pick<Fit, "value" | "active">> {
  const dx = new Float64Array(holes.length);
  const dy = new Float64Array(holes.length);
  const draw = drawErrors(terms, randomSource(seed), dx, dy);
  for (let i = 0; i < samples; i++) {
    draw();
    if (freedom === "held") yield fitHeld(holes, dx, dy);
    else {
      const rods = holes.map(({ x, y }, k) => ({ x: x + (dx[k] as number), y: y + (dy[k] as number) }));
      yield fitPlate(holes, rods, { maxTurn: freedom === "free" ? maxTurn : 0 });
    }
  }
}

function fitHeld(holes: readonly FitHole[], dx: Float64Array, dy: Float64Array): Pick<Fit, "value" | "active"> {
  let value = Number.NEGATIVE_INFINITY;
  let active = 0;
  for (const [i, { clearance }] of holes.entries()) {
    const [x, y] = [dx[i] as number, dy[i] as number];
    const over = Math.sqrt(x * x + y * y) - clearance;
    if (over <= value) continue;
    value = over;
    active = i;
  }
  return { value, active: [active] };
}

/** Binomial standard error of a share. */
export function standardErrorOf(share: number, samples: number): number {
  return Math.sqrt((share * (1 - share)) / samples);
}
