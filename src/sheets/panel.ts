/**
 * The tables of a sheet: the column at the right with the title block at its foot, and what finds no room in it in columns
 * beside it or in a band at the foot of the drawing area.
 */
import { leastSignersBlock, signersBlock } from "./check-table.js";
import { cornerTable } from "./corners.js";
import { holeTable, needsHoleTable } from "./hole-table.js";
import { at, group, line, stroke } from "./items.js";
import type { ChainMode } from "./located.js";
import { once, onceFor } from "./once.js";
import { operatorBox } from "./operator-box.js";
import type { Area } from "./paper.js";
import { plateNotes, SHEET_CAUTIONS } from "./plate-notes.js";
import type { Prepared } from "./request.js";
import { revisionTable } from "./revision-table.js";
import { rodTable } from "./rod-table.js";
import type { SceneItem } from "./scene.js";
import { scribingNotes, settingNote } from "./scribing-notes.js";
import { type Scale, type SheetSize, scales } from "./sheet-sizes.js";
import { headHeight, notesPiece, type Piece, rowHeight, tablePiece } from "./table.js";
import { tapeTable } from "./tape-table.js";
import { titleBlock } from "./title-block.js";

/** One arrangement of the tables that fits its sheet. */
export interface Panel {
  /** Left edge of the panel and of what stands beside it. */
  readonly left: number;
  /** The signer's block has room for a few margins, not for fails alone. */
  readonly roomy: boolean;
  /** What stands at the foot of the drawing area instead of in the panel. */
  readonly foot: readonly Piece[];
  /** Draws it with the notes of what found no room in the views; null when they do not fit either. */
  readonly finish: (unplaced: readonly string[], scale: Scale) => readonly SceneItem[] | null;
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
  { holes: "panel", notes: "beside", cautions: "beside" },
  { holes: "panel", notes: "panel", cautions: "foot" },
  { holes: "panel", notes: "foot", cautions: "foot" },
  { holes: "beside", notes: "panel", cautions: "foot" },
  { holes: "beside", notes: "foot", cautions: "foot" },
];

const ARRANGEMENTS: readonly Arrangement[] = USUAL.map((usual) => ({ tables: "panel", ...usual }));

/** For a sheet that holds no more than it must. */
const CROWDED: readonly Arrangement[] = [
  ...ARRANGEMENTS,
  ...USUAL.filter(({ holes }) => holes === "beside").map((usual): Arrangement => ({ tables: "beside", ...usual })),
  { tables: "beside", holes: "panel", notes: "beside", cautions: "beside" },
];

const MARGIN = 3;
const GAP = 2;

/**
 * How much of the tables a sheet has. brief: of a size that the job chose, earlier revisions, the box for the cutting table and
 * further notes left to the package's files; bare: the side views too. overflowing: whole, whether it fits or not.
 */
export type Fullness = "whole" | "brief" | "bare" | "overflowing";

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
  const known = fullness === "whole" ? ARRANGEMENTS : CROWDED;
  const setups = known
    .filter(({ holes }) => withTable || holes === "panel")
    .map((arrangement): Setup => ({ request, sheet, inside, fullness, arrangement, withTable, parts }));
  if (fullness === "whole" && !holdsTables(setups)) return [];
  const panels: Panel[] = [];
  for (const setup of setups) {
    const panel = layoutPanel(setup);
    if (panel === null) continue;
    panels.push(panel);
    if (setup === setups[0] && panel.roomy) break;
  }
  return panels;
}

/** The tables that stand in the panel in every arrangement leave the signer his least: seen before any note is set. */
function holdsTables([setup]: readonly Setup[]): boolean {
  const [scale] = scales(setup?.request.job.unit ?? "in");
  if (setup === undefined || scale === undefined) return false;
  const { inside, parts } = setup;
  const room = inside.y1 - inside.y0 - 2 * MARGIN - parts.title(scale).height - GAP;
  const tables = heightOf(parts.head(setup.sheet.panel - 2 * MARGIN));
  return room - tables >= parts.leastSigner();
}

/** The pieces of a request on a sheet, each made once a width. */
interface Parts {
  readonly title: (scale: Scale) => Piece;
  readonly head: (width: number) => readonly Piece[];
  readonly holes: () => Piece;
  /** Height of the signer's block with what it must say. */
  readonly leastSigner: () => number;
  readonly notes: (width: number, unplaced: readonly string[]) => Piece;
  readonly cautions: (width: number) => Piece;
}

const partsOf = onceFor((request: Prepared) =>
  once((sheet: SheetSize) => once((fullness: Fullness) => makeParts(request, sheet, fullness))),
);

/** Tables whose text is the same at any width. */
const tablesOf = onceFor((request: Prepared) => ({ corners: cornerTable(request), tape: tapeTable(request) }));
const plainNotes = onceFor((request: Prepared) => plateNotes(request, []));

