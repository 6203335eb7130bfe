/** The survey, a line a group. */
import { writeSurveyGroupsCsv } from "../formats/survey-csv.js";
import type { ResultOutput } from "./model.js";
import type { SurveyResult } from "./survey-result.js";
import { textFile } from "./text-file.js";

/** Verdict, spare, best shift and turn. */
export const surveyGroupsCsv: ResultOutput<SurveyResult, "survey-groups-csv"> = {
  scope: "survey",
  kind: "survey-groups-csv",
  role: "table",
  title: "Surveyed groups, worst first: verdict, spare clearance, best-fit shift and turn",
  drawn: false,
  named: "survey-groups.csv",
  write: ({ survey }) => [textFile("survey-groups.csv", writeSurveyGroupsCsv(survey))],
};
