/** Details of the rods of a job: each lot in a frame with its view, its dimensions and all that a shop must know; several to a page. */
import type { Job } from "../../job/model/job.js";
import type { RodLot } from "../../rods/lots.js";
import { groupBy } from "../../units/group-by.js";
import { type Block, drawDocument } from "../document-pages.js";
import { at, group, line, rectangle, stroke, strokeOf } from "../items.js";
import type { Scene } from "../scene.js";
import type { Lettering } from "../sheet-sizes.js";
import type { Piece, TableText } from "../table.js";
import { lotHead } from "./lot-head.js";
import { paragraphsPiece } from "./paragraphs.js";
import { rodFigure } from "./rod-figure.js";
import { detailParagraphs, toleranceNotes } from "./rod-words.js";

/** Papers of the rods of a job. */
export interface RodPapers {
  readonly job: Job;
  readonly lots: readonly RodLot[];
  /** Marks of bases that are held. */
  readonly held: ReadonlySet<string>;
  /** Of the program. */
  readonly version: string;
}

/** Pages of the office's paper, the way round of the other sheets of a set. */
export function drawRodDetails(papers: RodPapers): readonly Scene[] {
  const { job, version, lots } = papers;
  const notes = commonNotes(lots);
  const blocks: readonly Block[] = [
    ...lots.map(
      (lot): Block => ({ kind: "piece", piece: (width, lettering) => lotPiece(papers, lot, width, lettering) }),
    ),
    ...(notes === null ? [] : [{ kind: "table" as const, table: notes }]),
  ];
  return drawDocument({ job, version, title: "ANCHOR-ROD DETAILS", way: "landscape", blocks });
}

const PAD = 2;
/** Shares of the width that the view may take, the words standing beside it: the first of those with the lowest frame, so that more stand on a page. */
const VIEW_SHARES = [0.58, 0.54] as const;
/** A frame that is lower by less, mm, is no lower. */
const AS_LOW = 1;

function lotPiece({ held, job }: RodPapers, lot: RodLot, width: number, lettering: Lettering): Piece {
  const { unit } = job;
  const head = lotHead({ lot, held, job }, width, lettering);
  const paragraphs = detailParagraphs(lot, held, job);
  const parts = VIEW_SHARES.map((share) => {
    const view = width * share;
    const figure = rodFigure(lot.detail, { unit, width: view - 2 * PAD, lettering, callouts: true });
    const words = paragraphsPiece(paragraphs, width - view - 2 * PAD, 1, lettering.small);
    return { view, figure, words, inner: Math.max(figure.height, words.height) + 1.25 * PAD };
  });
  const { view, figure, words, inner } = parts.reduce((best, each) =>
    each.figure.isWithin && each.inner < best.inner - AS_LOW ? each : best,
  );
  const height = head.height + inner;
  const draw = (x: number, top: number) => {
    const under = top - head.height;
    return group(
      "rod-detail",
      [
        head.draw(x, top),
        figure.draw(x + PAD, under - PAD / 2),
        stroke("table", line(at(x + view, under), at(x + view, top - height))),
        words.draw(x + view + PAD, under - PAD / 2),
        strokeOf("table-heavy", rectangle(x, top - height, x + width, top)),
      ],
      { lot: lot.mark, quantity: lot.total },
    );
  };
  return { height, draw };
}

/** Notes that several lots share stand once, with their lots. */
function commonNotes(lots: readonly RodLot[]): TableText | null {
  const told = lots.flatMap(({ mark, detail }) => toleranceNotes(detail).others.map((note) => ({ mark, note })));
  if (told.length === 0) return null;
  const rows = [...groupBy(told, ({ note }) => note)].map(([note, own]) => {
    const isAll = own.length === lots.length;
    return [isAll ? "ALL" : own.map(({ mark }) => mark).join(" "), note];
  });
  return {
    name: "rod-notes",
    heading: "NOTES",
    columns: [
      { title: "LOTS", share: 0.15, align: "start" },
      { title: "NOTE", share: 0.85, align: "start" },
    ],
    rows,
    foot: [
      "Rods are not bent, cut, welded or replaced on the site without the engineer of record's approval. Strength, embedment and welds are not checked here.",
    ],
    under: [],
    strong: new Set<number>(),
  };
}
