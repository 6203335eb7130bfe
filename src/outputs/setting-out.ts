/** What the files to set out by share. */
import type { CheckedJob } from "../checks/checked.js";
import type { SettingOutTexts } from "../formats/setting-out-csv.js";
import { writeSettingOut } from "../formats/setting-out-csv.js";
import { surveyUnitName } from "../formats/survey-unit-name.js";
import { coordinateSystems, locatedPoints } from "../plan/index.js";
import type { PathAndBytes, PlannedJob, Surroundings } from "./model.js";
import { FOLDERS, releaseEnding, safeForFileName } from "./names.js";
import { textFile } from "./text-file.js";

/** One file a coordinate system that is not held; order and unit stand in its name. */
export function settingOutFiles(
  checked: PlannedJob,
  { includeHeld }: Pick<Surroundings, "includeHeld">,
  ending: string,
  pick: (texts: SettingOutTexts) => string,
): readonly PathAndBytes[] {
  const { plan, held, layoutHeld } = checked;
  const { settingOut } = plan.spec;
  return coordinateSystems(plan).flatMap((system) => {
    const isHeld = layoutHeld.reasons.length > 0 && (system === "site" || !layoutHeld.siteOnly);
    if (isHeld && !includeHeld) return [];
    const path = `${settingOutStem(checked, isHeld)}_${system}_${settingOut.order}_${surveyUnitName(settingOut.unit)}${ending}.csv`;
    const texts = writeSettingOut(
      locatedPoints(plan, system, (mark) => held.has(mark)),
      settingOut,
    );
    return [textFile(path, pick(texts))];
  });
}

/** `field/24-118_rev-B`, that it is held, and that the job is not released where it is not. */
export function settingOutStem({ job, layoutOpen }: Pick<CheckedJob, "job" | "layoutOpen">, isHeld = false): string {
  const held = isHeld ? "_HELD" : "";
  return `${FOLDERS.field}/${safeForFileName(job.number)}_rev-${safeForFileName(job.revision)}${held}${releaseEnding(job, layoutOpen)}`;
}
