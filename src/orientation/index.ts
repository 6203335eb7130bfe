/** How a template can be set wrong: ways round, what each does, symmetry, marks that look alike. */
export type { LookAlike, SameTemplates } from "./look-alikes.js";
export { findLookAlikes } from "./look-alikes.js";
export type { DropsOn, Way, WayMove, WrongPlacement } from "./model.js";
export type { OutlineProbe } from "./outline-difference.js";
export { outlineProbe } from "./outline-difference.js";
export { outlineSymmetries, outlineSymmetryOrder } from "./outline-symmetry.js";
export { symmetryOrder } from "./pattern-symmetry.js";
export { dropsOn, isSilent, LEAST_SEEN, matters, SEEN_TWICE, showsAtEdge } from "./seen.js";
export type { TurnedPlate } from "./turned-plates.js";
export { turnedPlates } from "./turned-plates.js";
export type { MovedRods } from "./wrong-placements.js";
export { judgeOutline, movedRods, wrongPlacements } from "./wrong-placements.js";
