/** The form that the answers come back in. */
import { writeAnswerFormXlsx } from "../formats/answer-form.js";
import { ANSWER_FORM, askedIn, engineerPath } from "./letter.js";
import type { JobOutput } from "./model.js";

/** Written where something is asked. */
export const answerFormXlsx: JobOutput<"answer-form-xlsx"> = {
  scope: "job",
  kind: "answer-form-xlsx",
  role: "document",
  title: "Answer form for the engineer of record, read back by `answersFrom`",
  drawn: false,
  named: "engineer/JOB_rev-REVISION[_NOT-RELEASED]_answers.xlsx",
  needs: "job",
  write: ({ job }, around) => {
    const asked = askedIn(around);
    return asked.length === 0 ? [] : [{ path: engineerPath(job, ANSWER_FORM), bytes: writeAnswerFormXlsx(job, asked) }];
  },
};
