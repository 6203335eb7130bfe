/**
 * The setting sheet of a base: what the foreman hangs on the form. One page, upright: which template goes where and which way
 * round, the heights he measures, what is looked after before, while and after concrete is placed, and who signs.
 */
import { isSetOverCastRods } from "../../job/model/base-hole.js";
import { greatestOf } from "../../units/extremes.js";
import type { Unit } from "../../units/index.js";
import { formatLength } from "../../units/index.js";
import { banners } from "../banner.js";
import { insideBorder } from "../border.js";
import { startFlow } from "../flow.js";
import { at, group, line, stroke, text } from "../items.js";
import type { Area } from "../paper.js";
import type { SheetRequest } from "../request.js";
import type { Scene, SceneItem } from "../scene.js";
import { placedFigure } from "../section-figure.js";
import type { Figure } from "../section-shapes.js";
import { type Lettering, type SheetSize, sheetSizes } from "../sheet-sizes.js";
import { spellingOf } from "../spelling.js";
import type { Piece, TableText } from "../table.js";
import { printable, shorten, textWidth, wrapAtMost } from "../text-metrics.js";
import { gaugeFromTop, rodTopRange } from "./gauge.js";
import { gaugeFigure } from "./gauge-figure.js";
import { type BlankRow, blanksPiece, ticksPiece, wordsPiece } from "./pieces.js";
import { drawPlaceView, placeViewWords } from "./place-view.js";
import { type Facing, facingOf, placeWords } from "./places.js";
import { asSheetRequest, type SettingRequest } from "./request.js";
import { FIELD_CAUTIONS, stepsOf } from "./setting-words.js";
import { heightsTable, tapedTable } from "./tables.js";

/** Type of the document, as the head of the sheet and the cover of the set have it. */
export const SETTING_SHEET = "SETTING SHEET";

/** Draws it on the smallest paper on which everything has room. */
export function drawSettingSheet(request: SettingRequest): Scene {
  const content = contentOf(request);
  let layout: Layout | null = null;
  for (const sheet of uprightSizes(request.job.unit)) {
    layout = layOut(content, sheet);
    if (layout.room >= layout.least) break;
  }
  if (layout === null) throw new RangeError("no sheet sizes");
  return sceneOf(content, layout);
}

/** What it says, whatever paper it is on: worked out once. */
interface Content {
  readonly request: SettingRequest;
  readonly asSheet: SheetRequest;
  readonly facing: Facing;
  readonly places: readonly string[];
  readonly heights: TableText;
  readonly tape: TableText | null;
  readonly steps: ReturnType<typeof stepsOf>;
}

function contentOf(request: SettingRequest): Content {
  const { job, base } = request;
  const asSheet = asSheetRequest(request);
  const facing = facingOf(job, base.mark);
  return {
    request,
    asSheet,
    facing,
    places: placeWords(job, base.mark, base.quantity),
    heights: heightsTable(asSheet),
    tape: tapedTable(asSheet),
    steps: stepsOf(request, facing),
  };
}

/** How much larger letters are than on drawings where they have room: they are read at arm's length, or on a print of half size. */
const LARGER = [1.4, 1.2, 1];

/** Papers and letters, the best first: the office's own paper, then larger ones with letters as large as they allow. */
function uprightSizes(unit: Unit): readonly SheetSize[] {
  return sheetSizes(unit).flatMap((sheet, i) =>
    (i === 0 ? [1] : LARGER).map((factor) => ({
      ...sheet,
      ...{ width: sheet.height, height: sheet.width, lettering: enlarged(sheet.lettering, factor) },
    })),
  );
}

function enlarged({ small, body, heading, title }: Lettering, factor: number): Lettering {
  return { small: small * factor, body: body * factor, heading: heading * factor, title: title * factor };
}

/** Everything on a sheet: pieces above the pictures, pictures, pieces below. */
interface Layout {
  readonly sheet: SheetSize;
  readonly body: Area;
  readonly above: readonly Piece[];
  readonly below: readonly Piece[];
  readonly figure: Figure;
  /** Height that is left for the pictures, and what they need. */
  readonly room: number;
  readonly least: number;
}

