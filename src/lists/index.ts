/** Lists of a job: typed tables of which workbook, CSV and pages are written. */
export { type JobLists, type ListsOf, makeLists } from "./job-lists.js";
export { cellText, cellValue, type ListCell, type ListColumn, type ListTable } from "./model.js";
