/**
 * The tables of a sheet: the column at the right with the title block at its foot, and what finds no room in it in columns
 * beside it or in a band at the foot of the drawing area.
 */
import { greatestOf } from "../units/extremes.js";
import { once, onceFor } from "../units/once.js";
import { cutSignersBlock, emptySignersHeight, leastSignersHeight, signersBlock, wantedHeight } from "./check-table.js";
import { cornerTable } from "./corners.js";
import { holeTable, needsHoleTable } from "./hole-table.js";
import { at, group, line, stroke } from "./items.js";
import { jointTable } from "./joints.js";
import type { ChainMode } from "./located.js";
import { operatorBox } from "./operator-box.js";
import type { Area } from "./paper.js";
import { plateNotes, SHEET_CAUTIONS } from "./plate-notes.js";
import { isPart, type Prepared } from "./request.js";
import { revisionTable } from "./revision-table.js";
import { rodTable } from "./rod-table.js";
import type { SceneItem } from "./scene.js";
import { type Scale, type SheetSize, scales } from "./sheet-sizes.js";
import { type Shortening, shortNotes } from "./short-notes.js";
import { headHeight, leastWidth, notesPiece, type Piece, rowHeight, type TableText, tablePiece } from "./table.js";
import { tapeTable } from "./tape-table.js";
import { leastTitleHeight, titleBlock } from "./title-block.js";

/** One arrangement of the tables that fits its sheet. */
export interface Panel {
  /** Left edge of the panel and of what stands beside it. */
  readonly left: number;
  /** What the signer's block has of the room for every fail in words and as many margins as such a sheet should have; 1: all. */
  readonly roomy: number;
  /** What stands at the foot of the drawing area instead of in the panel. */
  readonly foot: readonly Piece[];
  /** Clear paper at the foot of the column beside the panel, where a view can stand; null where there is no such column. */
  readonly pocket: Area | null;
  /** Draws it with the notes of what found no room in the views, down to `floor` in the pocket; null when they do not fit. */
  readonly finish: (unplaced: readonly string[], scale: Scale, floor: number | null) => readonly SceneItem[] | null;
}

type Place = "panel" | "beside" | "foot";

/** Where the parts stand that need not be in the panel: "beside" is a column of its own, "foot" the drawing area's. */
interface Arrangement {
  /** Revisions, rods, tape check and the like. */
  readonly tables: "panel" | "beside";
  readonly holes: "panel" | "beside";
  readonly notes: Place;
  readonly cautions: Place;
}

/** The one that leaves most paper to the views first; where a column stands beside the panel, it is filled first. */
const USUAL: readonly Omit<Arrangement, "tables">[] = [
  { holes: "panel", notes: "panel", cautions: "panel" },
  { holes: "beside", notes: "beside", cautions: "beside" },
  { holes: "beside", notes: "beside", cautions: "panel" },
  { holes: "beside", notes: "panel", cautions: "panel" },
  { holes: "panel", notes: "panel", cautions: "foot" },
  { holes: "panel", notes: "foot", cautions: "foot" },
  { holes: "panel", notes: "beside", cautions: "beside" },
  { holes: "beside", notes: "panel", cautions: "foot" },
  { holes: "beside", notes: "foot", cautions: "foot" },
];

const ARRANGEMENTS: readonly Arrangement[] = USUAL.map((usual) => ({ tables: "panel", ...usual }));

/** For a sheet that holds no more than it must, and for one that is full. */
const CROWDED: readonly Arrangement[] = [
  ...ARRANGEMENTS,
  ...USUAL.filter(({ holes }) => holes === "beside").map((usual): Arrangement => ({ tables: "beside", ...usual })),
  { tables: "beside", holes: "panel", notes: "beside", cautions: "beside" },
];

const MARGIN = 3;
const GAP = 2;

/** Nothing is left in the panel but what the signer needs, and nothing takes the height of the views. */
const CUT: readonly Arrangement[] = (["beside", "panel"] as const).map((holes) => ({
  tables: "beside",
  holes,
  notes: "beside",
  cautions: "beside",
}));

/**
 * How much of the tables a sheet has. continued: all of them, in columns beside the panel too. brief: without earlier revisions
 * and the box for the cutting table; bare: without the side views too; cut: of checks and holes no more than has room. What is
 * left out is said, and in which file it is.
 */
