/** The cut list on paper: a PDF of its own for the cutting table, and pages of the set. */
import type { CheckedJob } from "../checks/checked.js";
import type { Job } from "../job/model/job.js";
import type { ListTable } from "../lists/index.js";
import { countDrilled } from "../lists/plate-list.js";
import { platePages } from "../lists/plate-pages.js";
import type { PlateRow } from "../lists/plate-rows.js";
import { type Block, drawDocument } from "../sheets/document-pages.js";
import { listBlocks } from "../sheets/list-block.js";
import type { Scene } from "../sheets/scene.js";
import { notesPiece } from "../sheets/table.js";
import { CUT_LIST_PATTERN, cutListOf, cutListStem } from "./cut-list.js";
import { documentPdf } from "./document-pdf.js";
import type { JobOutput, PathAndBytes, Surroundings } from "./model.js";
import { PLYWOOD_WORDS } from "./package-guide.js";
import { documentSheets } from "./sheet-set.js";

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
  set?.addSheets("lists", documentSheets(scenes, { name: "CUT LIST", about: TITLE, bookmark: "Cut list of plates" }));
  if (pdf === null) return;
  yield { path: `${cutListStem(checked)}.pdf`, bytes: documentPdf(pdf, scenes, { job, version, subject: TITLE }) };
}

/** Its pages, one at least. */
export function drawCutList(
  checked: Pick<CheckedJob, "job">,
  around: Pick<Surroundings, "facts" | "version">,
): readonly Scene[] {
  const { job } = checked;
  const list = cutListOf(checked, around);
  const { toCut, figures, all } = platePages(list);
  const tables = (lists: readonly ListTable[]) =>
    lists.flatMap(listBlocks).map((table): Block => ({ kind: "table", table }));
  const blocks: readonly Block[] = [
    {
      kind: "piece",
      piece: (width, lettering) => notesPiece("how-to-cut", "HOW TO CUT", notes(job, list.rows), width, lettering),
    },
    ...tables(toCut),
    { kind: "fresh" },
    ...tables([...figures, all]),
  ];
  return drawDocument({ job, version: around.version, title: TITLE, way: "landscape", blocks });
}

/** What is true of these pieces alone: of a job of plywood nothing is said of layers. */
function notes(job: Job, rows: readonly PlateRow[]): readonly string[] {
  const steel = rows.filter(({ material }) => material === "steel");
  const unit = job.unit === "in" ? "inch" : "mm";
  return [
    `Each row is one plate: make QTY of it by its file in cut/; do not add its quantity up again from bases. Nominal size, no kerf, 1:1, unit ${unit}.`,
    ...(steel.length === 0 ? [] : [layerWords(job, steel)]),
    ...(steel.length === rows.length ? [] : [PLYWOOD_WORDS]),
    ...(steel.some(({ files }) => files.length > 1) ? [flavourWords(job)] : []),
    ...(rows.some(({ held }) => held) ? ["A plate that is HELD is not cut; its sheet says why."] : []),
  ];
}

function layerWords({ shop }: Job, steel: readonly PlateRow[]): string {
  const { outline, holes, openings, marks, drill } = shop.cutFile.layers;
  const cut = [...new Set([outline, holes, openings])];
  const { how } = shop.marking;
  const unmarked = how === "paint" ? "marks are painted" : "marks are not made";
  return [
    `To cut: layer${cut.length === 1 ? "" : "s"} ${cut.join(", ")}, inside before outside.`,
    how === "scribe" ? `To scribe: ${marks}; to punch: ${drill}.` : `To punch: ${drill}; ${unmarked}.`,
    ...(steel.some((row) => countDrilled(row) > 0)
      ? ["Holes of the column OF THEM DRILL are punched and drilled by hand."]
      : []),
  ].join(" ");
}

function flavourWords({ shop }: Job): string {
  return shop.cutFile.flavour === "polyline"
    ? "cut/lines/ holds the same plates in lines and arcs, for a control that does not read polylines."
    : "cut/polyline/ holds the same plates in closed polylines.";
}
