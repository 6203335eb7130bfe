/** What papers of the rods share: details, travellers and labels. */
import type { CheckedJob } from "../checks/checked.js";
import { type RodLot, rodLots } from "../rods/lots.js";
import type { RodPapers } from "../sheets/rods/rod-details.js";
import type { Surroundings } from "./model.js";
import { FOLDERS, jobStem } from "./names.js";

const made = new WeakMap<CheckedJob["job"], readonly RodLot[]>();

/** Lots of the job, worked out for the first paper that asks. */
export function papersOf({ job, held }: CheckedJob, { version }: Pick<Surroundings, "version">): RodPapers {
  const known = made.get(job) ?? rodLots(job);
  made.set(job, known);
  return { job, lots: known, held: new Set(held.keys()), version };
}

/** `rods/24-118_rev-B_travellers.pdf`. */
export function paperPath({ job }: Pick<CheckedJob, "job">, name: string): string {
  return `${FOLDERS.rods}/${jobStem(job)}_${name}.pdf`;
}
