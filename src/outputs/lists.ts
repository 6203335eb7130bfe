/** What the files of lists share. */
import type { CheckedJob } from "../checks/checked.js";
import { type JobLists, type ListTable, makeLists } from "../lists/index.js";
import type { Surroundings } from "./model.js";
import { FOLDERS, jobStem } from "./names.js";

const made = new WeakMap<CheckedJob, JobLists>();

/** The lists of a job, worked out for the first file that asks. */
export function listsOf(
  checked: CheckedJob,
  { facts, questions }: Pick<Surroundings, "facts" | "questions">,
): JobLists {
  const known = made.get(checked);
  if (known !== undefined) return known;
  const openQuestions = questions().flatMap(({ number, status }) => (status === "open" ? [number] : []));
  const lists = makeLists({ job: checked.job, facts, held: new Set(checked.held.keys()), openQuestions });
  made.set(checked, lists);
  return lists;
}

/** `rods/24-118_rev-B_bars-to-cut.csv`. */
export function listPath({ job }: CheckedJob, key: string, ending: "csv" | "xlsx"): string {
  return `${FOLDERS.rods}/${jobStem(job)}_${key}.${ending}`;
}

/** Lists that have something to say on a page. */
export function isShown({ rows, views, key }: ListTable): boolean {
  return views.length > 0 && (rows.length > 0 || key === "bars-to-cut");
}
