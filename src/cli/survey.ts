/** `rodplate survey JOB POINTS`: the rods as surveyed against their places and against the base plates. */
import { resolve } from "node:path";
import { worstFirst } from "../checks/index.js";
import { counted } from "../checks/words.js";
import type { Outcome } from "../diagnostics/finding.js";
import type { Printable } from "../diagnostics/printable.js";
import { joinPrintable, terminalLine } from "../diagnostics/printable.js";
import { writeLedgerRowsText, writeTextList } from "../formats/ledger-text.js";
import { writeSurveyJson } from "../formats/survey-json.js";
import { writeSurveyGroup, writeSurveyHead, writeSurveyRest, writeSurveyTable } from "../formats/survey-text.js";
import type { Job } from "../job/model/job.js";
import { surveyOutputs } from "../outputs/index.js";
import { placingHead } from "../summary/summarize.js";
import type { Survey } from "../survey/index.js";
import { isNotable, isOutside, SURVEY_CAUTIONS, surveyTotals, totalsWords } from "../survey/index.js";
import type { OpenedJob } from "../tasks/opened-job.js";
import { surveyAim, surveyPoints } from "../tasks/survey.js";
import { readSurveyOptions } from "../tasks/survey-options.js";
import type { Command } from "./arguments.js";
import { readBytes } from "./file-system.js";
import { showFindings } from "./findings.js";
import { targetFaults } from "./folder-writer.js";
import { openFile } from "./open.js";
import { tellWritten, writeResult } from "./result-folder.js";
import type { ExitCode, Shell } from "./shell.js";
import { hasColor, widthOf } from "./shell.js";

/** Code of findings about the folder to write into. */
const FOLDER = "survey-folder";

type SurveyCommand = Extract<Command, { kind: "survey" }>;

/** 1 when a plate does not drop on or something is outside its tolerance; 2 when job, points or options are at fault; else 0. */
export async function runSurvey(command: SurveyCommand, shell: Shell): Promise<ExitCode> {
  const { json, out } = command;
  const opened = await openFile(command.job, shell);
  const surveyed = opened.ok ? surveyOpened(command, opened.value, shell) : opened;
  const target = out === null ? null : { out, code: FOLDER, currentFolder: shell.currentFolder };
  const refused = target === null ? [] : targetFaults(target);
  await showFindings([...(opened.ok ? opened.findings : []), ...surveyed.findings, ...refused], json, shell);
  if (!opened.ok || !surveyed.ok || refused.length > 0) return 2;
  const { job } = opened.value;
  const survey = surveyed.value;
  if (target !== null) {
    const result = { job, survey, everySheet: command.all };
    const fault = await writeResult(surveyOutputs, result, target);
    if (fault !== null) {
      await showFindings([fault], json, shell);
      return 2;
    }
  }
  await shell.out.write(json ? writeSurveyJson(placingHead(job), survey) : textOf(job, survey, command, shell));
  await tellWritten(out, shell);
  return isOutside(surveyTotals(survey)) ? 1 : 0;
}

function surveyOpened(command: SurveyCommand, opened: OpenedJob, shell: Shell): Outcome<Survey> {
  const aim = surveyAim(opened);
  if (!aim.ok) return aim;
  const options = readSurveyOptions(command, opened.job, "--");
  const bytes = readBytes(resolve(shell.currentFolder, command.points), command.points);
  if (!options.ok || !bytes.ok)
    return { ok: false, findings: [...(options.ok ? [] : options.findings), ...(bytes.ok ? [] : bytes.findings)] };
  return surveyPoints(opened, aim.value, { name: command.points, bytes: bytes.value, ...options.value });
}

function textOf(job: Job, survey: Survey, { out, all }: SurveyCommand, shell: Shell): Printable {
  const options = { unit: job.unit, width: widthOf(shell), color: hasColor(shell), all };
  const { groups, unmatched, notSurveyed } = survey;
  const { placing } = job.editions;
  const shown = groups.filter((group) => all || isNotable(group));
  const heading = `Job ${job.number}  ${job.title}`.trimEnd();
  return joinPrintable([
    terminalLine`${heading}\n`,
    terminalLine`revision ${job.revision}, ${job.status}; placing ${placing}. Are the rods in place, and does the base plate drop on?\n\n`,
    writeSurveyHead(survey, options),
    writeSurveyTable(survey, options),
    ...shown.map((group) => writeSurveyGroup(group, survey, options)),
    ...(survey.rows.length === 0
      ? []
      : [writeLedgerRowsText("Groups and column lines", worstFirst(survey.rows), options)]),
    writeSurveyRest(survey, options),
    writeTextList("Cautions", SURVEY_CAUTIONS, options),
    terminalLine`${counted(groups.length, "group")} surveyed, ${notSurveyed.length} not; ${counted(unmatched.length, "point")} unmatched.\n`,
    ...(out === null ? [] : [terminalLine`Tables and sheets: ${out}\n`]),
    terminalLine`${totalsWords(surveyTotals(survey), placing)}. Engineer to decide.\n`,
  ]);
}
