/** A sheet for each surveyed group. */
import { writeSheetSvg } from "../formats/sheet-svg.js";
import { firstFree, plainPrimes } from "../plan/index.js";
import type { Scene } from "../sheets/scene.js";
import { drawSurveySheet } from "../sheets/survey-sheet.js";
import type { GroupSurvey } from "../survey/index.js";
import { isNotable } from "../survey/index.js";
import { drawingDocument } from "./drawing-document.js";
import type { PathAndBytes, ResultOutput, Surroundings } from "./model.js";
import { safeForFileName } from "./names.js";
import type { SurveyResult } from "./survey-result.js";
import { textFile } from "./text-file.js";

/** Groups whose plate does not plainly drop on or whose placing is outside, or all. */
export const surveySheetSvg: ResultOutput<SurveyResult, "survey-sheet-svg"> = {
  scope: "survey",
  kind: "survey-sheet-svg",
  role: "sheet",
  title:
    "Sheet of each group that does not plainly fit or is outside its tolerance, or of every group: rods as built over the base plate's holes",
  drawn: true,
  named: "MARK_GRID-LINES_survey.svg",
  write: writeSurveySheets,
};

function* writeSurveySheets(
  result: SurveyResult,
  { document, version }: Pick<Surroundings, "document" | "version">,
): Generator<PathAndBytes> {
  for (const { name, scene } of surveyScenes(result, version))
    yield textFile(`${name}_survey.svg`, writeSheetSvg(scene, drawingDocument(document)));
}

/** The sheets with the names of their files. */
export function* surveyScenes(
  { job, survey, everySheet }: SurveyResult,
  version: string,
): Generator<{ readonly name: string; readonly scene: Scene }> {
  const names = sheetNames(survey.groups);
  const drawn = survey.groups.filter((group) => everySheet || isNotable(group));
  for (const [i, group] of drawn.entries()) {
    const sheet = { number: i + 1, count: drawn.length };
    yield { name: names.get(group) ?? group.mark, scene: drawSurveySheet({ job, survey, group, version, sheet }) };
  }
}

/**
 * Mark and grid lines, a prime as `p`; where two groups would have one name, whatever the case, the later by name are
 * numbered. The same whichever sheets are asked for and however the survey went.
 */
function sheetNames(groups: readonly GroupSurvey[]): ReadonlyMap<GroupSurvey, string> {
  const taken = new Set<string>();
  const ordered = [...groups].sort((a, b) => (a.standing.name < b.standing.name ? -1 : 1));
  return new Map(
    ordered.map((group) => [group, take(`${group.mark}_${safeForFileName(plainPrimes(group.at))}`, taken)]),
  );
}

function take(wanted: string, taken: Set<string>): string {
  const name = firstFree(wanted, taken);
  taken.add(name.toUpperCase());
  return name;
}
