/** The survey, a line a rod. */
import { writeSurveyRodsCsv } from "../formats/survey-csv.js";
import type { ResultOutput } from "./model.js";
import type { SurveyResult } from "./survey-result.js";
import { textFile } from "./text-file.js";

/** Errors and clearance left of every rod. */
export const surveyRodsCsv: ResultOutput<SurveyResult, "survey-rods-csv"> = {
  scope: "survey",
  kind: "survey-rods-csv",
  role: "table",
  title: "Surveyed rods: errors from their places, clearance and margin",
  drawn: false,
  named: "survey-rods.csv",
  write: ({ survey }) => [textFile("survey-rods.csv", writeSurveyRodsCsv(survey))],
};