export type Fullness = "whole" | "continued" | Shortening;

/** The arrangements of the tables that fit this sheet; they do not depend on the scale. */
export function layoutPanels(
  request: Prepared,
  sheet: SheetSize,
  inside: Area,
  mode: ChainMode,
  fullness: Fullness,
): readonly Panel[] {
  const withTable = needsHoleTable(request, mode);
  const parts = partsOf(request)(sheet)(fullness);
  const setups = arrangementsOf(fullness, withTable).map(
    (arrangement): Setup => ({ request, sheet, inside, fullness, arrangement, withTable, parts }),
  );
  if (fullness === "whole" && !holdsTables(setups)) return [];
  const panels: Panel[] = [];
  for (const setup of setups) {
    const panel = layoutPanel(setup);
    if (panel === null) continue;
    panels.push(panel);
    if (setup === setups[0] && panel.roomy === 1) break;
  }
  return panels;
}

function arrangementsOf(fullness: Fullness, withTable: boolean): readonly Arrangement[] {
  if (fullness === "cut") return CUT.filter(({ holes }) => holes === (withTable ? "beside" : "panel"));
  return (fullness === "whole" ? ARRANGEMENTS : CROWDED).filter(({ holes }) => withTable || holes === "panel");
}

/**
 * The tables that stand in the panel in every arrangement leave the signer his least: seen before any note is set. What costs
 * least to reckon comes first, so that a sheet that is far too small is known by its tables alone.
 */
function holdsTables([setup]: readonly Setup[]): boolean {
  const [scale] = scales(setup?.request.job.unit ?? "in");
  if (setup === undefined || scale === undefined) return false;
  const { inside, parts, sheet } = setup;
  const { lettering } = sheet;
  const width = sheet.panel - 2 * MARGIN;
  const room = inside.y1 - inside.y0 - 2 * MARGIN - GAP;
  const [least, empty] = [leastTitleHeight(lettering), emptySignersHeight(lettering)];
  if (room - heightOf(parts.tables(width)) < least + empty) return false;
  const left = room - heightOf(parts.head(width));
  if (left < least + Math.max(empty, parts.leastSigner())) return false;
  return left - parts.title(scale).height >= Math.max(empty, parts.leastSigner());
}

/** The pieces of a request on a sheet, each made once a width. */
interface Parts {
  readonly title: (scale: Scale) => Piece;
  /** At the head of a column: tables, and all pieces. */
  readonly tables: (width: number) => readonly Piece[];
  readonly head: (width: number) => readonly Piece[];
  /** Widths in which no cell of the tables is cut short: of those at the head in a column of this width, and of the hole table. */
  readonly leastHead: (width: number) => number;
  readonly leastHoles: () => number;
  readonly holes: () => Piece;
  /** Height of the signer's block with what it must say, and with what it should. */
  readonly leastSigner: () => number;
  readonly wantedSigner: () => number;
  readonly notes: (width: number, unplaced: readonly string[]) => Piece;
  readonly cautions: (width: number) => Piece;
}

const partsOf = onceFor((request: Prepared) =>
  once((sheet: SheetSize) => once((fullness: Fullness) => makeParts(request, sheet, fullness))),
);

/** Tables whose text is the same at any width. */
const tablesOf = onceFor((request: Prepared) => ({
  corners: cornerTable(request),
  joints: jointTable(request),
  tape: tapeTable(request),
}));
const plainNotes = onceFor((request: Prepared) => plateNotes(request, []));

