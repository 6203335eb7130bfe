/** Travellers: a page a lot that goes with the bar from the saw to the truck, station by station, with boxes to fill in by hand. */
import type { Job } from "../../job/model/job.js";
import type { Operation } from "../../rods/detail/model.js";
import { lotHash } from "../../rods/lot-hash.js";
import type { RodLot } from "../../rods/lots.js";
import { groupBy } from "../../units/group-by.js";
import { type Block, drawDocument } from "../document-pages.js";
import { at, group, line, stroke, strokeOf, text } from "../items.js";
import { qrCode } from "../qr.js";
import type { Scene, SceneItem } from "../scene.js";
import type { Lettering } from "../sheet-sizes.js";
import { headingItems, type Piece, type TableText } from "../table.js";
import { printable, wrap } from "../text-metrics.js";
import { lotHead } from "./lot-head.js";
import { paragraphsPiece } from "./paragraphs.js";
import type { RodPapers } from "./rod-details.js";
import { rodFigure } from "./rod-figure.js";
import {
  basesOf,
  countWords,
  cutWords,
  finishWords,
  missingWords,
  NOT_GIVEN,
  type Paragraph,
  piecesOnRod,
  rodDrawingNumber,
  weightWords,
  weldWords,
} from "./rod-words.js";
import { tagText } from "./tag-text.js";

/** Upright pages of the office's paper, each lot from the head of a page. */
export function drawTravellers(papers: RodPapers): readonly Scene[] {
  const { job, version, lots } = papers;
  const blocks = lots.flatMap((lot, i): readonly Block[] => [
    ...(i === 0 ? [] : [{ kind: "fresh" as const }]),
    ...[headPiece, figurePiece, operationsPiece].map(
      (piece): Block => ({ kind: "piece", piece: (width, lettering) => piece(papers, lot, width, lettering) }),
    ),
    ...(lot.uses.length > MOST_TOLD ? [{ kind: "table" as const, table: bundlesTable(papers, lot) }] : []),
  ]);
  return drawDocument({ job, version, title: "TRAVELLER OF ANCHOR RODS", way: "upright", blocks, flagged: true });
}

const QR_ROOM = 32;
const GAP = 3;

/** What the code of a lot says. */
export function lotTag(job: Job, lot: RodLot, more: readonly string[] = []): string {
  const [number, revision] = [printable(job.number), printable(job.revision)];
  const sheet = rodDrawingNumber(job, lot);
  return tagText({ job: number, mark: lot.mark, revision, sheet, hashes: [["SHA", lotHash(lot)]], more });
}

function headPiece({ job, held }: RodPapers, lot: RodLot, width: number, lettering: Lettering): Piece {
  const code = qrCode(lotTag(job, lot, [`${lot.total} OFF`]), QR_ROOM);
  const own = width - code.side - GAP;
  const head = lotHead({ lot, held, job }, own, lettering);
  const words = paragraphsPiece(headParagraphs(lot, job), own, 1, lettering.small);
  const height = Math.max(code.side, head.height + words.height + 2);
  const draw = (x: number, top: number) =>
    group(
      "traveller-head",
      [head.draw(x, top), words.draw(x, top - head.height - 1), code.draw(x + width - code.side, top)],
      { lot: lot.mark, quantity: lot.total },
    );
  return { height, draw };
}

function headParagraphs(lot: RodLot, job: Job): readonly Paragraph[] {
  return [
    { label: "CUT", words: cutWords(lot.detail, job.unit) },
    { label: "WEIGHT OF BARS", words: weightWords(lot, job.unit) },
    {
      label: "SHA",
      words: "must be that of the detail: it stands for rod, count and bases",
    },
  ];
}

function figurePiece({ job, held }: RodPapers, lot: RodLot, width: number, lettering: Lettering): Piece {
  const figure = rodFigure(lot.detail, { unit: job.unit, width, lettering, callouts: false });
  const words = paragraphsPiece(stationParagraphs(lot, held), width, 2, lettering.small);
  const draw = (x: number, top: number) =>
    group("traveller-view", [figure.draw(x, top), words.draw(x, top - figure.height - 0.5)]);
  return { height: figure.height + words.height + 1, draw };
}

/** So many bases and no more are told without a table. */
const MOST_TOLD = 8;

