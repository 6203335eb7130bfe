/** The same form for an editor. */
import { writeAnswerFormYaml } from "../formats/answer-form.js";
import { askedIn, engineerPath } from "./letter.js";
import type { JobOutput } from "./model.js";
import { textFile } from "./text-file.js";

/** Written where something is asked. */
export const answerFormYaml: JobOutput<"answer-form-yaml"> = {
  scope: "job",
  kind: "answer-form-yaml",
  role: "document",
  title: "The same answer form as YAML",
  drawn: false,
  named: "engineer/JOB_rev-REVISION[_NOT-RELEASED]_answers.yaml",
  needs: "job",
  write: ({ job }, around) => {
    const asked = askedIn(around);
    return asked.length === 0 ? [] : [textFile(engineerPath(job, "answers.yaml"), writeAnswerFormYaml(job, asked))];
  },
};
