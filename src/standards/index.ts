/**
 * Published values as data, each with edition, clause, source and confidence, and the lookups by edition name. A miss is
 * `{ found: false, nearest }` with the two nearest sizes as printed; an edition that `editionsOf` does not list throws.
 */
import { cuttingLimits } from "./cutting-practice/limits.js";
import { stockSheets, stockThicknesses } from "./plate-stock/stock.js";

export { aci117Placing } from "./aci-117-10/placing.js";
export { accumulation, aisc303TenPlacing } from "./aisc-303-10/placing.js";
export { aisc303Placing } from "./aisc-303-22/placing.js";
export { aisc360Rules } from "./aisc-360-22/rules.js";
export { templateRules } from "./aisc-design-guide-1-2nd/template-rules.js";
export { zincGrowth } from "./astm-f2329/zinc.js";
export { drawingRules } from "./drawing-practice/rules.js";
export { dxfFacts } from "./dxf-reference/facts.js";
export {
  type BaseHoleEdition,
  type ConcreteEdition,
  type EdgeEdition,
  editionsOf,
  type PlacingEdition,
  type TemplateHoleEdition,
} from "./editions.js";
export { en1090Placing } from "./en-1090-2/placing.js";
export { cenTs1992Spacing, en1992Spacing } from "./en-1992-4/spacing.js";
export { findCover, findSpacing } from "./find-concrete.js";
export { findIso9013Deviation, iso9013Perpendicularity, type ProcessLimits, processLimits } from "./find-cutting.js";
export { findC2, findEdge } from "./find-edge.js";
export { findNut, findWasher, nutStandards, washerStandards } from "./find-fastener.js";
export { findGrade, nutForm } from "./find-grade.js";
export { findBaseHole, findTemplateHole } from "./find-hole.js";
export {
  type BoltFixing,
  findElevation,
  findGroupPlacing,
  findPlacing,
  type GroupPlacingRow,
} from "./find-placing.js";
export { findThread } from "./find-thread.js";
export type * from "./model.js";
export { cautions } from "./osha-1926/cautions.js";
export type { PlacingTableRow } from "./placing.js";
export { placingRows } from "./placing-rows.js";
export { plateWeights, steelDensities as densities } from "./plate-weights/steel.js";
export { type SheetSizeRow, sheetSizeRows as sheetSizes } from "./sheet-sizes/sizes.js";
export { surveyFacts } from "./survey-practice/facts.js";
export { cuttingLimits };

/** Usually stocked plate, by unit: thicknesses (thinnest first) and sheets. Common practice. */
export const plateStock = { thicknesses: stockThicknesses, sheets: stockSheets } as const;
