/** The cover of a set: what it holds page by page, what in it is held, what is asked, and what changed since the last issue. */
import { listed } from "../diagnostics/listed.js";
import type { Job } from "../job/model/job.js";
import { banners } from "./banner.js";
import { frameOf, insideBorder } from "./border.js";
import { type Flow, stack, startFlow } from "./flow.js";
import { at, group, line, stroke, text } from "./items.js";
import type { Area } from "./paper.js";
import { SHEET_CAUTIONS } from "./plate-notes.js";
import { revisionTable } from "./revision-table.js";
import type { Scene, SceneItem } from "./scene.js";
import { type SheetSize, sheetSizes } from "./sheet-sizes.js";
import { respelled } from "./spelling.js";
import { notesPiece, type Piece, type TableText } from "./table.js";
import { printable, wrap } from "./text-metrics.js";
import { blockOfRows, field, rowMakers } from "./title-block.js";

/** A page of the set, in its order. */
export interface CoverPage {
  /** `T1`, `PLAN 1 OF 2`. */
  readonly name: string;
  /** What it shows, and for which bases. */
  readonly about: string;
  /** Name of the sheet's own size. */
  readonly size: string;
  /** As in its title block; "" where it has none. */
  readonly scale: string;
  readonly held: boolean;
  /** What of a released job an open question keeps from being released: a template's mark, or the layout; absent else. */
  readonly unreleased?: string;
  /** Percent of its own size, where the paper is too small for it; null: at its own size. */
  readonly reduced: number | null;
}

/** Everything a cover says. */
export interface CoverRequest {
  readonly job: Job;
  readonly programVersion: string;
  /** After the cover's own pages. */
  readonly pages: readonly CoverPage[];
  /** Held templates and bases, and the layout, with why. */
  readonly held: readonly { readonly name: string; readonly reasons: readonly string[] }[];
  /** Open questions to the engineer of record. */
  readonly questions: readonly { readonly number: string; readonly about: string; readonly text: string }[];
  /** `LETTER`; null where each page has its sheet's own size. */
  readonly paper: string | null;
  readonly isMeant: (size: SheetSize) => boolean;
}

const GAP = 4;

/** The pages of the cover, in order: one, or more where the lists are long. */
export function drawCover(request: CoverRequest): readonly Scene[] {
  const sheet = coverSize(request);
  const count = coverCount(request, sheet);
  const flow = startFlow(coverTables(request, count), sheet.lettering);
  return Array.from({ length: count }, (_, i) => coverPage(request, sheet, flow, i, count));
}

/** The larger of the two smallest sizes that is meant: lists are read at a desk. */
function coverSize({ job, isMeant }: CoverRequest): SheetSize {
  const sizes = sheetSizes(job.unit).slice(0, 2).toReversed();
  const size = sizes.find(isMeant) ?? sizes.at(-1);
  if (size === undefined) throw new RangeError("no sheet sizes");
  return size;
}

/** Pages that the tables take; page numbers of as many digits as there may be take the same room. */
function coverCount(request: CoverRequest, sheet: SheetSize): number {
  const flow = startFlow(coverTables(request, 1), sheet.lettering);
  let count = 0;
  do {
    coverPage(request, sheet, flow, count, count + 1);
    count += 1;
  } while (!flow.isEmpty);
  return count;
}

function coverPage(request: CoverRequest, sheet: SheetSize, flow: Flow, index: number, count: number): Scene {
  const { job } = request;
  const inside = insideBorder(sheet);
  const left = index === 0 ? inside.x1 - sheet.panel : inside.x1;
  const area: Area = { x0: inside.x0 + GAP, y0: inside.y0 + GAP, x1: left - GAP, y1: inside.y1 - GAP };
  const ofPages = count === 1 ? "" : `, page ${index + 1} of ${count}`;
  return {
    size: sheet.name,
    width: sheet.width,
    height: sheet.height,
    title: `Set of job ${printable(job.number)} rev ${job.revision}, cover${ofPages}`,
    description: `${printable(job.title)}. ${request.pages.length + count} pages. Status: ${job.status}.`,
    items: [
      frameOf(sheet),
      ...body(request, sheet, area, flow, { index, count }),
      ...(index === 0 ? panel(request, sheet, left, inside, count) : []),
    ],
  };
}

interface CoverPlace {
  readonly index: number;
  readonly count: number;
}

/** Pages after the first are lists under one line that says whose. */
function body(
  request: CoverRequest,
  sheet: SheetSize,
  area: Area,
  flow: Flow,
  { index, count }: CoverPlace,
): readonly SceneItem[] {
  const width = area.x1 - area.x0;
  const head = index === 0 ? headPieces(request, sheet, width) : [runningHead(request, sheet, width, { index, count })];
  const used = head.reduce((sum, { height }) => sum + height + 3, 0);
  const tables = flow.take(width, area.y1 - area.y0 - used, 1);
  if (tables.length === 0 && !flow.isEmpty && index > 0)
    throw new RangeError("a row of a cover that is higher than it");
  return stack([...head, ...tables], area.x0, area.y1);
}

