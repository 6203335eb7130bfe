/** How likely a plate drops on, by trials with a seed. */
import type { ErrorTerm } from "./errors.js";
import type { FitHole } from "./model.js";
import { countDrops, standardErrorOf } from "./simulate.js";

/** `disc`: even in the circle of radius `size`. `normal`: `size` is the deviation per axis, not cut off. */
export interface PositionError {
  readonly kind: "disc" | "normal";
  readonly size: number;
}

/** Holes, errors and trials of `fitProbability`; holes and errors in one length unit of any kind. */
export interface ProbabilityRequest {
  readonly holes: readonly FitHole[];
  /** Independent for each rod. */
  readonly rodError: PositionError;
  /** Of each hole of the plate, independent; omitted: none. */
  readonly holeError?: PositionError | undefined;
  /** Radians either way. */
  readonly maxTurn: number;
  readonly samples: number;
  /** A whole number of 32 bits: the same seed gives the same result. */
  readonly seed: number;
}

/** Shares of the trials in which the plate drops on. */
export interface FitProbability {
  /** The plate held in its place. */
  readonly fixed: number;
  /** Free to shift. */
  readonly shifted: number;
  /** Free to shift and turn. */
  readonly free: number;
  /** Binomial standard error of `free`. */
  readonly standardError: number;
}

/** Shares over `samples` trials; any one length unit. */
export function fitProbability(request: ProbabilityRequest): FitProbability {
  refuseNonsense(request);
  const { holes, rodError, holeError, maxTurn, samples, seed } = request;
  const errors = holeError === undefined ? [rodError] : [rodError, holeError];
  const terms = errors.map((error) => termOf(error, holes.length));
  const { held, shifted, free } = countDrops({ holes, terms, maxTurn, seed }, samples, () => true);
  const share = free / samples;
  return {
    fixed: held / samples,
    shifted: shifted / samples,
    free: share,
    standardError: standardErrorOf(share, samples),
  };
}

function termOf({ kind, size }: PositionError, count: number): ErrorTerm {
  const spread =
    kind === "disc" ? ({ kind: "uniform" } as const) : ({ kind: "normal", sigma: 1, truncated: false } as const);
  return { zone: "disc", spread, reach: Array.from({ length: count }, () => size), common: false };
}

function refuseNonsense({ holes, rodError, holeError, maxTurn, samples }: ProbabilityRequest): void {
  if (holes.length === 0) throw new RangeError("a plate needs a hole at least");
  const bad = holes.flatMap(({ x, y, clearance }) => [x, y, clearance]).find((figure) => !Number.isFinite(figure));
  if (bad !== undefined) throw new RangeError(`not a number: ${bad}`);
  if (!(maxTurn >= 0 && maxTurn <= Math.PI)) throw new RangeError(`maxTurn must lie in 0 to pi, not ${maxTurn}`);
  if (!(Number.isSafeInteger(samples) && samples > 0))
    throw new RangeError(`samples must be a whole number above zero, not ${samples}`);
  for (const { kind, size } of holeError === undefined ? [rodError] : [rodError, holeError]) {
    if (kind !== "disc" && kind !== "normal") throw new RangeError(`an error is disc or normal, not ${String(kind)}`);
    if (!(size >= 0 && size < Number.POSITIVE_INFINITY)) throw new RangeError(`an error is zero or above, not ${size}`);
  }
}
