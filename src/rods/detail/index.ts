/** Rods as a shop makes them: a group of a base in, its detail out. */
export { sizeWords } from "./bar.js";
export { detailRod } from "./detail-rod.js";
export { isEmbeddedToEnd, rodBelowAnchor, steelBelowEmbedment } from "./lengths.js";
export type {
  Hardware,
  Hook,
  LengthTerm,
  Operation,
  OperationName,
  RodDetail,
  RodKind,
  WorkedLength,
} from "./model.js";
export { HOLE_PLAY, lengthOfWeight } from "./weights.js";
export { type OrderedWeldable, orderedGrade, orderedGradeOf, orderedWeldable, weldability } from "./welding.js";
