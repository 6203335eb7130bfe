import type { Scene } from "../../sheets/scene.js";
import type { SurveyOption } from "../../tasks/survey-options.js";
import type { AnswerFile } from "./answer-file.js";
import type { AnswerTable, RowState } from "./answer-table.js";

/** Labels of the fields in which a person states what the surveyor's file does not say. */
export const SURVEY_FIELDS: Readonly<Record<SurveyOption, string>> = {
  unit: "Unit of the points",
  order: "Order of the columns",
  accuracy: "Accuracy: every point within",
  height: "Height at which rods were taken",
  within: "A point without a name is a rod's within",
};

/** The answer sheet of a survey. */
export interface SurveyAnswer {
  readonly sentence: string;
  readonly totals: string;
  readonly isOutside: boolean;
  readonly read: readonly string[];
  readonly groups: AnswerTable;
  readonly each: readonly SurveyedGroup[];
  readonly lineChecks: AnswerTable;
  readonly rest: readonly (readonly [string, readonly string[]])[];
  readonly cautions: readonly string[];
  readonly said: readonly string[];
  /** As a terminal shows it. */
  readonly text: string;
  readonly files: readonly AnswerFile[];
}

/** One group with what is behind its verdicts; `sheet` null where it plainly fits and not every sheet was asked for. */
export interface SurveyedGroup {
  readonly name: string;
  readonly state: RowState;
  readonly lines: readonly string[];
  readonly rods: AnswerTable;
  readonly checks: AnswerTable;
  readonly sheet: Scene | null;
}
