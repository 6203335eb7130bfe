/** The survey's ledger rows. */
import { writeSurveyChecksCsv } from "../formats/survey-csv.js";
import type { ResultOutput } from "./model.js";
import type { SurveyResult } from "./survey-result.js";
import { textFile } from "./text-file.js";

/** Rows of rods, groups and column lines. */
export const surveyChecksCsv: ResultOutput<SurveyResult, "survey-checks-csv"> = {
  scope: "survey",
  kind: "survey-checks-csv",
  role: "table",
  title: "Ledger rows of the survey: rods, groups and column lines against the placing edition",
  drawn: false,
  named: "survey-checks.csv",
  write: ({ survey }) => [textFile("survey-checks.csv", writeSurveyChecksCsv(survey))],
};
