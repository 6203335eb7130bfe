/** `rodplate survey JOB POINTS`: the rods as surveyed against their places and against the base plates. */
import { resolve } from "node:path";
import type { Outcome } from "../diagnostics/finding.js";
import { writeSurveyJson } from "../formats/survey-json.js";
import { surveyOutputs } from "../outputs/index.js";
import { placingHead } from "../summary/summarize.js";
import type { Survey } from "../survey/index.js";
import { isOutside, surveyTotals } from "../survey/index.js";
import type { OpenedJob } from "../tasks/opened-job.js";
import { surveyAim, surveyPoints } from "../tasks/survey.js";
import { readSurveyOptions } from "../tasks/survey-options.js";
import { writeSurveyText } from "../tasks/survey-text.js";
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
  await shell.out.write(
    json
      ? writeSurveyJson(placingHead(job), survey)
      : writeSurveyText(job, survey, { ...command, width: widthOf(shell), color: hasColor(shell) }),
  );
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
