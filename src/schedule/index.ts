/** Spreadsheets -> the same values as `bases` and `placements` of a job file. */
export type { Heading } from "./headings.js";
export { findHeading, HEADINGS, headingOf } from "./headings.js";
export type * from "./model.js";
export { openTable } from "./open-table.js";
export type { PlacementHeading } from "./placement-headings.js";
export { findPlacementHeading, PLACEMENT_HEADINGS } from "./placement-headings.js";
export type { PlacementList } from "./read-placements.js";
export { MOST_PLACEMENTS, readPlacements } from "./read-placements.js";
export { readSchedule } from "./read-schedule.js";
export type { UnitProof } from "./sheet-unit.js";
export { provedUnits } from "./sheet-unit.js";
