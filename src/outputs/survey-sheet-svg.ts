/** A sheet for each surveyed group. */
import { writeSheetSvg } from "../formats/sheet-svg.js";
import { drawSurveySheet } from "../sheets/survey-sheet.js";
import { drawingDocument } from "./drawing-document.js";
import type { PathAndBytes, ResultOutput, Surroundings } from "./model.js";
import { safeForFileName } from "./names.js";
import type { SurveyResult } from "./survey-result.js";
import { textFile } from "./text-file.js";

/** Groups that do not plainly fit, or all. */
export const surveySheetSvg: ResultOutput<SurveyResult, "survey-sheet-svg"> = {
  scope: "survey",
  kind: "survey-sheet-svg",
  role: "sheet",
  title: "Sheet of each group that does not plainly fit, or of every group: rods as built over the base plate's holes",
  drawn: true,
  named: "MARK_GRID-LINES_survey.svg",
  write: writeSurveySheets,
};

function* writeSurveySheets(
  { job, survey, everySheet }: SurveyResult,
  { document, version }: Pick<Surroundings, "document" | "version">,
): Generator<PathAndBytes> {
  for (const group of survey.groups) {
    if (group.verdict === "fits" && !everySheet) continue;
    const text = writeSheetSvg(drawSurveySheet({ job, survey, group, version }), drawingDocument(document));
    const path = `${group.mark}_${safeForFileName(group.at)}_survey.svg`;
    yield textFile(path, text);
  }
}
