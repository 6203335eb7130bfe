/** The drill list of a plywood template. */
import { writeDrillList } from "../formats/drill-list-csv.js";
import type { PieceFile } from "./model.js";
import { MAKING_PATTERN, makingPath } from "./names.js";

/** Plywood that is not held, or held where that is asked for. */
export const drillList: PieceFile<"drill-list"> = {
  scope: "piece",
  kind: "drill-list",
  role: "drill",
  title: "Drill list of a plywood template, instead of cut files",
  drawn: false,
  named: `${MAKING_PATTERN}_drill-list.csv`,
  applies: ({ held }, { plate }, includeHeld) => plate.material === "plywood" && (held.length === 0 || includeHeld),
  path: (checked, piece) => `${makingPath(checked, piece)}_drill-list.csv`,
  write: ({ job }, { plate, measures }) => new TextEncoder().encode(writeDrillList(plate, measures, job.unit)),
};
