/** What a budget answers. */
import type { AnswerFile } from "./answer-file.js";
import type { AnswerTable, RowState } from "./answer-table.js";

/** Bases worst first, with what each rests on. */
export interface BudgetAnswer {
  readonly sentence: string;
  readonly rests: string;
  readonly bases: AnswerTable;
  readonly each: readonly { readonly name: string; readonly state: RowState; readonly lines: readonly string[] }[];
  readonly cautions: readonly string[];
  readonly said: readonly string[];
  /** As a terminal shows it. */
  readonly text: string;
  readonly files: readonly AnswerFile[];
}
