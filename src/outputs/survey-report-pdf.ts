/** The survey as a report to the engineer, to be printed or sent: its words, then the sheets of the groups that are out. */
import { drawSurveyReport } from "../sheets/survey-report.js";
import { surveyReport } from "../survey/index.js";
import { documentPdf } from "./document-pdf.js";
import type { ResultOutput } from "./model.js";
import type { SurveyResult } from "./survey-result.js";
import { surveyScenes } from "./survey-sheet-svg.js";

/** Made where there is something to write a PDF with. */
export const surveyReportPdf: ResultOutput<SurveyResult, "survey-report-pdf"> = {
  scope: "survey",
  kind: "survey-report-pdf",
  role: "document",
  title: "The same report as PDF, with the sheets of the groups that are out",
  drawn: false,
  named: "survey-report.pdf",
  write: (result, { version, pdf }) => {
    if (pdf === null) return [];
    const { job, survey } = result;
    const pages = drawSurveyReport(job, surveyReport(job, survey), version);
    const scenes = [...pages, ...Array.from(surveyScenes(result, version), ({ scene }) => scene)];
    const bytes = documentPdf(pdf, scenes, { job, version, subject: "Anchor rods as surveyed" });
    return [{ path: "survey-report.pdf", bytes }];
  },
};
