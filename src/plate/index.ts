/** Plates: pattern and rules in, a thing to be cut out. */
export { makePlate, makePlateOutline } from "./make-plate.js";
export { measurePlate } from "./measure.js";
export type * from "./model.js";