/** What stations need beside their own line: hardware of the whole lot, bundles, what is not given. */
function stationParagraphs({ detail, total, uses }: RodLot, held: ReadonlySet<string>): readonly Paragraph[] {
  const bundles = uses.map(
    (use) => `${use.base}: ${basesOf(use)} of ${use.perBase}${held.has(use.base) ? " HELD" : ""}`,
  );
  const told = uses.length > MOST_TOLD ? "as listed below" : bundles.join(", ");
  const lacks = missingWords(detail);
  return [
    ...(detail.zincProcess === null ? [{ label: "FINISH", words: finishWords(detail) }] : []),
    ...piecesOnRod(detail.hardware).map(({ count, what, words }) => ({
      label: countWords(count * total, what),
      words: `${count} a rod: ${words}`,
    })),
    ...(detail.operations.some(({ name }) => name === "weld") ? [] : [{ label: "WELDS", words: weldWords(detail) }]),
    ...(lacks.length === 0 ? [] : [{ label: NOT_GIVEN, words: lacks.join(", ") }]),
    { label: "BUNDLES, ONE A BASE", words: told },
  ].filter(({ words }) => words !== "");
}

/** Widths of the columns of the operations, mm; what is done takes the rest. */
const COLUMNS = { number: 5.5, station: 27, done: 16, by: 15, date: 18 } as const;
const PAD = 1;
const LEADING = 1.42;
/** A box that is written in by hand, mm (common practice). */
const LEAST_ROW = 8;

interface OperationRow {
  readonly operation: Operation;
  readonly lines: readonly string[];
  readonly height: number;
}

function operationsPiece(_: RodPapers, lot: RodLot, width: number, lettering: Lettering): Piece {
  const { small, body } = lettering;
  const { number, station, done, by, date } = COLUMNS;
  const room = width - number - station - done - by - date;
  const rows = lot.detail.operations.map((operation): OperationRow => {
    const lines = wrap(`${operation.words}${sourceWords(operation)}`, room - 2 * PAD, small);
    return { operation, lines, height: Math.max(LEAST_ROW, lines.length * LEADING * small + 2 * PAD) };
  });
  const title = body * 2;
  const names = small * 1.8;
  const height = title + names + rows.reduce((sum, row) => sum + row.height, 0);
  const stops = [
    0,
    number,
    number + station,
    number + station + room,
    number + station + room + done,
    width - date,
    width,
  ];
  const draw = (x: number, top: number) => {
    const under = top - title;
    return group("operations", [
      ...headingItems(`${lot.mark}: OPERATIONS ON ${lot.total} RODS (* common practice)`, x, top, width, lettering),
      ...["", "STATION", "WHAT", "DONE", "BY", "DATE"].map((words, i) =>
        text("table", words, at(x + (stops[i] ?? 0) + PAD, under - names + small * 0.45), small),
      ),
      ...operationRows(rows, x, under - names, stops, small),
      strokeOf(
        "table",
        stops.map((stop) => line(at(x + stop, under), at(x + stop, top - height))),
      ),
      stroke("table", line(at(x, under - names), at(x + width, under - names))),
    ]);
  };
  return { height, draw };
}

/** A habit has a mark that the heading explains. */
function sourceWords({ from }: Operation): string {
  return from === HABIT ? " *" : ` (${from})`;
}

const HABIT = "common practice";

function operationRows(
  rows: readonly OperationRow[],
  x: number,
  top: number,
  stops: readonly number[],
  small: number,
): readonly SceneItem[] {
  let y = top;
  const width = stops.at(-1) ?? 0;
  return rows.flatMap(({ operation, lines, height }, i) => {
    const first = y - PAD - small * 1.05;
    y -= height;
    const place = (column: number, base: number) => at(x + (stops[column] ?? 0) + PAD, base);
    return [
      text("table", `${i + 1}`, place(0, first), small),
      text("table", operation.name.toUpperCase(), place(1, first), small, { bold: true }),
      ...lines.map((words, k) => text("table", words, place(2, first - k * LEADING * small), small)),
      stroke("table", line(at(x, y), at(x + width, y))),
    ];
  });
}

/** One bundle a base; the last column is a box. */
function bundlesTable({ held }: RodPapers, { mark, uses, total }: RodLot): TableText {
  const own = groupBy(uses, ({ base }) => base);
  const rows = uses.map((use) => {
    const name = (own.get(use.base)?.length ?? 0) > 1 ? `${use.base} group ${use.group}` : use.base;
    const status = held.has(use.base) ? "HELD" : "";
    return [name, `${basesOf(use)}`, `${use.perBase}`, `${use.quantity}`, status, "________"];
  });
  const column = (title: string, share: number, align: "start" | "end" = "end") => ({ title, share, align });
  return {
    name: "bundles",
    heading: `${mark}: BUNDLES, ONE A BASE`,
    columns: [
      column("BASE", 0.3, "start"),
      column("BUNDLES", 0.14),
      column("RODS EACH", 0.14),
      column("RODS", 0.12),
      column("STATUS", 0.15),
      column("PACKED", 0.15),
    ],
    rows: [...rows, ["ALL", `${uses.reduce((sum, use) => sum + basesOf(use), 0)}`, "", `${total}`, "", ""]],
    foot: [],
    under: [],
    strong: new Set([rows.length]),
  };
}