/** Between two pieces, and between two columns. */
const [GAP, COLUMNS] = [2, 5];
/** Least height and width of the view from above, and what its caption takes beside, in letters. */
const LEAST_VIEW = { width: 66, height: 58 };
const CAPTION = 3.6;
/** Pictures are made no higher than this share of their column. */
const MOST_SHARE = 1.25;

function layOut(content: Content, sheet: SheetSize): Layout {
  const { lettering } = sheet;
  const { x0, y0, x1, y1 } = insideBorder(sheet);
  const body: Area = {
    x0,
    x1,
    y0: y0 + lettering.small * 2.2,
    y1: y1 - headOf(content.request, x1 - x0, lettering).height,
  };
  const width = x1 - x0;
  const above = [...banners(content.request, width, lettering), placesPiece(content, width, lettering)];
  const below = belowPieces(content, width, lettering);
  const figure = figureOf(content, lettering.small);
  const heights = [...above, ...below].reduce((sum, { height }) => sum + height + GAP, 0);
  const figureWidth = figure.extent.x1 - figure.extent.x0;
  const isWide = width - figureWidth - COLUMNS >= LEAST_VIEW.width;
  const least = Math.max(figure.extent.y1 - figure.extent.y0, LEAST_VIEW.height) + CAPTION * lettering.small;
  return { sheet, body, above, below, figure, room: body.y1 - body.y0 - heights, least: isWide ? least : Infinity };
}

function figureOf({ request, asSheet }: Content, letter: number): Figure {
  const [first] = request.base.groups;
  if (first === undefined) throw new RangeError("a base without rods");
  const draw = isSetOverCastRods(request.base.template) ? placedFigure : gaugeFigure;
  return draw(asSheet, first, letter);
}

const MOST_PLACE_LINES = 5;

function placesPiece({ request: { base }, places }: Content, width: number, lettering: Lettering): Piece {
  const letter = lettering.body;
  const paragraphs = places.flatMap((words) => wrapAtMost(words, width, letter, MOST_PLACE_LINES, true));
  const note = base.note === "" ? [] : wrapAtMost(`NOTE: ${base.note}`, width, letter, 2);
  const shown = paragraphs.length <= 2 * MOST_PLACE_LINES ? paragraphs : paragraphs.slice(0, 2 * MOST_PLACE_LINES);
  const more = shown.length < paragraphs.length ? ["MORE PLACES: SEE THE ANCHOR-ROD PLAN"] : [];
  return wordsPiece(
    "setting-places",
    [...[...shown, ...more].map((words) => ({ words, bold: true })), ...note.map((words) => ({ words, bold: false }))],
    width,
    letter,
  );
}

function belowPieces(content: Content, width: number, lettering: Lettering): readonly Piece[] {
  const { heights, tape, steps } = content;
  const half = (width - COLUMNS) / 2;
  const taped = tape === null ? [] : wholeTable(tape, half, lettering);
  return [
    beside([wholeTable(heights, half, lettering), taped], half),
    ...measuredPieces(content, width, lettering),
    beside(
      [
        [ticksPiece("BEFORE THE POUR", steps.before, half, lettering)],
        [
          ticksPiece("DURING THE POUR", steps.during, half, lettering),
          ticksPiece("AFTER THE POUR", steps.after, half, lettering),
        ],
      ],
      half,
    ),
    wordsPiece("setting-cautions", [{ words: FIELD_CAUTIONS.join(" "), bold: true }], width, lettering.small),
    blanksPiece("setting-signatures", SIGNATURES, width, lettering),
  ];
}

const SIGNATURES: readonly BlankRow[] = [
  { label: "", names: ["SET BY", "CHECKED BY", "INSPECTOR"], least: 30 },
  { label: "", names: ["DATE AND TIME", "POINTS SENT TO", "THIS FORM TO"], least: 30 },
];

function wholeTable(table: TableText, width: number, lettering: Lettering): readonly Piece[] {
  return startFlow([table], lettering).take(width, Number.MAX_SAFE_INTEGER, 1);
}

