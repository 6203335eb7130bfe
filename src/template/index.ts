/** Plates: pattern and rules in, a thing to be cut out. */
export { keySize, keyWords } from "./key/key-words.js";
export { makePlate, makePlateOutline } from "./make-plate.js";
export { measurePlate } from "./measure.js";
export type * from "./model.js";
