/** Questions to the engineer of record. They ask; they never say that a change would be acceptable. */
import type { Job } from "../job/model/job.js";
import type { JobRule } from "./job-model.js";
import type { CheckContext, CheckRow, Rule } from "./model.js";
import { comparedTexts, limitWords } from "./words.js";

/** A failing row as a question in plain words: mark, figure, limit, clause, and how the figure came about. */
export function questionFor(rules: readonly Rule[], row: CheckRow, { job, base }: CheckContext): string {
  return questionAt(`Base ${base.mark} (quantity ${base.quantity}), ${row.subject}`, rules, row, job);
}

/** As `questionFor`, for a row of the whole job, whose subject names the bases. */
export function jobQuestionFor(rules: readonly JobRule[], row: CheckRow, job: Job): string {
  return questionAt(`Layout, ${row.subject}`, rules, row, job);
}

type Asking = Pick<Rule, "id" | "measured">;

function questionAt(where: string, rules: readonly Asking[], row: CheckRow, job: Job): string {
  const rule = rules.find(({ id }) => id === row.rule);
  if (row.value === null || row.limit === null || row.sense === null) return `${where}: ${row.note}. What is required?`;
  const [found, limit] = comparedTexts(row.value, row.limit, job.unit);
  const asked = limitWords(row.sense, limit);
  const note = row.note === "" ? "" : ` (${row.note})`;
  return `${where}: ${rule?.measured ?? row.rule} is ${found}; ${authorityOf(row)} asks for ${asked}${note}. What is required here?`;
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
