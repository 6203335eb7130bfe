/** The drill list of a plywood template. */
import { writeDrillList } from "../formats/drill-list-csv.js";
import type { BaseOutput } from "./model.js";
import { makingStem } from "./names.js";

/** Plywood that is not held, or held where that is asked for. */
export const drillList: BaseOutput<"drill-list"> = {
  scope: "base",
  kind: "drill-list",
  role: "drill",
  title: "Drill list of a plywood template, instead of cut files",
  drawn: false,
  named: "MARK/TEMPLATE_rev-REVISION[_HELD][_NOT-RELEASED]_drill-list.csv",
  applies: ({ plate, held }, includeHeld) => plate.material === "plywood" && (held.length === 0 || includeHeld),
  fileName: (checked) => `${makingStem(checked)}_drill-list.csv`,
  write: ({ plate, measures, job }) => new TextEncoder().encode(writeDrillList(plate, measures, job.unit)),
};
