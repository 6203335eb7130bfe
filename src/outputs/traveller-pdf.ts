/** Travellers of the rods as a PDF that is printed for the shop. */
import type { CheckedJob } from "../checks/checked.js";
import { drawTravellers } from "../sheets/rods/travellers.js";
import { documentPdf } from "./document-pdf.js";
import type { JobOutput, PathAndBytes, Surroundings } from "./model.js";
import { paperPath, papersOf } from "./rod-papers.js";

/** A document of its own: it goes with the bars and not with the drawings. */
export const travellerPdf: JobOutput<"traveller-pdf"> = {
  scope: "job",
  kind: "traveller-pdf",
  role: "document",
  title: "Travellers of the anchor rods, a page a lot: what each station does, boxes to fill in, a code to scan",
  drawn: false,
  named: "rods/JOB_rev-REVISION[_NOT-RELEASED]_travellers.pdf",
  needs: "job",
  write: writeTravellers,
};

function* writeTravellers(checked: CheckedJob, around: Surroundings): Generator<PathAndBytes> {
  const { pdf, version } = around;
  if (pdf === null) return;
  const scenes = drawTravellers(papersOf(checked, around));
  const subject = `Travellers of anchor rods, ${checked.job.status}`;
  yield {
    path: paperPath(checked, "travellers"),
    bytes: documentPdf(pdf, scenes, { job: checked.job, version, subject }),
  };
}
