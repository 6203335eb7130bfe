/** The checker's page: what he needs to know of the whole job before he signs. */
import type { CheckedJob } from "../checks/checked.js";
import { drawChecking } from "../sheets/checking-page.js";
import { documentPdf } from "./document-pdf.js";
import { ledger } from "./ledger.js";
import { engineerPath } from "./letter.js";
import type { JobOutput, PathAndBytes, Surroundings } from "./model.js";
import { documentSheets } from "./sheet-set.js";

const ENDING = "checking.pdf";

/** Its pages stand in the set before the certificates. */
export const checkingPdf: JobOutput<"checking-pdf"> = {
  scope: "job",
  kind: "checking-pdf",
  role: "document",
  title:
    "For the checker, on a page: what is held, asked and close, what was not checked, and which keys would check most of it",
  drawn: false,
  inSet: true,
  opensFirst: true,
  named: "engineer/JOB_rev-REVISION[_NOT-RELEASED]_checking.pdf",
  needs: "job",
  write: writeChecking,
};

function* writeChecking({ job, layoutHeld }: CheckedJob, around: Surroundings): Generator<PathAndBytes> {
  const { set, pdf, version, facts } = around;
  if (set === null && pdf === null) return;
  const scenes = drawChecking({
    ...{ job, version, facts, layoutHeld: layoutHeld.reasons },
    ...{ digest: around.digest(), questions: around.questions(), closed: around.closedQuestions().length },
    ledger: around.closedFiles().find(({ kind }) => kind === ledger.kind) ?? null,
  });
  set?.addSheets(
    "checking",
    documentSheets(scenes, {
      name: "FOR THE CHECKER",
      about: "HELD, ASKED, CLOSE, NOT CHECKED",
      bookmark: "For the checker",
    }),
  );
  if (pdf === null) return;
  yield {
    path: engineerPath(job, ENDING),
    bytes: documentPdf(pdf, scenes, { job, version, subject: "Check of the whole job" }),
  };
}
