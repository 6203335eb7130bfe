/** Distances to check on site. */
import { writeCheckDistances } from "../formats/check-distances-csv.js";
import { surveyUnitName } from "../formats/survey-unit-name.js";
import { checkDistances } from "../plan/index.js";
import type { JobOutput } from "./model.js";
import { settingOutStem } from "./setting-out.js";
import { textFile } from "./text-file.js";

/** Diagonals of groups, and centre to centre along grid lines. */
export const checkDistancesCsv: JobOutput<"check-distances-csv"> = {
  scope: "job",
  kind: "check-distances-csv",
  role: "table",
  title: "Distances to check: two diagonals of every group, and centre to centre along every grid line",
  drawn: false,
  named: "field/JOB_rev-REVISION[_NOT-RELEASED]_check-distances_UNIT.csv",
  needs: "plan",
  write: (checked) => {
    const { job, plan } = checked;
    const { unit } = plan.spec.settingOut;
    const path = `${settingOutStem(checked)}_check-distances_${surveyUnitName(unit)}.csv`;
    return [textFile(path, writeCheckDistances(checkDistances(plan), job.unit, unit))];
  },
};
