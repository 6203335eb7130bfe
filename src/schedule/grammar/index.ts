/** The written grammar of cells: the text of a cell and the form of its column -> what it gives. */
export type { Marks, MarksReading } from "./marks.js";
export { MOST_IN_RANGE, readMarks } from "./marks.js";
export { map, scalar } from "./nodes.js";
export { readCell } from "./read-cell.js";
export type { CellContext } from "./scan.js";
export { PITCH_ALONE, PITCH_KEYS } from "./spacing.js";
