/** Rod positions: base in, tagged rods out. */
export type { BaseWithRods, OutlinedBase, PlacedRod } from "./model.js";
export { clockwiseFromNorthWest } from "./order.js";
export { placeRods } from "./place-rods.js";
