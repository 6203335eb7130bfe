/** Points to set out, for loggers that take points alone. */
import type { JobOutput } from "./model.js";
import { settingOutFiles } from "./setting-out.js";

/** Without a header row. */
export const settingOutBareCsv: JobOutput<"setting-out-bare-csv"> = {
  scope: "job",
  kind: "setting-out-bare-csv",
  role: "table",
  title: "The same points without the header row, for loggers that take nothing else",
  drawn: false,
  named: "field/JOB_rev-REVISION[_HELD][_NOT-RELEASED]_(site|local)_ORDER_UNIT_bare.csv",
  needs: "plan",
  write: (checked, around) => settingOutFiles(checked, around, "_bare", ({ bare }) => bare),
};
