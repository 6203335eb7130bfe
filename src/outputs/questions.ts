/** The questions for the engineer of record. */
import { writeQuestionRows, writeQuestionsHead } from "../formats/questions-csv.js";
import type { GrowingOutput } from "./model.js";
import { FOLDERS } from "./names.js";

/** Written at the end: one cause is one question, however many bases have it. */
export const questions: GrowingOutput<"questions"> = {
  scope: "job, base by base",
  kind: "questions",
  role: "table",
  title: "Questions for the engineer of record, one a line",
  drawn: false,
  path: `${FOLDERS.engineer}/questions.csv`,
  listsOthers: false,
  head: writeQuestionsHead,
  base: () => "",
  end: (rest) => writeQuestionRows(rest.questions),
};
