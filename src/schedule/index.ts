/** A spreadsheet of column bases -> the same plain document as `bases`. */
export { readSchedule } from "./read-schedule.js";
