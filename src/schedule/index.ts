/** Spreadsheets -> the same values as `bases` and `placements` of a job file. */

export { keyInBase } from "./base-node.js";
export { meaningsOf } from "./heading-meanings.js";
export type { HeadingName, Synonym } from "./heading-synonyms.js";
export { NOTE, SYNONYMS } from "./heading-synonyms.js";
export type { Heading } from "./headings.js";
export { HEADINGS, headingNamed, headingOf } from "./headings.js";
export { markKey } from "./mark-key.js";
export type * from "./model.js";
export { leavesOf } from "./node-text.js";
export { openTables } from "./open-table.js";
export type { PlacementHeading } from "./placement-headings.js";
export { PLACEMENT_HEADINGS } from "./placement-headings.js";
export type { PlacementList } from "./read-placements.js";
export { MOST_PLACEMENTS, readPlacements } from "./read-placements.js";
export { NOTHING_BESIDE, readSchedule } from "./read-schedule.js";
export type { SettledHeadings } from "./settle-headings.js";
export { settleHeadings } from "./settle-headings.js";
export { placementMeaningsOf, settlePlacements } from "./settle-placements.js";
export type { SettleContext, SettledColumn } from "./settled-column.js";
export type { UnitProof } from "./sheet-unit.js";
export { provedUnits } from "./sheet-unit.js";
export { withLines } from "./with-lines.js";