function makeParts(request: Prepared, sheet: SheetSize, fullness: Fullness): Parts {
  const { lettering } = sheet;
  const width = sheet.panel - 2 * MARGIN;
  const isShort = fullness !== "whole" && fullness !== "continued";
  const texts = once((room: number): readonly TableText[] => {
    const { corners, joints, tape } = tablesOf(request);
    const rods = isPart(request.piece) ? null : rodTable(request, room, lettering);
    const others = [corners, joints, rods, tape];
    return [revisionTable(request, isShort ? 1 : MOST_REVISIONS), ...others.filter((table) => table !== null)];
  });
  const tables = once((room: number) => texts(room).map((table) => tablePiece(table, room, lettering)));
  const head = (room: number): readonly Piece[] => {
    const operator = isShort ? null : operatorBox(request, room, lettering);
    return operator === null ? tables(room) : [...tables(room), operator];
  };
  const left = isShort ? shortNotes(request, sheet.name, fullness) : [];
  const noted = (room: number, unplaced: readonly string[]) =>
    notesPiece("notes", "NOTES", [...allNotes(request, unplaced), ...left], room, lettering);
  const plain = once((room: number) => noted(room, []));
  return {
    title: once((scale: Scale) => titleBlock(request, sheet, scale)),
    tables,
    head: once(head),
    leastHead: (room) => greatestOf(texts(room).map((table) => leastWidth(table, lettering))),
    leastHoles: lazily(() => leastWidth(holeTable(request, 0, Infinity), lettering)),
    holes: lazily(() => tablePiece(holeTable(request, 0, Infinity), width, lettering)),
    leastSigner: lazily(() => leastSignersHeight(request, width, lettering)),
    wantedSigner: lazily(() => wantedHeight(request, width, lettering, wantedMargins(sheet))),
    notes: (room, unplaced) => (unplaced.length === 0 ? plain(room) : noted(room, unplaced)),
    cautions: once((room: number) => notesPiece("cautions", "CAUTIONS", SHEET_CAUTIONS, room, lettering)),
  };
}

function allNotes(request: Prepared, unplaced: readonly string[]): readonly string[] {
  return unplaced.length === 0 ? plainNotes(request) : plateNotes(request, unplaced);
}

const MOST_REVISIONS = 4;

/** Margins that a sheet of this height should have room for, each with its clause; a higher one has more. */
function wantedMargins({ height }: SheetSize): number {
  return WANTED.find(({ least }) => height >= least)?.margins ?? 2;
}

const WANTED = [
  { least: 550, margins: 8 },
  { least: 400, margins: 5 },
  { least: 270, margins: 3 },
] as const;

/** What is reckoned when it is first asked for. */
function lazily<Value>(reckon: () => Value): () => Value {
  let known: Value | null = null;
  return () => {
    known ??= reckon();
    return known;
  };
}

interface Setup {
  readonly request: Prepared;
  readonly sheet: SheetSize;
  readonly inside: Area;
  readonly fullness: Fullness;
  readonly arrangement: Arrangement;
  readonly withTable: boolean;
  readonly parts: Parts;
}

function layoutPanel(setup: Setup): Panel | null {
  const { request, sheet, inside, fullness, parts } = setup;
  const [scale] = scales(request.job.unit);
  if (scale === undefined) return null;
  const room = signerRoom(setup, scale, []);
  if (fullness !== "cut" && room < parts.leastSigner()) return null;
  const columns = besideColumns(setup, []);
  if (columns === null) return null;
  const left = inside.x1 - sheet.panel - columns.width;
  return {
    left,
    roomy: Math.min(1, room / parts.wantedSigner()),
    foot: footBand(setup, left - inside.x0 - 2 * VIEWS_MARGIN, []),
    pocket: pocketUnder(setup, columns),
    finish: (unplaced, atScale, floor) => finishPanel(setup, unplaced, atScale, floor),
  };
}

/** Between the border and what stands in the drawing area. */
export const VIEWS_MARGIN = 4;

function finishPanel(
  setup: Setup,
  unplaced: readonly string[],
  scale: Scale,
  floor: number | null,
): readonly SceneItem[] | null {
  const { sheet, inside, parts } = setup;
  const columns = besideColumns(setup, unplaced);
  const checks = signer(setup, scale, unplaced);
  if (columns === null || checks === null) return null;
  if (floor !== null && (pocketUnder(setup, columns)?.y1 ?? inside.y0) < floor) return null;
  const title = parts.title(scale);
  const x = inside.x1 - sheet.panel;
  const { before, after } = panelPieces(setup, unplaced);
  return [
    stroke("table-heavy", line(at(x, inside.y0), at(x, inside.y1))),
    ...stacked([...before, checks, ...after], x + MARGIN, inside.y1 - MARGIN),
    title.draw(x, inside.y0 + title.height),
    ...columnItems(setup, columns, floor),
  ];
}

