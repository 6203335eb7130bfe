/** The register of questions, from which the next package goes on numbering. */
import { writeQuestionRegister } from "../formats/question-register.js";
import { summarizeQuestions } from "../summary/questions.js";
import { engineerPath } from "./letter.js";
import type { JobOutput } from "./model.js";
import { textFile } from "./text-file.js";

/** Written of every package, so that a number is never given twice. */
export const questionRegisterJson: JobOutput<"question-register-json"> = {
  scope: "job",
  kind: "question-register-json",
  role: "document",
  title: "Register of questions: every number that was ever given; named by `questions` it is gone on from",
  drawn: false,
  named: "engineer/JOB_rev-REVISION[_NOT-RELEASED]_questions.json",
  needs: "job",
  write: ({ job }, { questions, closedQuestions }) => {
    const all = summarizeQuestions(questions(), closedQuestions());
    return [textFile(engineerPath(job, "questions.json"), writeQuestionRegister(job, all))];
  },
};