/** Job and title in large letters, then the banner of a job that is not released. */
function headPieces(request: CoverRequest, { lettering }: SheetSize, width: number): readonly Piece[] {
  const { job } = request;
  const { title, heading } = lettering;
  const lines = [
    ...largeLines(`JOB ${printable(job.number)}: ${printable(job.title)}`, title, width),
    ...largeLines(`ANCHOR-ROD SETTING TEMPLATES, REVISION ${job.revision}`, heading, width),
    ...largeLines(statusWords(request), heading, width),
  ];
  const height = lines.reduce((sum, { letter }) => sum + letter * LEADING, 0);
  return [
    { height, draw: (x, top) => group("cover-title", largeItems(lines, x, top)) },
    ...banners({ job, held: [] }, width, lettering),
  ];
}

function runningHead({ job, pages }: CoverRequest, { lettering }: SheetSize, width: number, place: CoverPlace): Piece {
  const of = `PAGE ${place.index + 1} OF ${pages.length + place.count}`;
  const words = `JOB ${printable(job.number)}, REVISION ${job.revision}, ${job.date}: COVER, ${of}`;
  const lines = largeLines(words, lettering.heading, width);
  const height = lines.reduce((sum, { letter }) => sum + letter * LEADING, 0);
  return { height, draw: (x, top) => group("cover-title", largeItems(lines, x, top)) };
}

interface LargeLine {
  readonly words: string;
  readonly letter: number;
}

const LEADING = 1.7;

function largeLines(words: string, letter: number, width: number): readonly LargeLine[] {
  return wrap(words, width, letter, true).map((line) => ({ words: line, letter }));
}

function largeItems(lines: readonly LargeLine[], x: number, top: number): readonly SceneItem[] {
  let y = top;
  return lines.map(({ words, letter }) => {
    const item = text("title", words, at(x, y - letter), letter, { bold: true });
    y -= letter * LEADING;
    return item;
  });
}

function panel(request: CoverRequest, sheet: SheetSize, x: number, inside: Area, count: number): readonly SceneItem[] {
  const { lettering } = sheet;
  const width = sheet.panel - 2 * GAP;
  const pieces = [
    ...startFlow([revisionTable(request, 6)], lettering).take(width, Number.MAX_SAFE_INTEGER, 1),
    notesPiece("notes", "NOTES", coverNotes(request), width, lettering),
    notesPiece("cautions", "CAUTIONS", SHEET_CAUTIONS, width, lettering),
  ];
  const title = coverTitle(request, sheet, `1 OF ${request.pages.length + count}`);
  const room = inside.y1 - inside.y0 - title.height - 2 * GAP;
  const fitting = pieces.filter((_, i) => sumOf(pieces.slice(0, i + 1)) <= room);
  const edge = stroke("table-heavy", line(at(x, inside.y0), at(x, inside.y1)));
  return [edge, ...stack(fitting, x + GAP, inside.y1 - GAP), title.draw(x, inside.y0 + title.height)];
}

const sumOf = (pieces: readonly Piece[]): number => pieces.reduce((sum, { height }) => sum + height + 3, 0);

function coverNotes({ paper, pages }: CoverRequest): readonly string[] {
  const reduced = pages.filter((page) => page.reduced !== null).length;
  return [
    paper === null
      ? "Each page has the size of its sheet: print at 100 %, not fitted to the paper, and check the bar on the print."
      : `All pages are put on ${paper}: print at 100 % and check the bar on the print.`,
    ...(reduced === 0
      ? []
      : [
          `${reduced === 1 ? "1 page is" : `${reduced} pages are`} reduced, and not at the scales stated: see the list. Tell the size by the bar on the print.`,
        ]),
    pages.some(({ unreleased }) => unreleased !== undefined)
      ? "Sheets that say HELD, or NOT RELEASED for a question that is open, are not to be cut, drilled or set by."
      : "Sheets that say HELD are not to be cut, drilled or set by.",
  ];
}

/** `RELEASED; 1 HELD; 6 QUESTIONS OPEN; 2 NOT RELEASED`: never released alone where something is not. */
function statusWords({ job, held, questions, pages }: CoverRequest): string {
  const unreleased = new Set(pages.flatMap((page) => page.unreleased ?? []));
  const open = questions.length === 1 ? "1 QUESTION OPEN" : `${questions.length} QUESTIONS OPEN`;
  return [
    job.status.toUpperCase(),
    ...(held.length > 0 ? [`${held.length} HELD`] : []),
    ...(questions.length > 0 ? [open] : []),
    ...(unreleased.size > 0 ? [`${unreleased.size} NOT RELEASED`] : []),
  ].join("; ");
}

