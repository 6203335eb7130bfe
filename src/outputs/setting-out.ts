/** What the files of the setting-out folder share. */
import type { SettingOutTexts } from "../formats/setting-out-csv.js";
import { writeSettingOut } from "../formats/setting-out-csv.js";
import { surveyUnitName } from "../formats/survey-unit-name.js";
import type { Job } from "../job/model/job.js";
import { coordinateSystems, locatedPoints } from "../plan/index.js";
import type { PathAndBytes, PlannedJob } from "./model.js";
import { releaseEnding, safeForFileName } from "./names.js";
import { textFile } from "./text-file.js";

/** The folder, and the name that its files begin with for README. */
export const SETTING_OUT = "setting-out";

/** One file a coordinate system; order and unit stand in its name. */
export function settingOutFiles(
  { job, plan, held }: PlannedJob,
  ending: string,
  pick: (texts: SettingOutTexts) => string,
): readonly PathAndBytes[] {
  const { settingOut } = plan.spec;
  return coordinateSystems(plan).map((system) => {
    const path = `${settingOutStem(job)}_${system}_${settingOut.order}_${surveyUnitName(settingOut.unit)}${ending}.csv`;
    const texts = writeSettingOut(
      locatedPoints(plan, system, (mark) => held.has(mark)),
      settingOut,
    );
    return textFile(path, pick(texts));
  });
}

/** `setting-out/24-118_rev-B`, and that the job is not released where it is not. */
export function settingOutStem(job: Job): string {
  return `${SETTING_OUT}/${safeForFileName(job.number)}_rev-${safeForFileName(job.revision)}${releaseEnding(job)}`;
}
