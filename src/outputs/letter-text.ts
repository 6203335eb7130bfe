/** The same letter as text. */
import { writeLetterText } from "../formats/letter-text.js";
import { letterStatus } from "../summary/letter.js";
import { ANSWER_FORM, engineerPath, letterIn } from "./letter.js";
import type { JobOutput } from "./model.js";
import { nameIn } from "./names.js";
import { textFile } from "./text-file.js";

/** Written where something is asked. */
export const letterText: JobOutput<"letter-text"> = {
  scope: "job",
  kind: "letter-text",
  role: "document",
  title: "The same letter as text, to be pasted into a message",
  drawn: false,
  named: "engineer/JOB_rev-REVISION[_NOT-RELEASED]_letter.txt",
  needs: "job",
  write: ({ job }, around) => {
    const letter = letterIn(around);
    if (letter === null) return [];
    const status = letterStatus(job.status, letter, around.facts);
    const form = nameIn(engineerPath(job, ANSWER_FORM));
    return [textFile(engineerPath(job, "letter.txt"), writeLetterText({ ...job, status }, letter, form))];
  },
};
