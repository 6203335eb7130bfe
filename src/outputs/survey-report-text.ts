/** The survey as a message to the engineer. */
import { writeSurveyReportText } from "../formats/survey-report-text.js";
import { surveyReport } from "../survey/index.js";
import type { ResultOutput } from "./model.js";
import type { SurveyResult } from "./survey-result.js";
import { textFile } from "./text-file.js";

/** Text to be pasted into a message. */
export const surveyReportText: ResultOutput<SurveyResult, "survey-report-text"> = {
  scope: "survey",
  kind: "survey-report-text",
  role: "document",
  title: "Report to the engineer of record as text, to be pasted into a message",
  drawn: false,
  named: "survey-report.txt",
  write: ({ job, survey }, { version }) => [
    textFile("survey-report.txt", writeSurveyReportText(surveyReport(job, survey), version)),
  ],
};
