/** The questions for the engineer of record. */
import { writeQuestionRows, writeQuestionsHead } from "../formats/questions-csv.js";
import type { GrowingOutput } from "./model.js";

/** Base by base, then those of the whole job. */
export const questions: GrowingOutput<"questions"> = {
  scope: "job, base by base",
  kind: "questions",
  role: "table",
  title: "Questions for the engineer of record, one a line",
  drawn: false,
  path: "questions.csv",
  listsOthers: false,
  head: writeQuestionsHead,
  base: (made) => writeQuestionRows(made.questions),
  end: (rest) => writeQuestionRows(rest.questions),
};
