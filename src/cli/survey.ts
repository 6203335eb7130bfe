/** `rodplate survey JOB POINTS`: the rods as surveyed against their places and against the base plates. */
import { resolve } from "node:path";
import { worstFirst } from "../checks/index.js";
import { counted } from "../checks/words.js";
import type { Finding, Outcome } from "../diagnostics/finding.js";
import { writeLedgerRowsText, writeTextList } from "../formats/ledger-text.js";
import { settingOutPoints } from "../formats/setting-out-points.js";
import { writeSheetSvg } from "../formats/sheet-svg.js";
import { writeSurveyChecksCsv, writeSurveyGroupsCsv, writeSurveyRodsCsv } from "../formats/survey-csv.js";
import { writeSurveyJson } from "../formats/survey-json.js";
import { writeSurveyGroup, writeSurveyHead, writeSurveyRest, writeSurveyTable } from "../formats/survey-text.js";
import { readJob } from "../job/index.js";
import type { Job } from "../job/model/job.js";
import { given } from "../job/model/job.js";
import { parseSurveyHeight } from "../job/schema/survey.js";
import { safeForFileName } from "../outputs.js";
import { readPoints } from "../readers/points.js";
import type { PointOrder } from "../readers/points-model.js";
import { POINT_ORDERS } from "../readers/points-model.js";
import { surveyUnitOf } from "../readers/points-name.js";
import { placeRods } from "../rods/index.js";
import { drawSurveySheet } from "../sheets/survey-sheet.js";
import type { GroupSurvey, Survey, SurveyAim, SurveyTerms } from "../survey/index.js";
import { SURVEY_CAUTIONS, surveyJob, surveyPlan } from "../survey/index.js";
import type { Reading, SurveyUnit } from "../units/index.js";
import { inches, millimetres, parseLength } from "../units/index.js";
import type { Command } from "./arguments.js";
import { readBytes } from "./file-system.js";
import { showFindings } from "./findings.js";
import { type NamedText, targetFaults, writeFolder } from "./folder-writer.js";
import { loadInputs } from "./load.js";
import type { ExitCode, Shell } from "./shell.js";
import { hasColor, readVersion, todayOf, widthOf } from "./shell.js";
import { newDocument } from "./svg-document.js";

/** Code of findings about the folder to write into. */
const FOLDER = "survey-folder";

type SurveyCommand = Extract<Command, { kind: "survey" }>;

/** 1 when a plate does not drop on; 2 when job, points or options are at fault; else 0. */
export async function runSurvey(command: SurveyCommand, shell: Shell): Promise<ExitCode> {
  const { json, out } = command;
  const aimed = await readAim(command, shell);
  const surveyed = aimed.ok ? surveyAim(command, aimed.value, shell) : aimed;
  const target = out === null ? [] : targetFaults(resolve(shell.currentFolder, out), out, FOLDER);
  const findings = [...(aimed.ok ? aimed.findings : []), ...surveyed.findings, ...target];
  await showFindings(findings, json, shell);
  if (!aimed.ok || !surveyed.ok || target.length > 0) return 2;
  const { job } = aimed.value;
  const survey = surveyed.value;
  if (out !== null) {
    const fault = writeFolder(resolve(shell.currentFolder, out), filesOf(job, survey, command.all), out, FOLDER);
    if (fault !== null) {
      await showFindings([fault], json, shell);
      return 2;
    }
  }
  await shell.out.write(json ? writeSurveyJson(headOf(job), survey) : textOf(job, survey, command, shell));
  return survey.groups.some(({ verdict }) => verdict === "does not fit") ? 1 : 0;
}

interface Aimed {
  readonly job: Job;
  readonly aim: SurveyAim;
}

async function readAim({ job: name }: SurveyCommand, shell: Shell): Promise<Outcome<Aimed>> {
  const inputs = await loadInputs(name, shell);
  if (!inputs.ok) return inputs;
  const job = readJob(inputs.value, { date: todayOf(shell) });
  if (!job.ok) return job;
  const placed = job.value.bases.map((base) => ({ base, rods: placeRods(base) }));
  const findings = [...job.findings, ...placed.flatMap(({ rods }) => rods.findings)];
  const bases = placed.flatMap(({ base, rods }) => (rods.ok ? [{ base, rods: rods.value }] : []));
  if (bases.length < placed.length) return { ok: false, findings };
  const plan = surveyPlan(job.value, bases);
  if (!plan.ok) return { ok: false, findings: [...findings, ...plan.findings] };
  const aim = { plan: plan.value, expected: settingOutPoints(plan.value) };
  return { ok: true, value: { job: job.value, aim }, findings: [...findings, ...plan.findings] };
}

function surveyAim(command: SurveyCommand, { job, aim }: Aimed, shell: Shell): Outcome<Survey> {
  const options = readOptions(command, job);
  const bytes = readBytes(resolve(shell.currentFolder, command.points), command.points);
  if (!options.ok || !bytes.ok)
    return { ok: false, findings: [...(options.ok ? [] : options.findings), ...(bytes.ok ? [] : bytes.findings)] };
  const { unit, order, terms } = options.value;
  const jobOrder = job.plan?.settingOut.order ?? null;
  const points = readPoints(bytes.value, command.points, { unit, order, jobOrder });
  return points.ok ? surveyJob(job, aim, points.value, terms) : points;
}

