/** Rod positions: base in, tagged rods out. */
export type { Hook, RodDetail } from "./detail/index.js";
export {
  detailRod,
  isEmbeddedToEnd,
  lengthOfWeight,
  rodBelowAnchor,
  steelBelowEmbedment,
} from "./detail/index.js";
export type { BaseWithRods, OutlinedBase, PlacedRod } from "./model.js";
export { clockwiseFromNorthWest } from "./order.js";
export { placeRods } from "./place-rods.js";
