/** Points to set out, for people and for instruments that take a header row. */
import type { JobOutput } from "./model.js";
import { settingOutFiles } from "./setting-out.js";

/** With a header row. */
export const settingOutCsv: JobOutput<"setting-out-csv"> = {
  scope: "job",
  kind: "setting-out-csv",
  role: "table",
  title:
    "Points to set out, with a header row: in site coordinates, and in local ones (north and east are plan y and x)",
  drawn: false,
  named: "field/JOB_rev-REVISION[_HELD][_NOT-RELEASED]_(site|local)_ORDER_UNIT.csv",
  needs: "plan",
  write: (checked, around) => settingOutFiles(checked, around, "", ({ headed }) => headed),
};
