/** A spreadsheet of column bases -> the same values as `bases` of a job file. */
export type { Heading } from "./headings.js";
export { findHeading, HEADINGS } from "./headings.js";
export type { Schedule } from "./read-schedule.js";
export { readSchedule } from "./read-schedule.js";
