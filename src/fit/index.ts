/** The base plate over rods as they stand: minimax fit, certified. */
export type { ErrorSpread, ErrorTerm, ErrorZone } from "./errors.js";
export { certifyFit, fitPlate } from "./fit-plate.js";
export type { FitProbability, PositionError, ProbabilityRequest } from "./fit-probability.js";
export { fitProbability } from "./fit-probability.js";
export type { CertifiedFit, Fit, FitHole, FitOptions, FitRod, Multiplier } from "./model.js";
export { DEFAULT_MAX_TURN } from "./model.js";
export type { DropCounts, Freedom, Trials } from "./simulate.js";
export { countDrops, fitTrials, standardErrorOf } from "./simulate.js";
export type { TurnRange } from "./turn-range.js";
export { turnRange } from "./turn-range.js";
