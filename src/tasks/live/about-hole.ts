/** Which holes a row is about. */
import type { CheckRow } from "../../checks/model.js";

/** True where a row's subject names the hole, alone or with others: `A1`, `A1-A2`. */
export function isAbout(subject: string, tag: string): boolean {
  return namesIn(subject).includes(tag);
}

/** The first row that is about each hole, by its tag. */
export function firstRowsAbout(rows: readonly CheckRow[]): ReadonlyMap<string, CheckRow> {
  const first = new Map<string, CheckRow>();
  const subjects = new Set<string>();
  for (const row of rows) {
    if (subjects.has(row.subject)) continue;
    subjects.add(row.subject);
    for (const name of namesIn(row.subject)) if (!first.has(name)) first.set(name, row);
  }
  return first;
}

function namesIn(subject: string): readonly string[] {
  return subject.split(/[^\p{L}\p{N}]+/u);
}
