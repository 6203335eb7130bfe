/**
 * Published values as data, each with edition, clause, source and confidence, and the lookups by edition name. A miss is
 * `{ found: false, nearest }` with the two nearest sizes as printed. An edition is a closed union of its kind, and every
 * lookup a `Record` of it: a new edition does not compile until each lookup says what it holds.
 */
export {
  extraThread,
  largestSettingPlate,
  rodPerWasherThickness,
  templateRemoval,
} from "./aisc-design-guide-1-2nd/advice.js";
export { groutHoleFrom, groutHoleSize } from "./aisc-design-guide-1-2nd/grout-hole.js";
export { bendAngle, bendArea, hookLength, threadLonger } from "./astm-f1554/tolerances.js";
export { zincGrowth } from "./astm-f2329/zinc.js";
export {
  arrowProportion,
  border,
  extensionGap,
  firstDimensionLine,
  inchTitleLettering,
  leastLettering,
  letterHeights,
  nextDimensionLine,
} from "./drawing-practice/sheets.js";
export { type DrawingUnitRow, drawingUnits } from "./dxf-reference/insunits.js";
export {
  type BaseHoleEdition,
  type ConcreteEdition,
  type EdgeEdition,
  type EditionKind,
  type EditionOf,
  editionsOf,
  type PlacingEdition,
  type TemplateHoleEdition,
} from "./editions.js";
export { hookedYield } from "./en-1993-1-8/hooks.js";
export { findBoltHole, type StandardHole } from "./find-bolt-hole.js";
export { concreteClauses, findCover, findSpacing } from "./find-concrete.js";
export { findIso9013Deviation, iso9013Perpendicularity } from "./find-cutting.js";
export { findEdge } from "./find-edge.js";
export { findNut, findWasher, nutStandards, washerSeries, washerStandards } from "./find-fastener.js";
export { findGrade, heldGrades, type RecommendedNut, recommendedNut } from "./find-grade.js";
export {
  alternateBaseHole,
  findBaseHole,
  findTemplateHole,
  listsGreatestHoles,
  overCastRodsHole,
} from "./find-hole.js";
export { findHoleSpacing } from "./find-hole-spacing.js";
export { findOverTap } from "./find-over-tap.js";
export {
  type BoltFixing,
  findConcreteTop,
  findElevation,
  findGroupPlacing,
  findPlacing,
  type GroupPlacingRow,
  placingRows,
} from "./find-placing.js";
export { findLengthTolerance } from "./find-rod-length.js";
export { findSection, type SectionLookup, type SectionOutline } from "./find-section.js";
export { findThread, findThreadInSeries, rodSizes, threadSpans } from "./find-thread.js";
export type { HoleSpacingRow } from "./hole-spacing.js";
export type * from "./model.js";
export { columnAnchorage, leastRods, postDefinition } from "./osha-1926/rod-count.js";
export type { PlacingTableRow } from "./placing.js";
export { type DensityRow, steelDensities } from "./plate-weights/steel.js";
export { asmeSheets, isoSheets, type SheetSizeRow } from "./sheet-sizes/sizes.js";