/** What stands in the panel before and after the checks. */
function panelPieces(
  setup: Setup,
  unplaced: readonly string[],
): { readonly before: readonly Piece[]; readonly after: readonly Piece[] } {
  const { sheet, arrangement, withTable, parts } = setup;
  const width = sheet.panel - 2 * MARGIN;
  const [revisions, ...tables] = arrangement.tables === "panel" ? parts.head(width) : [];
  const holes = withTable && arrangement.holes === "panel" ? [parts.holes()] : [];
  const before = [...(revisions === undefined ? [] : [revisions]), ...holes, ...tables];
  return { before, after: loosePieces(setup, "panel", width, unplaced) };
}

/** The signer's block in the room that the other pieces of the panel leave; null where there is not enough. */
function signer(setup: Setup, scale: Scale, unplaced: readonly string[]): Piece | null {
  const { request, sheet, fullness } = setup;
  const width = sheet.panel - 2 * MARGIN;
  const room = signerRoom(setup, scale, unplaced);
  const block = signersBlock(request, width, sheet.lettering, room, wantedMargins(sheet));
  return block ?? (fullness === "cut" ? cutSignersBlock(request, width, sheet.lettering, room) : null);
}

function signerRoom(setup: Setup, scale: Scale, unplaced: readonly string[]): number {
  const { inside, parts } = setup;
  const { before, after } = panelPieces(setup, unplaced);
  return inside.y1 - inside.y0 - parts.title(scale).height - 2 * MARGIN - heightOf([...before, ...after]) - GAP;
}

/** Notes and cautions, where the arrangement puts them here. */
function loosePieces(
  { arrangement, parts }: Setup,
  where: Place,
  width: number,
  unplaced: readonly string[],
): readonly Piece[] {
  return [
    ...(arrangement.notes === where ? [parts.notes(width, unplaced)] : []),
    ...(arrangement.cautions === where ? [parts.cautions(width)] : []),
  ];
}

/** Notes and cautions side by side over the drawing area's width, as lines over all of it are hard to read. */
function footBand(setup: Setup, width: number, unplaced: readonly string[]): readonly Piece[] {
  const count = loosePieces(setup, "foot", width, unplaced).length;
  if (count < 2) return loosePieces(setup, "foot", width, unplaced);
  const each = (width - (count - 1) * BAND_GAP) / count;
  return [sideBySide(loosePieces(setup, "foot", each, unplaced), each + BAND_GAP)];
}

const BAND_GAP = 8;

function sideBySide(pieces: readonly Piece[], step: number): Piece {
  const height = pieces.reduce((most, piece) => Math.max(most, piece.height), 0);
  return {
    height,
    draw: (x, top) =>
      group(
        "band",
        pieces.map((piece, i) => piece.draw(x + i * step, top)),
      ),
  };
}

function heightOf(pieces: readonly Piece[]): number {
  return pieces.reduce((total, piece) => total + piece.height + GAP, 0);
}

function stacked(pieces: readonly Piece[], x: number, top: number): readonly SceneItem[] {
  let y = top;
  return pieces.map((piece) => {
    const item = piece.draw(x, y);
    y -= piece.height + GAP;
    return item;
  });
}

interface Columns {
  readonly stacks: readonly (readonly Piece[])[];
  /** Of one column, without its margins. */
  readonly column: number;
  /** Of all columns. */
  readonly width: number;
}

/** Least share of the sheet that is left for the views. */
const LEAST_DRAWING: Readonly<Record<Fullness, number>> = {
  whole: 0.4,
  continued: 0.3,
  brief: 0.4,
  bare: 0.2,
  cut: 0.2,
};
/** Width of a column beside the panel, in small letters: wider where a table needs it. */
const COLUMN = 36;

/** The hole table and other pieces in columns of full height beside the panel; null when they take too much of the sheet. */
function besideColumns(setup: Setup, unplaced: readonly string[]): Columns | null {
  const { sheet, inside, fullness, arrangement, parts } = setup;
  const column = columnWidth(setup);
  if (arrangement.tables === "beside" && fullness !== "cut" && parts.leastHead(column) > column) return null;
  const room = inside.y1 - inside.y0 - 2 * MARGIN;
  const most = Math.floor((sheet.width * (1 - LEAST_DRAWING[fullness]) - sheet.panel) / (column + 2 * MARGIN));
  const tables = arrangement.tables === "beside" ? parts.head(column) : [];
  const loose = loosePieces(setup, "beside", column, unplaced);
  if (fullness === "cut") return cutColumns(setup, { tables, loose, column, room, most });
  const stacks = filled([...tables, ...holePieces(setup, column, room, Infinity), ...loose], room);
  if (stacks.length > most || stacks.some((pieces) => isHigher(pieces, room))) return null;
  return { stacks, column, width: widthOf(stacks, column) };
}

