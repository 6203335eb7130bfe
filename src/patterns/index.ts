/** Kinds of rod patterns: how each is written, what it is, and where its rods stand. */
export { standsToAxes } from "./circle.js";
export type { BoltCircle, CircleStart, Offset, PatternColumn } from "./model.js";
export { MOST_RODS } from "./model.js";
export type { Pattern, PatternDocument } from "./registry.js";
export {
  boltCircleOf,
  countRods,
  kindMeant,
  PATTERN_COLUMNS,
  PATTERN_KINDS,
  PATTERN_SYNONYMS,
  patternChoice,
  resolvePattern,
  rodPositions,
} from "./registry.js";
