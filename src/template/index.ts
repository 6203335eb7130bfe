/** Plates: pattern and rules in, a thing to be cut out. */

export { keySize, keyWords } from "./key/key-words.js";
export type { PlateShape, ShapedBase } from "./make-plate.js";
export { makePlate, makePlateOutline, makePlateShape } from "./make-plate.js";
export { northOf } from "./marks/where-set.js";
export { measurePlate, scribedLength } from "./measure.js";
export type * from "./model.js";
export type * from "./piece.js";
export { listPieces, weighTemplate } from "./pieces/list-pieces.js";
export { lowerBase, lowerMark } from "./pieces/lower.js";
export { segmentMark, spliceMark } from "./pieces/part-plate.js";
export type { PlateKeys, TemplateSet } from "./share/find-sets.js";
export { equalSets, givenSets, madePlateKeys, withTemplate } from "./share/find-sets.js";
export type { HoldingBases, SharedTemplate } from "./share/model.js";
export { plateDifference } from "./share/plate-difference.js";
export { plateKey } from "./share/plate-key.js";
export type { Weight } from "./weigh.js";
