/** The base plate over rods as they stand: minimax fit, certified. */
export { certifyFit, fitPlate } from "./fit-plate.js";
export type { CertifiedFit, Fit, FitHole, FitOptions, FitRod, Multiplier } from "./model.js";
export { DEFAULT_MAX_TURN } from "./model.js";
export type { TurnRange } from "./turn-range.js";
export { turnRange } from "./turn-range.js";
