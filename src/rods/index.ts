/** Rod positions: base in, tagged rods out. */
export type { Hook, OrderedWeldable, RodDetail } from "./detail/index.js";
export {
  detailRod,
  HOLE_PLAY,
  isEmbeddedToEnd,
  lengthOfWeight,
  orderedGrade,
  orderedGradeOf,
  orderedWeldable,
  rodBelowAnchor,
  sizeWords,
  steelBelowEmbedment,
  weldability,
} from "./detail/index.js";
export type { BaseWithRods, OutlinedBase, PlacedRod } from "./model.js";
export { clockwiseFromNorthWest } from "./order.js";
export { placeRods } from "./place-rods.js";