interface Options {
  readonly unit: SurveyUnit | null;
  readonly order: PointOrder | null;
  readonly terms: SurveyTerms;
}

/** What the command line says goes before what the job says. */
function readOptions({ unit, order, accuracy, height, within }: SurveyCommand, job: Job): Outcome<Options> {
  const findings: Finding[] = [];
  const read = <T>(option: string, text: string | null, parse: (text: string) => Reading<T>): T | null => {
    const reading = text === null ? null : parse(text);
    if (reading === null || reading.ok) return reading === null ? null : reading.value;
    findings.push({ code: "option", severity: "error", at: { file: option }, message: reading.message });
    return null;
  };
  const length = (text: string) => parseLength(text, job.unit);
  const near = read("--within", within, length);
  const radius = read("--accuracy", accuracy, length);
  const taken = read("--height", height, (text) => parseSurveyHeight(text, job.unit));
  const { survey } = job;
  const own = job.unit === "in" ? inches(2) : millimetres(50);
  const terms: SurveyTerms = {
    ...survey,
    accuracy: radius === null ? survey.accuracy : given(radius, "option"),
    height: taken === null ? survey.height : given(taken, "option"),
    within: near ?? (survey.within.kind === "given" ? survey.within.value : own),
  };
  for (const [option, value] of [
    ["--within", near],
    ["--accuracy", radius],
  ] as const)
    if (value !== null && value < (option === "--within" ? 1 : 0))
      findings.push({ code: "option", severity: "error", at: { file: option }, message: "is not above zero" });
  const options = { unit: read("--unit", unit, parseUnit), order: read("--order", order, parseOrder), terms };
  return findings.length > 0 ? { ok: false, findings } : { ok: true, value: options, findings };
}

function parseUnit(text: string): Reading<SurveyUnit> {
  const unit = text.toLowerCase() === "ft" ? "ft" : surveyUnitOf(text);
  if (unit !== null) return { ok: true, value: unit };
  return {
    ok: false,
    message: `${JSON.stringify(text)} is no unit; allowed are m, mm, ft (0.3048 m), ft-us (1200/3937 m)`,
  };
}

function parseOrder(text: string): Reading<PointOrder> {
  const order = POINT_ORDERS.find((each) => each === text.toUpperCase());
  if (order !== undefined) return { ok: true, value: order };
  return { ok: false, message: `${JSON.stringify(text)} is no order; allowed are ${POINT_ORDERS.join(", ")}` };
}

const headOf = ({ number, revision, status, unit, editions }: Job) => ({
  number,
  revision,
  status,
  unit,
  placing: editions.placing,
});

function textOf(job: Job, survey: Survey, { out, all }: SurveyCommand, shell: Shell): string {
  const options = { unit: job.unit, width: widthOf(shell), color: hasColor(shell), all };
  const { groups, unmatched, notSurveyed } = survey;
  const shown = groups.filter(({ verdict }) => all || verdict !== "fits");
  const count = (verdict: GroupSurvey["verdict"]): number => groups.filter((group) => group.verdict === verdict).length;
  return [
    `Job ${job.number}  ${job.title}`.trimEnd(),
    `\nrevision ${job.revision}, ${job.status}; placing ${job.editions.placing}. Does the base plate drop on?\n\n`,
    writeSurveyHead(survey, options),
    writeSurveyTable(survey, options),
    ...shown.map((group) => writeSurveyGroup(group, survey, options)),
    ...(survey.rows.length === 0
      ? []
      : [writeLedgerRowsText("Groups and column lines", worstFirst(survey.rows), options)]),
    writeSurveyRest(survey, options),
    writeTextList("Cautions", SURVEY_CAUTIONS, options),
    `${counted(groups.length, "group")} surveyed, ${notSurveyed.length} not; ${count("fits")} fit, ${count("within measuring uncertainty")} within measuring uncertainty, ` +
      `${count("does not fit")} do not fit, ${count("not-checked")} not checked; ${counted(unmatched.length, "point")} unmatched. Engineer to decide.\n`,
    ...(out === null ? [] : [`Tables and sheets: ${out}\n`]),
  ].join("");
}

/** Sheets of the groups that do not plainly fit, or of all. */
function* filesOf(job: Job, survey: Survey, all: boolean): Generator<NamedText> {
  yield { path: "survey-groups.csv", text: writeSurveyGroupsCsv(survey) };
  yield { path: "survey-rods.csv", text: writeSurveyRodsCsv(survey) };
  yield { path: "survey-checks.csv", text: writeSurveyChecksCsv(survey) };
  const document = newDocument();
  for (const group of survey.groups) {
    if (group.verdict === "fits" && !all) continue;
    const scene = drawSurveySheet({ job, survey, group, version: readVersion() });
    yield { path: `${group.mark}_${safeForFileName(group.at)}_survey.svg`, text: writeSheetSvg(scene, document) };
  }
}
