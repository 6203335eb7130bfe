/** Surveyed points against the open job: both verdicts group by group, rods, remedies, sheets and the report. */
import { worstFirst } from "../../checks/index.js";
import { counted } from "../../checks/words.js";
import type { Finding, Outcome } from "../../diagnostics/finding.js";
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
import type { OpenedJob } from "../../tasks/opened-job.js";
import { type PointsInput, surveyAim, surveyPoints } from "../../tasks/survey.js";
import { readSurveyOptions, type SurveyOptions } from "../../tasks/survey-options.js";
import { writeSurveyText } from "../../tasks/survey-text.js";
import { formatWithUnit, type Unit } from "../../units/index.js";
import { VERSION } from "../app/version.js";
import { answerFile, resultFiles } from "./answer-file.js";
import { type AnswerTable, answerRow, type RowState } from "./answer-table.js";
import { checkTable } from "./check-table.js";
import { bytesOfDropped } from "./dropped.js";
import { causesOf, openedJob, refusedBy } from "./refusing.js";
import { SURVEY_FIELDS, type SurveyedGroup } from "./survey-model.js";
import type { TaskWork } from "./task-model.js";

/** Faults of options, points and job are told together. */
export const surveyPointsOf: TaskWork<"survey"> = async ({ files, date, points, options, all }, tell) => {
  const opened = await openedJob(files, date);
  if (!opened.ok) throw refusedBy(opened.findings);
  const surveyed = surveyOf(opened.value, { name: points.name, bytes: await bytesOfDropped(points, "file") }, options);
  const findings = [...opened.findings, ...surveyed.findings].map(inFields);
  if (!surveyed.ok) throw refusedBy(findings);
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
    read: surveyHeadLines(survey).map((line) => printable(fieldWords(line))),
    groups: groupTable(survey),
    each: survey.groups.map((group) => groupOf(group, survey, scenes[drawn.indexOf(group)] ?? null)),
    lineChecks: checkTable(worstFirst(survey.rows), survey.unit),
    rest: surveyRestParts(survey).map(
      ([title, items]) => [title, items.map((item) => printable(fieldWords(item)))] as const,
    ),
    cautions: SURVEY_CAUTIONS,
    said: causesOf(findings),
    text: writeSurveyText(job, survey, { width: 100, color: false, all, out: null }),
    files: [
      ...written,
      answerFile("survey.json", "The whole survey in machine form", writeSurveyJson(placingHead(job), survey)),
    ],
  };
};

function surveyOf(
  opened: OpenedJob,
  points: Pick<PointsInput, "name" | "bytes">,
  options: SurveyOptions,
): Outcome<Survey> {
  const aim = surveyAim(opened);
  const read = readSurveyOptions(options, opened.job, "");
  if (!aim.ok) return aim;
  return read.ok ? surveyPoints(opened, aim.value, { ...points, ...read.value }) : read;
}

/** Options of the command line by the labels of their fields. */
function inFields(finding: Finding): Finding {
  const { message, hint } = finding;
  return { ...finding, message: fieldWords(message), ...(hint === undefined ? {} : { hint: fieldWords(hint) }) };
}

function fieldWords(words: string): string {
  return words.replace(OPTIONS, (option) => {
    const field = Object.entries(SURVEY_FIELDS).find(([name]) => option === `--${name}`);
    return field === undefined ? option : `"${field[1]}"`;
  });
}

const OPTIONS = /--[a-z]+\b/g;

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
