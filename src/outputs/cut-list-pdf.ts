/** The cut list on paper: a PDF of its own for the cutting table, and pages of the set. */
import type { CheckedJob } from "../checks/checked.js";
import type { ListTable } from "../lists/index.js";
import { platePages } from "../lists/plate-pages.js";
import { type Block, drawDocument } from "../sheets/document-pages.js";
import { listBlocks } from "../sheets/list-block.js";
import type { Scene } from "../sheets/scene.js";
import { notesPiece } from "../sheets/table.js";
import { CUT_LIST_PATTERN, cutListOf, cutListStem } from "./cut-list.js";
import { documentPdf } from "./document-pdf.js";
import type { JobOutput, PathAndBytes, Surroundings } from "./model.js";
import type { SetSheet } from "./sheet-set.js";

const TITLE = "CUT LIST OF PLATES";

/** What the operator of a cutting table opens first. */
export const cutListPdf: JobOutput<"cut-list-pdf"> = {
  scope: "job",
  kind: "cut-list-pdf",
  role: "table",
  title: "Cut list of plates to be printed, by material and thickness with sums; its pages stand in the set too",
  drawn: false,
  inSet: true,
  opensFirst: true,
  named: `${CUT_LIST_PATTERN}.pdf`,
  needs: "job",
  write: writeCutList,
};

function* writeCutList(checked: CheckedJob, around: Surroundings): Generator<PathAndBytes> {
  const { set, pdf, version } = around;
  if (set === null && pdf === null) return;
  const { job } = checked;
  const scenes = drawCutList(checked, around);
  set?.addSheets(
    "lists",
    scenes.map((scene, i) => setSheet(scene, i + 1, scenes.length)),
  );
  if (pdf === null) return;
  yield { path: `${cutListStem(checked)}.pdf`, bytes: documentPdf(pdf, scenes, { job, version, subject: TITLE }) };
}

/** Its pages, one at least. */
export function drawCutList(
  checked: Pick<CheckedJob, "job">,
  around: Pick<Surroundings, "facts" | "version">,
): readonly Scene[] {
  const { job } = checked;
  const { toCut, figures, all } = platePages(cutListOf(checked, around));
  const tables = (lists: readonly ListTable[]) =>
    lists.flatMap(listBlocks).map((table): Block => ({ kind: "table", table }));
  const blocks: readonly Block[] = [
    {
      kind: "piece",
      piece: (width, lettering) => notesPiece("how-to-cut", "HOW TO CUT", notes(checked), width, lettering),
    },
    ...tables(toCut),
    { kind: "fresh" },
    ...tables([...figures, all]),
  ];
  return drawDocument({ job, version: around.version, title: TITLE, way: "landscape", blocks });
}

function notes({ job }: Pick<CheckedJob, "job">): readonly string[] {
  const { flavour, layers } = job.shop.cutFile;
  const [other, why] =
    flavour === "polyline"
      ? ["lines", "lines and arcs, for a control that does not read polylines"]
      : ["polyline", "closed polylines"];
  const scribed = job.shop.marking.how === "scribe";
  const cut = [...new Set([layers.outline, layers.holes, layers.openings])];
  return [
    `Each row is one plate. Load its file from cut/ and cut QTY of it; do not add its quantity up again from bases. Nominal size, no kerf, 1:1, unit ${job.unit === "in" ? "inch" : "mm"}.`,
    `To cut: layer${cut.length === 1 ? "" : "s"} ${cut.join(", ")}, inside before outside. ${scribed ? `To scribe: ${layers.marks}; to punch: ${layers.drill}` : `To punch: ${layers.drill}; marks are ${job.shop.marking.how === "paint" ? "painted" : "not made"}`}. Holes of the column OF THEM DRILL are punched and drilled by hand.`,
    `cut/${other}/ holds the same plates in ${why}. A plate that is HELD is not cut; its sheet says why.`,
  ];
}

function setSheet(scene: Scene, number: number, count: number): SetSheet {
  const of = count === 1 ? "" : ` ${number} OF ${count}`;
  return { scene, name: `CUT LIST${of}`, about: TITLE, bookmark: `Cut list of plates${of.toLowerCase()}`, held: false };
}
