/** The revisions of a sheet. */
import type { SheetRequest } from "./request.js";
import type { TableText } from "./table.js";

const NONE: ReadonlySet<number> = new Set();

/** The newest revisions, oldest of those first; the job's own revision where the job lists none. */
export function revisionTable({ job }: Pick<SheetRequest, "job">, most: number): TableText {
  const known =
    job.revisions.length > 0
      ? job.revisions
      : [{ revision: job.revision, date: job.date, text: `Issued ${job.status}` }];
  const shown = known.slice(-most);
  return {
    name: "revision-block",
    heading: "REVISIONS",
    columns: [
      { title: "REV", share: 0.12, align: "start" },
      { title: "DATE", share: 0.2, align: "start" },
      { title: "DESCRIPTION", share: 0.68, align: "start" },
    ],
    rows: shown.map(({ revision, date, text }) => [revision, date, text]),
    foot: known.length > shown.length ? [`+ ${known.length - shown.length} earlier`] : [],
    under: [],
    strong: NONE,
  };
}
