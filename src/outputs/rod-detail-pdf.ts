/** Details of the rods: pages of the set, and a PDF of their own for the rod shop. */
import type { CheckedJob } from "../checks/checked.js";
import { drawRodDetails } from "../sheets/rods/rod-details.js";
import { documentPdf } from "./document-pdf.js";
import type { JobOutput, PathAndBytes, Surroundings } from "./model.js";
import { paperPath, papersOf } from "./rod-papers.js";
import { documentSheets } from "./sheet-set.js";

/** Drawn for a set even where the file itself is not wanted. */
export const rodDetailPdf: JobOutput<"rod-detail-pdf"> = {
  scope: "job",
  kind: "rod-detail-pdf",
  role: "sheet",
  title: "Details of the anchor rods by lot, for the rod shop: side view, threads, lower end, cut length, hardware",
  drawn: false,
  inSet: true,
  named: "rods/JOB_rev-REVISION[_NOT-RELEASED]_rod-details.pdf",
  needs: "job",
  write: writeRodDetails,
};

function* writeRodDetails(checked: CheckedJob, around: Surroundings): Generator<PathAndBytes> {
  const { pdf, set, version } = around;
  if (pdf === null) return;
  const scenes = drawRodDetails(papersOf(checked, around));
  set?.addSheets(
    "rods",
    documentSheets(scenes, { name: "RODS", about: "ANCHOR-ROD DETAILS", bookmark: "Rod details" }),
  );
  const subject = `Anchor-rod details, ${checked.job.status}`;
  yield {
    path: paperPath(checked, "rod-details"),
    bytes: documentPdf(pdf, scenes, { job: checked.job, version, subject }),
  };
}