function coverTitle(request: CoverRequest, sheet: SheetSize, page: string): Piece {
  const { job, programVersion } = request;
  const { lettering } = sheet;
  const { row, signed } = rowMakers(sheet.panel, lettering);
  const rows = [
    row(field("JOB NO.", printable(job.number), 0.3), field("TITLE", printable(job.title), 0.7, "body", 9)),
    row(field("SET OF SHEETS", "COVER", 0.8, "title"), field("REV", job.revision, 0.2, "title")),
    row(field("STATUS", statusWords(request), 0.72, "body", 2), field("DATE", job.date, 0.28)),
    signed(
      row(field("CHECKED BY", "", 0.3), field("DATE", "", 0.2), field("APPROVED BY", "", 0.3), field("DATE", "", 0.2)),
    ),
    row(field("OWNER", printable(job.owner), 0.6, "body", 9), field("DRAWN", printable(job.drawnBy), 0.4, "body", 9)),
    row(
      field("PROGRAM", `rodplate ${programVersion}`, 0.4),
      field("SIZE", sheet.name, 0.25),
      field("PAGE", page, 0.35),
    ),
  ];
  return blockOfRows(rows, lettering, sheet.panel);
}

function coverTables(request: CoverRequest, own: number): readonly TableText[] {
  return [changeTable(request), heldTable(request), questionTable(request), indexTable(request, own)].filter(
    ({ rows, foot }) => rows.length + foot.length > 0,
  );
}

const column = (title: string) => ({ title, share: 0, align: "start" as const });
const NONE: ReadonlySet<number> = new Set();

/** The rows of the job's own revision, else that there are none. */
function changeTable({ job }: CoverRequest): TableText {
  const own = job.revisions.filter(({ revision }) => revision === job.revision);
  const before = job.revisions.filter(({ revision }) => revision !== job.revision).at(-1);
  const since = before === undefined ? "" : ` ${before.revision} OF ${before.date}`;
  return {
    name: "cover-changes",
    heading: `CHANGED SINCE THE LAST ISSUE${since}`,
    columns: [column("REV"), column("DATE"), column("WHAT CHANGED")],
    rows:
      own.length > 0
        ? own.map(({ revision, date, text: words, marks }) => [revision, date, printable(words) + markWords(marks)])
        : [[job.revision, job.date, before === undefined ? "THE JOB LISTS NO EARLIER ISSUE" : "NOT SAID IN THE JOB"]],
    ...{ foot: [], under: [], strong: NONE },
  };
}

/** The marks that a revision says it touches; the last ones of a long list are in the job. */
function markWords(marks: readonly string[] | null): string {
  return marks === null || marks.length === 0 ? "" : ` (MARKS ${listed(marks, MOST_MARKS)})`;
}

const MOST_MARKS = 40;

function heldTable({ job, held }: CoverRequest): TableText {
  return {
    name: "cover-held",
    heading: "HELD: DO NOT CUT, DRILL OR SET",
    columns: [column("WHAT"), column("WHY")],
    rows: held.map(({ name, reasons }) => [name, printable(respelled(reasons.join("; "), job.editions))]),
    ...{ foot: [], under: [], strong: NONE },
  };
}

function questionTable({ job, questions }: CoverRequest): TableText {
  return {
    name: "cover-questions",
    heading: "QUESTIONS OPEN, TO THE ENGINEER OF RECORD",
    columns: [column("NO."), column("BASES"), column("QUESTION")],
    rows: questions.map(({ number, about, text: words }) => [
      number,
      printable(about),
      printable(respelled(words, job.editions)),
    ]),
    ...{ foot: [], under: [], strong: NONE },
  };
}

function onPaperWords(reduced: number | null): string {
  if (reduced === null) return "FULL SIZE";
  return reduced === 50 ? "HALF SIZE" : `${reduced} %`;
}

/** `own` pages of the cover stand before the first one listed. */
function indexTable({ pages, paper }: CoverRequest, own: number): TableText {
  const strong = new Set<number>();
  const rows = pages.map(({ name, about, size, scale, held, unreleased, reduced }, i) => {
    if (held || unreleased !== undefined) strong.add(i);
    const flag = held ? "HELD" : unreleased === undefined ? "" : "NOT RELEASED";
    const cells = [`${i + 1 + own}`, name, printable(about), size, scale, flag];
    return paper === null ? cells : [...cells, onPaperWords(reduced)];
  });
  const isAnyOpen = pages.some(({ unreleased }) => unreleased !== undefined);
  return {
    name: "cover-index",
    heading: "SHEETS OF THIS SET",
    columns: [
      "PAGE",
      "SHEET",
      "WHAT IT SHOWS",
      "SIZE",
      "SCALE",
      isAnyOpen ? "HELD, OPEN" : "HELD",
      ...(paper === null ? [] : ["PRINTED"]),
    ].map(column),
    rows,
    ...{ foot: [], under: [], strong },
  };
}
