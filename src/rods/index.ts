/** Rod positions: job item in, tagged rods out. */
export type { Layout, PlacedRod } from "./layout.js";
export { layoutPattern, MOST_RODS } from "./layout-pattern.js";
export { clockwiseFromNorthWest } from "./order.js";
export { countRods, rodPositions } from "./positions.js";
