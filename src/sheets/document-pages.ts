/**
 * Pages that are read at a desk, in a shop or on a truck: lists, letters, travellers, each of a head that says which job and
 * revision, and of blocks from the top down. A table runs on over as many pages as it needs.
 */
import type { Job } from "../job/model/job.js";
import type { Unit } from "../units/length.js";
import { banners } from "./banner.js";
import { insideBorder } from "./border.js";
import { columnWidths, fitTable } from "./fit-table.js";
import { startFlow, TABLE_GAP } from "./flow.js";
import { at, group, line, stroke, text } from "./items.js";
import type { Area } from "./paper.js";
import type { Scene, SceneItem } from "./scene.js";
import { type Lettering, type SheetSize, sheetSizes } from "./sheet-sizes.js";
import type { Piece, TableText } from "./table.js";
import { printable, shorten, textWidth, wrap } from "./text-metrics.js";

/** What stands on a page, from the top down. A piece is never parted; `fresh` begins a page. */
export type Block =
  | { readonly kind: "table"; readonly table: TableText }
  | { readonly kind: "piece"; readonly piece: (width: number, lettering: Lettering) => Piece }
  | { readonly kind: "fresh" };

/** Which way round the office's own paper lies: letter, or A4 of a metric job. */
export type PageWay = "upright" | "landscape";

/** A document of the job. */
export interface DocumentText {
  readonly job: Pick<Job, "number" | "title" | "revision" | "status" | "date" | "unit">;
  /** Of the program. */
  readonly version: string;
  /** In capitals: `CUT LIST OF PLATES`. */
  readonly title: string;
  readonly way: PageWay;
  readonly blocks: readonly Block[];
  /** What its head says of the release, where the job's status alone would say too much. */
  readonly status?: string;
  /** Why what it is about is held, a sentence each; empty where it is not. */
  readonly held?: readonly string[];
  /** Its pieces say themselves what is held or not released, since each goes its own way; else a banner says it once. */
  readonly flagged?: true;
  /** True where much is to stand on one page: smaller letters, no smaller than those of a newspaper. */
  readonly fine?: boolean;
}

/** The page of that unit: letter or A4. */
export function documentPage(unit: Unit, way: PageWay): SheetSize {
  const [sheet] = sheetSizes(unit);
  if (sheet === undefined) throw new RangeError("no sheet sizes");
  return way === "landscape" ? sheet : { ...sheet, width: sheet.height, height: sheet.width };
}

/** Its pages, one at least. */
export function drawDocument(document: DocumentText): readonly Scene[] {
  const sheet = documentPage(document.job.unit, document.way);
  const pages = fillPages(document, sheet);
  return pages.map((items, i) => page(document, sheet, items, i + 1, pages.length));
}

const GAP = TABLE_GAP;

/** Inside the border, under the head and over the foot. */
function bodyOf(sheet: SheetSize): Area {
  const { x0, y0, x1, y1 } = insideBorder(sheet);
  const { heading, small } = sheet.lettering;
  return { x0, x1, y0: y0 + small * 2.4, y1: y1 - heading * 2 - small * 2.2 };
}

function fillPages(document: DocumentText, sheet: SheetSize): readonly (readonly SceneItem[])[] {
  const lettering = document.fine === true ? finer(sheet.lettering) : sheet.lettering;
  const gap = document.fine === true ? GAP / 2 : GAP;
  const body = bodyOf(sheet);
  const width = body.x1 - body.x0;
  const pages: SceneItem[][] = [[]];
  let top = body.y1;
  const turn = () => {
    if (pages.at(-1)?.length === 0) return;
    pages.push([]);
    top = body.y1;
  };
  const place = (piece: Piece) => {
    pages.at(-1)?.push(piece.draw(body.x0, top));
    top -= piece.height + gap;
  };
  const placeWhole = (piece: Piece) => {
    if (piece.height > top - body.y0) turn();
    place(piece);
  };
  const placeTable = (given: TableText) => {
    const table = given.rows.length === 0 ? withoutRows(given) : given;
    const flow = startFlow([partLongRows(table, width, lettering)], lettering);
    while (!flow.isEmpty) {
      const parts = flow.take(width, top - body.y0, LEAST_ROWS);
      const forced = parts.length > 0 || pages.at(-1)?.length !== 0 ? parts : flow.take(width, top - body.y0, 1);
      if (forced.length === 0 && pages.at(-1)?.length === 0)
        throw new RangeError(`${table.name}: a row that is higher than its page`);
      for (const piece of forced) place(piece);
      if (!flow.isEmpty) turn();
    }
  };
  const first = banners({ job: document.job, held: document.held ?? [] }, width, lettering);
  if (document.flagged !== true) for (const piece of first) placeWhole(piece);
  for (const block of document.blocks) {
    if (block.kind === "fresh") turn();
    else if (block.kind === "table") for (const table of remarksApart(block.table, width, lettering)) placeTable(table);
    else placeWhole(block.piece(width, lettering));
  }
  return pages.length > 1 && pages.at(-1)?.length === 0 ? pages.slice(0, -1) : pages;
}

