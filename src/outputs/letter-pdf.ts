/** The letter to the engineer of record, to be printed or sent. */
import { drawLetter } from "../sheets/index.js";
import { documentPdf } from "./document-pdf.js";
import { ANSWER_FORM, engineerPath, letterIn } from "./letter.js";
import type { JobOutput } from "./model.js";
import { nameIn } from "./names.js";

/** Written where something is asked, and there is something to write a PDF with. */
export const letterPdf: JobOutput<"letter-pdf"> = {
  scope: "job",
  kind: "letter-pdf",
  role: "document",
  title: "Letter to the engineer of record: a question a cause, with picture, figures, clause and room for the answer",
  drawn: false,
  named: "engineer/JOB_rev-REVISION[_NOT-RELEASED]_letter.pdf",
  needs: "job",
  write: ({ job, plan }, around) => {
    const letter = letterIn(around);
    const { pdf, version, facts } = around;
    if (letter === null || pdf === null) return [];
    const scenes = drawLetter({ job, version, letter, facts, plan, form: nameIn(engineerPath(job, ANSWER_FORM)) });
    const subject = "Questions to the engineer of record";
    return [{ path: engineerPath(job, "letter.pdf"), bytes: documentPdf(pdf, scenes, { job, version, subject }) }];
  },
};
