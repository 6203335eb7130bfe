/** Questions for the engineer of record as CSV: failing `ask` rows, one cause a line, in words that can be sent. */
import type { Question } from "../summary/questions.js";
import { writeCsvRows } from "./csv-cells.js";

/** Headings of `questions.csv`. */
export const QUESTION_COLUMNS = [
  "number",
  "job",
  "revision",
  "base",
  "quantity",
  "subject",
  "question",
  "value",
  "sense",
  "limit",
  "unit",
  "rule",
  "clause",
  "edition",
  "severity",
  "state",
  "answered by",
  "answer date",
  "answer",
] as const;

/** The heading row. */
export function writeQuestionsHead(): string {
  return writeCsvRows([QUESTION_COLUMNS]);
}

/** One line a question, in the order given. */
export function writeQuestionRows(questions: readonly Question[]): string {
  return writeCsvRows(
    questions.map(({ number, job, revision, mark, quantity, text, check, status }) => [
      number,
      job,
      revision,
      mark,
      quantity,
      check.subject,
      text,
      check.value,
      check.sense,
      check.limit,
      check.unit,
      check.rule,
      check.clause,
      check.edition,
      check.severity,
      status,
      (check.answer ?? check.accepted)?.by ?? "",
      (check.answer ?? check.accepted)?.date ?? "",
      (check.answer ?? check.accepted)?.text ?? "",
    ]),
  );
}
