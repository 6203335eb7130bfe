/** A table of an answer: texts as they are shown. */
import { printable } from "../../diagnostics/printable.js";

/** How a row stands: held is bad, asked is to be looked at, clear is neither. */
export type RowState = "held" | "asked" | "clear";

/** One row; `state` is said in one of its cells too. */
export interface AnswerRow {
  readonly state: RowState;
  readonly cells: readonly string[];
}

/** Rows under their heads. */
export interface AnswerTable {
  readonly heads: readonly string[];
  /** Columns whose cells are figures, from 0. */
  readonly figures: readonly number[];
  readonly rows: readonly AnswerRow[];
}

/** A row whose texts hold no sign that moves or hides what stands around it. */
export function answerRow(state: RowState, cells: readonly string[]): AnswerRow {
  return { state, cells: cells.map(printable) };
}