const FINE = 0.64;

/** Only what tables and notes are set in: titles stay. */
function finer(lettering: Lettering): Lettering {
  return { ...lettering, small: lettering.small * FINE, body: lettering.body * FINE };
}

const LEAST_ROWS = 3;

/** A table in which nothing stands says so. */
function withoutRows(table: TableText): TableText {
  return { ...table, rows: [["none", ...table.columns.slice(1).map(() => "")]] };
}

/** A row of more lines than this may be parted between pages, as a list of all bases of a job. */
const MOST_LINES = 12;

/** A foot of more lines than that becomes a table of its own, which runs on over pages as any other. */
function remarksApart(table: TableText, width: number, { small }: Lettering): readonly TableText[] {
  if (table.foot.flatMap((words) => wrap(words, width, small)).length <= MOST_LINES) return [table];
  const columns = [{ title: "OF THE TABLE ABOVE", share: 1, align: "start" as const }];
  const rows = table.foot.map((words) => [words]);
  const remarks = { name: `${table.name}-remarks`, heading: "REMARKS", columns, rows, foot: [], under: [] };
  return [
    { ...table, foot: [] },
    { ...remarks, strong: new Set() },
  ];
}

/** The same table, each line of a long row as a row of its own. */
function partLongRows(table: TableText, width: number, lettering: Lettering): TableText {
  const fitted = fitTable(table, columnWidths(table), width, lettering);
  const strong = new Set<number>();
  const rows = table.rows.flatMap((row, i) => {
    const lines = fitted.linesOf(i);
    return (lines.length > MOST_LINES ? lines : [row]).map((cells) => ({ cells, isStrong: table.strong.has(i) }));
  });
  for (const [i, { isStrong }] of rows.entries()) if (isStrong) strong.add(i);
  return { ...table, rows: rows.map(({ cells }) => cells), strong };
}

function page(
  document: DocumentText,
  sheet: SheetSize,
  items: readonly SceneItem[],
  number: number,
  count: number,
): Scene {
  const { job, title } = document;
  const of = count === 1 ? "" : `, page ${number} of ${count}`;
  return {
    size: sheet.name,
    width: sheet.width,
    height: sheet.height,
    title: `${title}, job ${printable(job.number)} rev ${job.revision}${of}`,
    description: `${printable(job.title)}. Status: ${document.status ?? job.status}.`,
    listing: { about: title, scale: "" },
    items: [head(document, sheet), foot(document, sheet, number, count), ...items],
  };
}

/** Title in large letters, then job, revision, status and day over a heavy line. */
function head({ job, title, status: told = job.status }: DocumentText, sheet: SheetSize): SceneItem {
  const { x0, x1, y1 } = insideBorder(sheet);
  const { heading, small } = sheet.lettering;
  const right = `REV ${job.revision}`;
  const room = x1 - x0 - textWidth(right, heading, true) - 4;
  const line2 = `JOB ${printable(job.number)}  ${printable(job.title)}`;
  const status = `${told.toUpperCase()}, ${job.date}`;
  const y = y1 - heading * 1.3;
  const base = y - small * 1.9;
  const edge = bodyOf(sheet).y1 + GAP * 0.6;
  return group("document-head", [
    text("title", shorten(title, room, heading, true), at(x0, y), heading, { bold: true }),
    text("title", right, at(x1, y), heading, { anchor: "end", bold: true }),
    text("note", shorten(line2, x1 - x0 - textWidth(status, small) - 4, small), at(x0, base), small),
    text("note", status, at(x1, base), small, { anchor: "end" }),
    stroke("table-heavy", line(at(x0, edge), at(x1, edge))),
  ]);
}

function foot({ version }: DocumentText, sheet: SheetSize, number: number, count: number): SceneItem {
  const { x0, x1, y0 } = insideBorder(sheet);
  const { small } = sheet.lettering;
  return group("document-foot", [
    text("note", `rodplate ${version}`, at(x0, y0), small),
    text("note", `PAGE ${number} OF ${count}`, at(x1, y0), small, { anchor: "end" }),
  ]);
}
