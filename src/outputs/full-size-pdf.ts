/** A plywood template at full size on the paper of an office. */
import type { CheckedJob } from "../checks/checked.js";
import { drawFullSize } from "../sheets/full-size/index.js";
import type { BaseFacts } from "../summary/facts.js";
import { documentPdf } from "./document-pdf.js";
import type { JobOutput, PathAndBytes, Surroundings } from "./model.js";
import { MAKING_PATTERN, makingPathOf } from "./names.js";
import { officePaper } from "./paper-sizes.js";

/** One a board; as its drill list not of what is held, but where that is asked for. */
export const fullSizePdf: JobOutput<"full-size-pdf"> = {
  scope: "job",
  kind: "full-size-pdf",
  role: "document",
  title:
    "Plywood template at full size, tiled on the office's paper with register crosses and bars to measure; on one page for a plotter where it takes more than 60",
  drawn: false,
  named: `${MAKING_PATTERN}_full-size.pdf`,
  needs: "job",
  write: writeBoards,
};

function* writeBoards(checked: CheckedJob, around: Surroundings): Generator<PathAndBytes> {
  const written = new Set<string>();
  for (const base of around.facts) {
    if (base.held && !around.includeHeld) continue;
    for (const { path, bytes } of boardsOf(checked, base, around, written)) yield { path, bytes };
  }
}

/** Those that no base before had. */
function* boardsOf(
  { job, held }: CheckedJob,
  base: BaseFacts,
  { pdf, version, paper }: Surroundings,
  written: Set<string>,
): Generator<PathAndBytes> {
  if (pdf === null) return;
  const office = officePaper(paper ?? (job.unit === "in" ? "letter" : "a4"));
  for (const { board } of base.pieces) {
    if (board === null) continue;
    const path = `${makingPathOf(job, board, base)}_full-size.pdf`;
    if (written.has(path)) continue;
    written.add(path);
    const { released } = base;
    const scenes = drawFullSize({ job, version, board, held: held.get(base.mark) ?? [], released, paper: office });
    yield { path, bytes: documentPdf(pdf, scenes, { job, version, subject: `Template ${board.mark} at full size` }) };
  }
}
