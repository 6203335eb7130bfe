/** Surveyed points against the open job: both verdicts group by group, rods, remedies, sheets and the report. */

import { worstFirst } from "../../checks/index.js";
import { counted } from "../../checks/words.js";
import { printable } from "../../diagnostics/printable.js";
import { writeSurveyJson } from "../../formats/survey-json.js";
import {
  SURVEY_HEADINGS,
  surveyCells,
  surveyGroupLines,
  surveyHeadLines,
  surveyRestParts,
} from "../../formats/survey-text.js";
import { surveyOutputs } from "../../outputs/index.js";
import { surveyScenes } from "../../outputs/survey-sheet-svg.js";
import type { Scene } from "../../sheets/scene.js";
import { placingHead } from "../../summary/summarize.js";
import type { GroupSurvey, RodAsBuilt, Survey, SurveyTotals } from "../../survey/index.js";
import { isNotable, isOutside, rounded, SURVEY_CAUTIONS, surveyTotals, totalsWords } from "../../survey/index.js";
import { surveyAim, surveyPoints } from "../../tasks/survey.js";
import { readSurveyOptions } from "../../tasks/survey-options.js";
import { formatWithUnit, type Unit } from "../../units/index.js";
import { VERSION } from "../app/version.js";
import { answerFile, resultFiles } from "./answer-file.js";
import { type AnswerTable, answerRow, type RowState } from "./answer-table.js";
import { checkTable } from "./check-table.js";
import { bytesOfDropped } from "./dropped.js";
import { causesOf, need, openedJob, refusedBy } from "./refusing.js";
import type { SurveyedGroup } from "./survey-model.js";
import type { TaskWork } from "./task-model.js";

/** Faults of options, points and job are told together. */
export const surveyPointsOf: TaskWork<"survey"> = async ({ files, date, points, options, all }, tell) => {
  const opened = await openedJob(files, date);
  if (!opened.ok) throw refusedBy(opened.findings);
  const aim = need(surveyAim(opened.value));
  const bytes = await bytesOfDropped(points, "file");
  const read = need(readSurveyOptions(options, opened.value.job, ""));
  const surveyed = surveyPoints(opened.value, aim, { name: points.name, bytes, ...read });
  if (!surveyed.ok) throw refusedBy([...opened.findings, ...surveyed.findings]);
  const { job } = opened.value;
  const survey = surveyed.value;
  const result = { job, survey, everySheet: all };
  const scenes = [...surveyScenes(result, VERSION)].map(({ scene }) => scene);
  const drawn = survey.groups.filter((group) => all || isNotable(group));
  const totals = surveyTotals(survey);
  const of = drawn.length + 5;
  let done = 0;
  const written = await resultFiles(surveyOutputs, result, (what) => {
    done += 1;
    tell({ done: Math.min(done, of), of, what });
  });
  return {
    sentence: sentenceOf(totals, survey),
    totals: `${totalsWords(totals, job.editions.placing)}. Engineer to decide.`,
    isOutside: isOutside(totals),
    read: surveyHeadLines(survey).map(printable),
    groups: groupTable(survey),
    each: survey.groups.map((group) => groupOf(group, survey, scenes[drawn.indexOf(group)] ?? null)),
    lineChecks: checkTable(worstFirst(survey.rows), survey.unit),
    rest: surveyRestParts(survey).map(([title, items]) => [title, items.map(printable)] as const),
    cautions: SURVEY_CAUTIONS,
    said: causesOf([...opened.findings, ...surveyed.findings]),
    files: [
      ...written,
      answerFile("survey.json", "The whole survey in machine form", writeSurveyJson(placingHead(job), survey)),
    ],
  };
};

function sentenceOf({ fail, unsure, unknown, drop }: SurveyTotals, { groups, notSurveyed }: Survey): string {
  const of = `of ${counted(groups.length, "base plate")} surveyed`;
  const rest = notSurveyed.length === 0 ? "" : ` ${counted(notSurveyed.length, "group")} not surveyed.`;
  if (fail > 0) return `${fail} ${of} ${fail === 1 ? "does" : "do"} not drop on.${rest}`;
  if (groups.length === 0) return `No group was surveyed.${rest}`;
  if (unsure + unknown > 0) return `${drop} ${of} drop on; of the others it is not certain.${rest}`;
  return `${groups.length === 1 ? "The base plate that was surveyed drops" : `All ${groups.length} base plates that were surveyed drop`} on.${rest}`;
}

function stateOf({ verdict, placing }: GroupSurvey): RowState {
  if (verdict === "does not fit" || placing.verdict === "outside") return "held";
  return verdict === "fits" ? "clear" : "asked";
}

function groupTable({ groups, unit }: Survey): AnswerTable {
  const rows = groups.map((group) => answerRow(stateOf(group), surveyCells(group, unit)));
  return { heads: SURVEY_HEADINGS, figures: [4, 5, 6, 7], rows };
}

function groupOf(group: GroupSurvey, { unit }: Survey, sheet: Scene | null): SurveyedGroup {
  return {
    name: printable(`${group.mark} ${group.at}`.trim()),
    state: stateOf(group),
    lines: surveyGroupLines(group, unit).map(printable),
    rods: rodTable(group, unit),
    checks: checkTable(worstFirst(group.rows), unit),
    sheet,
  };
}

const ROD_HEADS = ["rod", "points", "dx", "dy", "from its place", "spare", "height"] as const;

function rodTable({ rods, missing, placing }: GroupSurvey, unit: Unit): AnswerTable {
  const text = (value: number | null): string => (value === null ? "" : formatWithUnit(rounded(value, unit), unit));
  const stateOfRod = ({ tag, margin }: RodAsBuilt): RowState =>
    (margin ?? 0) < 0 || placing.rods.includes(tag) ? "held" : "clear";
  const rows = rods.map((rod) => {
    const { tag, points, dx, dy, radial, margin, dz } = rod;
    return answerRow(stateOfRod(rod), [
      tag,
      points.join(" "),
      text(dx),
      text(dy),
      text(radial),
      text(margin),
      text(dz),
    ]);
  });
  const lacking = missing.map((tag) => answerRow("asked", [tag, "not surveyed", "", "", "", "", ""]));
  return { heads: ROD_HEADS, figures: [2, 3, 4, 5, 6], rows: [...rows, ...lacking] };
}
