/** Questions to the engineer of record. They ask; they never say that a change would be acceptable. */
import type { Job } from "../job/model/job.js";
import type { CheckContext, CheckRow } from "./model.js";
import { limitWords, quantityText } from "./words.js";

/** A failing row as a question in plain words: mark, figure, limit, clause, and how the figure came about. */
export function questionFor(row: CheckRow, { job, base }: CheckContext): string {
  return questionAt(`Base ${base.mark} (quantity ${base.quantity}), ${row.subject}`, row, job);
}

/** As `questionFor`, for a row of the whole job, whose subject names the bases. */
export function jobQuestionFor(row: CheckRow, job: Job): string {
  return questionAt(`Layout, ${row.subject}`, row, job);
}

function questionAt(where: string, row: CheckRow, job: Job): string {
  if (row.value === null || row.limit === null || row.sense === null) return `${where}: ${row.note}. What is required?`;
  const found = quantityText(row.value, job.unit);
  const asked = limitWords(row.sense, row.limit, job.unit);
  const note = row.note === "" ? "" : ` (${row.note})`;
  return `${where}: ${row.measured} is ${found}; ${authorityOf(row)} asks for ${asked}${note}. What is required here?`;
}

/** Edition and clause in words. */
function authorityOf({ edition, clause }: CheckRow): string {
  switch (edition) {
    case "shop":
      return `the shop's rule (${clause})`;
    case "geometry":
      return `geometry (${clause})`;
    default:
      return clause.startsWith(edition) ? clause : `${edition}, ${clause},`;
  }
}
