/** Labels of bundles and tags of template pieces, printed on the office's paper and cut apart. */
import type { CheckedJob } from "../checks/checked.js";
import type { Job } from "../job/model/job.js";
import { type DeliveryShare, shareDeliveries } from "../lists/deliveries.js";
import { SHORT_HASH } from "../rods/lot-hash.js";
import type { RodLot, RodUse } from "../rods/lots.js";
import { drawLabels, type LabelText } from "../sheets/rods/labels.js";
import type { RodPapers } from "../sheets/rods/rod-details.js";
import { basesOf, colorWords, finishName, gradeWords, rodDrawingNumber, titleWords } from "../sheets/rods/rod-words.js";
import { tagText } from "../sheets/rods/tag-text.js";
import { lotTag } from "../sheets/rods/travellers.js";
import { printable } from "../sheets/text-metrics.js";
import type { BaseFacts, PieceFacts } from "../summary/facts.js";
import { formatLength, formatStock, type Length, nanometres } from "../units/index.js";
import { documentPdf } from "./document-pdf.js";
import type { JobOutput, PathAndBytes, Surroundings } from "./model.js";
import { paperPath, papersOf } from "./rod-papers.js";

/** A document of its own. */
export const labelPdf: JobOutput<"label-pdf"> = {
  scope: "job",
  kind: "label-pdf",
  role: "document",
  title:
    "Labels for bundles of rods, one a base and lot, and tags for template pieces, each with a code that names its sheet and hash",
  drawn: false,
  named: "rods/JOB_rev-REVISION[_NOT-RELEASED]_labels.pdf",
  needs: "job",
  write: writeLabels,
};

function* writeLabels(checked: CheckedJob, around: Surroundings): Generator<PathAndBytes> {
  const { pdf, version, facts } = around;
  if (pdf === null) return;
  const { job } = checked;
  const labels = labelsOf(papersOf(checked, around), facts);
  const scenes = drawLabels({ job, version, labels });
  const subject = `Labels of rods and templates, ${job.status}`;
  yield { path: paperPath(checked, "labels"), bytes: documentPdf(pdf, scenes, { job, version, subject }) };
}

/** Base by base as they are packed, then the templates. */
export function labelsOf(papers: RodPapers, facts: readonly BaseFacts[]): readonly LabelText[] {
  return [...bundleLabels(papers), ...pieceLabels(papers, facts)];
}

function bundleLabels({ job, lots, held }: RodPapers): readonly LabelText[] {
  const shares = shareDeliveries(job);
  const order = new Map(job.bases.map(({ mark }, i) => [mark, i]));
  const uses = lots.flatMap((lot) => lot.uses.map((use) => ({ lot, use })));
  return uses
    .toSorted((a, b) => (order.get(a.use.base) ?? 0) - (order.get(b.use.base) ?? 0))
    .flatMap(({ lot, use }) => {
      let from = 1;
      return (shares.get(use.base) ?? []).map((share) => {
        const label = bundleLabel(job, lot, use, share, from, held);
        from += share.count;
        return label;
      });
    });
}

/** Bundles of one delivery; they are counted through all deliveries. */
function bundleLabel(
  job: Job,
  lot: RodLot,
  use: RodUse,
  { delivery, count }: DeliveryShare,
  from: number,
  held: ReadonlySet<string>,
): LabelText {
  const { detail, mark } = lot;
  const several = lot.uses.filter(({ base }) => base === use.base).length > 1 ? ` GROUP ${use.group}` : "";
  return {
    large: [use.base, `${mark}   ${use.perBase} RODS`],
    lines: [
      titleWords(detail, job.unit),
      [gradeWords(detail), colorWords(detail)].filter((words) => words !== "").join(", "),
      `FINISH ${finishName(detail)}`,
      `SHEET ${rodDrawingNumber(job, lot)}${several}${delivery === "" ? "" : `, ${delivery}`}`,
    ],
    code: lotTag(job, lot, [`BASE ${printable(use.base)}${several}`, `${use.perBase} RODS`]),
    count,
    each: `BUNDLE # OF ${basesOf(use)}`,
    from,
    isHeld: held.has(use.base),
    data: { what: "bundle", lot: mark, base: use.base, rods: use.perBase },
  };
}

/** Pieces of a template stand once, however many bases it serves. */
function pieceLabels({ job }: RodPapers, facts: readonly BaseFacts[]): readonly LabelText[] {
  const taken = new Set<string>();
  return facts.flatMap((base) =>
    base.pieces.flatMap((piece): readonly LabelText[] => {
      if (taken.has(piece.mark)) return [];
      taken.add(piece.mark);
      return [pieceLabel(job, base, piece)];
    }),
  );
}

const MOST_BASES = 6;

function pieceLabel(job: Job, { template, held, files }: BaseFacts, piece: PieceFacts): LabelText {
  const { mark, quantity, role } = piece;
  const sheet = `${printable(job.number)}-${template.mark}`;
  const drawn = files.find(({ kind }) => kind === "sheet-svg");
  const cut = cutFileOf(job, piece);
  const hashes = [
    ["SHA", drawn?.sha256.slice(0, SHORT_HASH) ?? "NONE"],
    ...(cut === null ? [] : [["CUT", cut.sha256.slice(0, SHORT_HASH)]]),
  ] as const;
  const [number, revision] = [printable(job.number), printable(job.revision)];
  const more = template.bases.length - MOST_BASES;
  const bases = `${template.bases.slice(0, MOST_BASES).join(", ")}${more > 0 ? ` and ${more} more` : ""}`;
  return {
    large: [mark, `${role.toUpperCase()} FOR ${bases}`],
    lines: [
      `${piece.material.toUpperCase()} ${sizeWords(piece, job)}`,
      `SHEET ${sheet}, SHA ${hashes[0][1]}`,
      cut === null ? "NO FILE TO CUT OR DRILL BY" : `CUT FILE SHA ${cut.sha256.slice(0, SHORT_HASH)}`,
    ],
    code: tagText({
      job: number,
      mark,
      revision,
      sheet,
      hashes: hashes.map(([word = "", hash = ""]) => [word, hash]),
      more: [],
    }),
    count: quantity,
    each: `PIECE # OF ${quantity}`,
    from: 1,
    isHeld: held,
    data: { what: "piece", mark },
  };
}

/** The file that the shop's table loads, else the drill list. */
function cutFileOf({ shop }: Job, { files }: PieceFacts): PieceFacts["files"][number] | null {
  const wanted = shop.cutFile.flavour === "polyline" ? "cut-joined" : "cut-r12";
  return files.find(({ kind }) => kind === wanted) ?? files.find(({ kind }) => kind === "drill-list") ?? null;
}

/** `26 x 18 x 1/4`. */
function sizeWords({ width, height, thickness }: PieceFacts, { unit }: Job): string {
  const say = (millimetres: number) => formatLength(nanometres(millimetres * 1e6) as Length, unit);
  return `${say(width)} x ${say(height)} x ${formatStock(thickness, unit)}`;
}