interface Cut {
  readonly tables: readonly Piece[];
  readonly loose: readonly Piece[];
  readonly column: number;
  readonly room: number;
  /** Columns. */
  readonly most: number;
}

/** Cautions, notes and holes before the other tables: of these what has room. */
function cutColumns(setup: Setup, { tables, loose, column, room, most }: Cut): Columns {
  const left = Math.max(1, most - filled([...loose, ...tables], room).length);
  const all = filled([...loose, ...holePieces(setup, column, room, left), ...tables], room);
  const stacks = all.filter((pieces) => !isHigher(pieces, room)).slice(0, most);
  return { stacks, column, width: widthOf(stacks, column) };
}

function isHigher(pieces: readonly Piece[], room: number): boolean {
  return heightOf(pieces) - GAP > room;
}

function widthOf({ length }: Columns["stacks"], column: number): number {
  return length * (column + 2 * MARGIN);
}

/** Wider than the tables need that stand there, so that none of their cells fits to a hair; of a sheet that is cut, than the hole table. */
function columnWidth({ sheet, fullness, arrangement, parts }: Setup): number {
  const usual = COLUMN * sheet.lettering.small;
  const holes = arrangement.holes === "beside" ? parts.leastHoles() : 0;
  const tables = arrangement.tables === "beside" && fullness !== "cut" ? parts.leastHead(usual) : 0;
  return Math.max(usual, holes + GAP, tables + GAP);
}

/** The paper under the last of the columns. */
function pocketUnder({ sheet, inside }: Setup, { stacks, column }: Columns): Area | null {
  const last = stacks.at(-1);
  if (last === undefined) return null;
  const x1 = inside.x1 - sheet.panel - MARGIN;
  return { x0: x1 - column, x1, y0: inside.y0 + VIEWS_MARGIN, y1: inside.y1 - MARGIN - heightOf(last) - GAP };
}

/** A line at their left; where a view stands under one alone, the line turns off over it. */
function columnItems(
  { sheet, inside }: Setup,
  { stacks, column, width }: Columns,
  floor: number | null,
): readonly SceneItem[] {
  if (stacks.length === 0) return [];
  const right = inside.x1 - sheet.panel;
  const left = right - width;
  const foot = floor === null || stacks.length > 1 ? null : at(left, floor);
  const items = stacks.flatMap((pieces, i) =>
    stacked(pieces, left + i * (column + 2 * MARGIN) + MARGIN, inside.y1 - MARGIN),
  );
  return [
    stroke("table-heavy", line(foot ?? at(left, inside.y0), at(left, inside.y1))),
    ...(foot === null ? [] : [stroke("table-heavy", line(foot, at(right, foot.y)))]),
    ...items,
  ];
}

/** The hole table in even parts of at most this height, of which there are at most so many: what is left is said. */
function holePieces(
  { request, sheet, arrangement }: Setup,
  width: number,
  room: number,
  most: number,
): readonly Piece[] {
  if (arrangement.holes !== "beside") return [];
  const { lettering } = sheet;
  const count = request.plate.holes.length;
  const rows = Math.floor((room - headHeight(lettering) - rowHeight(lettering) - 1) / rowHeight(lettering));
  const shown = Math.min(count, rows * most);
  const parts = Math.ceil(shown / rows);
  const even = Math.ceil(shown / parts);
  return Array.from({ length: parts }, (_, i) => {
    const table = holeTable(request, i * even, Math.min(shown, (i + 1) * even));
    const isLast = i === parts - 1 && shown < count;
    const foot = isLast ? [`+ ${count - shown} MORE HOLES IN summary.json`] : table.foot;
    return tablePiece({ ...table, foot }, width, lettering);
  });
}

/** Pieces in order, each under the one before as long as there is room. */
function filled(pieces: readonly Piece[], room: number): readonly (readonly Piece[])[] {
  const stacks: Piece[][] = [];
  for (const piece of pieces) {
    const last = stacks.at(-1);
    if (last !== undefined && heightOf([...last, piece]) - GAP <= room) last.push(piece);
    else stacks.push([piece]);
  }
  return stacks;
}