/** Columns of pieces, each `width` wide, their tops on one line. */
function beside(columns: readonly (readonly Piece[])[], width: number): Piece {
  const heights = columns.map((pieces) => pieces.reduce((sum, { height }) => sum + height + GAP, -GAP));
  return {
    height: greatestOf(heights, 0),
    draw: (x, top) =>
      group(
        "setting-columns",
        columns.flatMap((pieces, i) => {
          let y = top;
          return pieces.map((piece) => {
            const item = piece.draw(x + i * (width + COLUMNS), y);
            y -= piece.height + GAP;
            return item;
          });
        }),
      ),
  };
}

const MEASURED = "TOP OF TEMPLATE TO TOP OF ROD";

/** Rods of which each has a blank; of more only the highest and the lowest. */
const MOST_BLANKS = 24;

/** For each group the gauge in large letters, and blanks for what was measured. */
function measuredPieces({ request, asSheet }: Content, width: number, lettering: Lettering): readonly Piece[] {
  const { base, rods, job } = request;
  if (isSetOverCastRods(base.template)) return [];
  return base.groups.flatMap((own) => {
    const tags = rods.filter(({ group: { letter } }) => letter === own.letter).map(({ tag }) => tag);
    const names = tags.length <= MOST_BLANKS ? tags : ["HIGHEST, AND AT WHICH ROD", "LOWEST, AND AT WHICH ROD"];
    const gauge = gaugeFromTop(base, own);
    const range = rodTopRange(asSheet, gauge);
    const say = (length: number) => formatLength(length, job.unit);
    const name = `${spellingOf(job.editions).gauge}${base.groups.length === 1 ? "" : ` ${own.letter}`}`;
    const words =
      gauge.kind === "missing"
        ? `${name} FROM ${MEASURED} NOT GIVEN: ASK THE OFFICE`
        : `${name} ${say(gauge.value)}${range === null ? "" : ` (${say(range.least)} TO ${say(range.most)})`}, ${MEASURED}`;
    return [
      wordsPiece("setting-gauge", [{ words, bold: true }], width, lettering.heading),
      blanksPiece(
        "setting-blanks",
        [
          { label: "BEFORE", names, least: 14 },
          { label: "AFTER", names, least: 14 },
        ],
        width,
        lettering,
      ),
    ];
  });
}

function sceneOf(content: Content, layout: Layout): Scene {
  const { request } = content;
  const { job, base, plate, held } = request;
  const { sheet, body, above, below } = layout;
  const items: SceneItem[] = [headItem(request, sheet), footItem(request, sheet)];
  let y = body.y1;
  const place = (piece: Piece) => {
    items.push(piece.draw(body.x0, y));
    y -= piece.height + GAP;
  };
  for (const piece of above) place(piece);
  const width = body.x1 - body.x0 - (layout.figure.extent.x1 - layout.figure.extent.x0) - COLUMNS;
  const height = Math.max(layout.least, Math.min(layout.room, width * MOST_SHARE + CAPTION * sheet.lettering.small));
  const spare = Math.max(0, layout.room - height) / (below.length + 1);
  const picture = { x0: body.x0, x1: body.x1, y0: y - height, y1: y };
  for (const item of pictureItems(content, layout, picture)) items.push(item);
  y -= height + GAP + spare;
  for (const piece of below) {
    place(piece);
    y -= spare;
  }
  return {
    size: sheet.name,
    width: sheet.width,
    height: sheet.height,
    title: `${SETTING_SHEET} ${base.mark}, template ${plate.mark}, job ${printable(job.number)} rev ${printable(job.revision)}`,
    description: `${printable(job.title)}. Status: ${job.status}${held.length > 0 ? ", HELD" : ""}.`,
    listing: { about: SETTING_SHEET, scale: "" },
    items,
  };
}

