/** What the files of the cut list share. */
import type { CheckedJob } from "../checks/checked.js";
import type { ListTable } from "../lists/model.js";
import { type PlateListOf, plateList, stockList } from "../lists/plate-list.js";
import { plateRows } from "../lists/plate-rows.js";
import type { Surroundings } from "./model.js";
import { FOLDERS, jobStem } from "./names.js";

/** Path without its ending: `cut/24-118_rev-B_cut-list`. */
export function cutListStem({ job }: Pick<CheckedJob, "job">): string {
  return `${FOLDERS.cut}/${jobStem(job)}_cut-list`;
}

/** By pattern, for README. */
export const CUT_LIST_PATTERN = `${FOLDERS.cut}/JOB_rev-REVISION[_NOT-RELEASED]_cut-list`;

/** Of what its tables are made. */
export function cutListOf({ job }: Pick<CheckedJob, "job">, { facts }: Pick<Surroundings, "facts">): PlateListOf {
  return { rows: plateRows(facts), unit: job.unit, status: job.status };
}

/** Pieces, and the stock that they are cut from. */
export function cutListTables(of: PlateListOf): readonly [ListTable, ListTable] {
  return [plateList(of), stockList(of)];
}
