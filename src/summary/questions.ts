/** Failing `ask` rows as questions to the engineer of record. */
import type { CheckedBase } from "../checks/checked.js";
import { isAsking, jobQuestionText, questionText } from "../checks/index.js";
import type { CheckRow } from "../checks/model.js";
import type { Job } from "../job/model/job.js";
import type { SummaryCheck } from "./model.js";
import { summarizeCheck } from "./summarize.js";

/** One failing `ask` row, and the question in words; of the whole job: no mark, no quantity. */
export interface Question {
  readonly mark: string;
  readonly quantity: number | null;
  readonly text: string;
  readonly check: SummaryCheck;
}

/** The questions of one base, in the order of its rows. */
export function askOfBase(checked: CheckedBase): readonly Question[] {
  const { job, base, rows } = checked;
  return rows.filter(isAsking).map((row) => ({
    mark: base.mark,
    quantity: base.quantity,
    text: questionText(row, checked),
    check: summarizeCheck(row, job.unit),
  }));
}

/** The questions of the whole job, in the order of its rows. */
export function askOfJob(job: Job, rows: readonly CheckRow[]): readonly Question[] {
  return rows.filter(isAsking).map((row) => ({
    mark: "",
    quantity: null,
    text: jobQuestionText(row, job),
    check: summarizeCheck(row, job.unit),
  }));
}