/** The view from above at the left, the figure at the right, each with its caption. */
function pictureItems({ request, facing }: Content, { figure, sheet }: Layout, area: Area): readonly SceneItem[] {
  const { small } = sheet.lettering;
  const { x0, x1, y0, y1 } = figure.extent;
  const left = area.x1 - (x1 - x0);
  const split = left - COLUMNS;
  const foot = area.y0 + CAPTION * small;
  const view = drawPlaceView(request, facing, { x0: area.x0, x1: split, y0: foot, y1: area.y1 }, sheet.lettering);
  const caption = (words: string, from: number, to: number) =>
    wrapAtMost(words, to - from, small, 2).map((lines, i) =>
      text("label", lines, at(from, foot - small * (1.2 + i * 1.45)), small),
    );
  const middle = (foot + area.y1) / 2 - (y1 - y0) / 2;
  const words = placeViewWords(facing);
  const lost = view.lost.length === 0 ? "" : ` NO ROOM FOR ${view.lost.join(", ")}.`;
  return [
    ...view.items,
    ...caption(`${words}.${lost}`, area.x0, split),
    group("setting-section", figure.draw(left - x0, middle - y0)),
    ...caption(figureWords(request), left, area.x1),
  ];
}

function figureWords({ base }: SettingRequest): string {
  const [first] = base.groups;
  const of = base.groups.length === 1 || first === undefined ? "" : ` OF GROUP ${first.letter}, RODS ${first.rod.size}`;
  return `SECTION AT A ROD${of}. NOT TO SCALE`;
}

/** The mark of the base in letters that read from a distance, and the template: beside each other where both have room whole. */
interface Head {
  readonly rows: readonly {
    readonly words: string;
    readonly letter: number;
    readonly end: boolean;
    readonly y: number;
  }[];
  /** From the upper border down to what follows. */
  readonly height: number;
}

const MARK = 8;

function headOf({ job, base, plate }: SettingRequest, width: number, { heading, small }: Lettering): Head {
  const title = `${SETTING_SHEET} ${printable(base.mark)}`;
  const template = `TEMPLATE ${plate.mark} REV ${printable(job.revision)}`;
  const fitting = (words: string, most: number, room: number) =>
    Math.min(most, (most * room) / textWidth(words, most, true));
  const room = width - textWidth(template, heading, true) - 6;
  const beside = fitting(title, MARK, room);
  if (beside >= heading) {
    const rows = [
      { words: title, letter: beside, end: false, y: MARK + 1 },
      { words: template, letter: heading, end: true, y: MARK + 1 },
    ];
    return { rows, height: MARK + 2 + small * 4.6 };
  }
  const letter = Math.max(small, fitting(title, MARK, width));
  const under = Math.max(small, fitting(template, heading, width));
  const rows = [
    { words: shorten(title, width, letter, true), letter, end: false, y: letter + 1 },
    { words: shorten(template, width, under, true), letter: under, end: false, y: letter + 1 + under * 1.8 },
  ];
  return { rows, height: letter + 2 + under * 1.8 + small * 4.6 };
}

/** Mark and template, job and status, and a line for the place that this copy is for. */
function headItem(request: SettingRequest, sheet: SheetSize): SceneItem {
  const { job, open } = request;
  const { x0, x1, y1 } = insideBorder(sheet);
  const { small } = sheet.lettering;
  const width = x1 - x0;
  const { rows, height } = headOf(request, width, sheet.lettering);
  const status = `${job.status === "released" && open.length > 0 ? "NOT RELEASED" : job.status.toUpperCase()}, ${job.date}`;
  const title = `JOB ${printable(job.number)}  ${printable(job.title)}`;
  const [second, third] = [y1 - height + small * 2.8, y1 - height + small * 0.8];
  const place = "THIS PLACE: GRID";
  const written = line(at(x0 + textWidth(place, small, true) + 2, third - 0.6), at(x1, third - 0.6));
  return group("setting-head", [
    ...rows.map(({ words, letter, end, y }) =>
      text("label", words, at(end ? x1 : x0, y1 - y), letter, { anchor: end ? "end" : "start", bold: true }),
    ),
    text("label", shorten(title, width - textWidth(status, small) - 4, small), at(x0, second), small),
    text("label", status, at(x1, second), small, { anchor: "end" }),
    text("label", place, at(x0, third), small, { bold: true }),
    stroke("fine", written),
  ]);
}

function footItem({ programVersion }: SettingRequest, sheet: SheetSize): SceneItem {
  const { x0, y0 } = insideBorder(sheet);
  return group("setting-foot", [text("label", `rodplate ${programVersion}`, at(x0, y0), sheet.lettering.small)]);
}