function makeParts(request: Prepared, sheet: SheetSize, fullness: Fullness): Parts {
  const { lettering } = sheet;
  const width = sheet.panel - 2 * MARGIN;
  const isShort = fullness === "brief" || fullness === "bare";
  const head = (room: number): readonly Piece[] => {
    const { corners, tape } = tablesOf(request);
    const others = [corners, rodTable(request, room, lettering), tape];
    const tables = [revisionTable(request, isShort ? 1 : MOST_REVISIONS), ...others.filter((table) => table !== null)];
    const operator = isShort ? null : operatorBox(request, room, lettering);
    return [...tables.map((table) => tablePiece(table, room, lettering)), ...(operator === null ? [] : [operator])];
  };
  const say = (unplaced: readonly string[]) =>
    isShort ? shortNotes(request, sheet, fullness, unplaced) : allNotes(request, unplaced);
  const noted = (room: number, unplaced: readonly string[]) =>
    notesPiece("notes", "NOTES", say(unplaced), room, lettering);
  const plain = once((room: number) => noted(room, []));
  return {
    title: once((scale: Scale) => titleBlock(request, sheet, scale, sheet.panel)),
    head: once(head),
    holes: lazily(() => tablePiece(holeTable(request, 0, Infinity), width, lettering)),
    leastSigner: lazily(() => leastSignersBlock(request, width, lettering).height),
    notes: (room, unplaced) => (unplaced.length === 0 ? plain(room) : noted(room, unplaced)),
    cautions: once((room: number) => notesPiece("cautions", "CAUTIONS", SHEET_CAUTIONS, room, lettering)),
  };
}

function allNotes(request: Prepared, unplaced: readonly string[]): readonly string[] {
  return unplaced.length === 0 ? plainNotes(request) : plateNotes(request, unplaced);
}

const MOST_REVISIONS = 4;

/** How the template is set, all that is scribed and all that is not, what found no room on the views, and where the rest stands. */
function shortNotes(
  request: Prepared,
  { name }: SheetSize,
  fullness: Fullness,
  unplaced: readonly string[],
): readonly string[] {
  const views = fullness === "bare" ? ", setting section (rod table) and marks on the top face (cut file)" : "";
  const left = `Shortened for size ${name}: margins are in ledger.csv, other notes, revisions and cutting data in summary.json${views}.`;
  const drawing = unplaced.filter((words) => words !== "");
  return [settingNote(request), ...scribingNotes(request), ...drawing, left];
}

/** Three lines of two rows each, in small letters. */
const MARGINS = 10;

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
  const spare = signerRoom(setup, scale, []) - parts.leastSigner();
  if (fullness !== "overflowing" && spare < 0) return null;
  const columns = besideColumns(setup, []);
  if (columns === null) return null;
  const left = inside.x1 - sheet.panel - columns.width;
  return {
    left,
    roomy: spare >= MARGINS * sheet.lettering.small,
    foot: footBand(setup, left - inside.x0 - 2 * VIEWS_MARGIN, []),
    finish: (unplaced, atScale) => finishPanel(setup, unplaced, atScale),
  };
}

/** Between the border and what stands in the drawing area. */
export const VIEWS_MARGIN = 4;

function finishPanel(setup: Setup, unplaced: readonly string[], scale: Scale): readonly SceneItem[] | null {
  const { sheet, inside, parts } = setup;
  const columns = besideColumns(setup, unplaced);
  const checks = signer(setup, scale, unplaced);
  if (columns === null || checks === null) return null;
  const title = parts.title(scale);
  const x = inside.x1 - sheet.panel;
  const { before, after } = panelPieces(setup, unplaced);
  return [
    stroke("table-heavy", line(at(x, inside.y0), at(x, inside.y1))),
    ...stacked([...before, checks, ...after], x + MARGIN, inside.y1 - MARGIN),
    title.draw(x, inside.y0 + title.height),
    ...columnItems(setup, columns),
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
  const block = signersBlock(request, width, sheet.lettering, signerRoom(setup, scale, unplaced));
  return block ?? (fullness !== "overflowing" ? null : leastSignersBlock(request, width, sheet.lettering));
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
const LEAST_DRAWING: Readonly<Record<Fullness, number>> = { whole: 0.4, brief: 0.4, bare: 0.2, overflowing: 0.2 };
/** Width of a column beside the panel, in small letters. */
const COLUMN = 36;

/** The hole table and other pieces in columns of full height beside the panel; null when they take too much of the sheet. */
function besideColumns(setup: Setup, unplaced: readonly string[]): Columns | null {
  const { sheet, inside, fullness, arrangement, parts } = setup;
  const column = COLUMN * sheet.lettering.small;
  const loose = loosePieces(setup, "beside", column, unplaced);
  const room = inside.y1 - inside.y0 - 2 * MARGIN;
  const tables = arrangement.tables === "beside" ? parts.head(column) : [];
  const stacks = filled([...tables, ...holePieces(setup, column, room), ...loose], room);
  const width = stacks.length * (column + 2 * MARGIN);
  if (stacks.some((pieces) => heightOf(pieces) - GAP > room)) return null;
  return sheet.width - sheet.panel - width < LEAST_DRAWING[fullness] * sheet.width ? null : { stacks, column, width };
}

function columnItems({ sheet, inside }: Setup, { stacks, column, width }: Columns): readonly SceneItem[] {
  if (stacks.length === 0) return [];
  const left = inside.x1 - sheet.panel - width;
  const items = stacks.flatMap((pieces, i) =>
    stacked(pieces, left + i * (column + 2 * MARGIN) + MARGIN, inside.y1 - MARGIN),
  );
  return [stroke("table-heavy", line(at(left, inside.y0), at(left, inside.y1))), ...items];
}

/** The hole table cut into even parts of at most this height. */
function holePieces({ request, sheet, arrangement }: Setup, width: number, room: number): readonly Piece[] {
  if (arrangement.holes !== "beside") return [];
  const { lettering } = sheet;
  const count = request.plate.holes.length;
  const most = Math.floor((room - headHeight(lettering) - rowHeight(lettering) - 1) / rowHeight(lettering));
  const parts = Math.ceil(count / most);
  const even = Math.ceil(count / parts);
  return Array.from({ length: parts }, (_, i) =>
    tablePiece(holeTable(request, i * even, (i + 1) * even), width, lettering),
  );
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
