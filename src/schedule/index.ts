/** Spreadsheets -> the same values as `bases` and `placements` of a job file. */
export type { Heading } from "./headings.js";
export { findHeading, HEADINGS } from "./headings.js";
export { markKey } from "./mark-key.js";
export type { BesideTable, ReadAs, ReadLine, ReadOrigin, ReadQuestion, Schedule, TableAnswers } from "./model.js";
export { openTable } from "./open-table.js";
export type { PlacementHeading } from "./placement-headings.js";
export { findPlacementHeading, PLACEMENT_HEADINGS } from "./placement-headings.js";
export type { PlacementList } from "./read-placements.js";
export { MOST_PLACEMENTS, readPlacements } from "./read-placements.js";
export { readSchedule } from "./read-schedule.js";
