/** The column of tables at the right of a sheet: title block at the foot, revisions at the head, the rest between. */

import { checkTable } from "./check-table.js";
import { holeTable, needsHoleTable } from "./hole-table.js";
import { at, line, stroke } from "./items.js";
import type { ChainMode } from "./located.js";
import type { Area } from "./paper.js";
import { plateNotes, SHEET_CAUTIONS } from "./plate-notes.js";
import type { Prepared } from "./request.js";
import { revisionTable } from "./revision-table.js";
import { rodTable } from "./rod-table.js";
import type { SceneItem } from "./scene.js";
import { type Scale, type SheetSize, scales } from "./sheet-sizes.js";
import { headHeight, notesPiece, type Piece, rowHeight, tablePiece } from "./table.js";
import { tapeTable } from "./tape-table.js";
import { titleBlock } from "./title-block.js";

/** Left edge of the panel and of what stands beside it; `finish` draws it, null when the notes do not fit either. */
export interface Panel {
  readonly left: number;
  /** What stands at the foot of the drawing area instead of in the panel. */
  readonly foot: readonly Piece[];
  readonly finish: (unplaced: readonly string[], scale: Scale) => readonly SceneItem[] | null;
}

/** Where the parts stand that need not be in the panel: "beside" is a column of its own, "foot" the drawing area's. */
interface Arrangement {
  readonly holes: "panel" | "beside";
  readonly notes: "panel" | "foot";
  readonly cautions: "panel" | "foot";
}

const ARRANGEMENTS: readonly Arrangement[] = [
  { holes: "panel", notes: "panel", cautions: "panel" },
  { holes: "panel", notes: "panel", cautions: "foot" },
  { holes: "panel", notes: "foot", cautions: "foot" },
  { holes: "beside", notes: "panel", cautions: "panel" },
  { holes: "beside", notes: "panel", cautions: "foot" },
];

const MARGIN = 3;
const LEAST_CHECKS = 3;
const MOST_CHECKS = 30;

/** The arrangements of the tables that fit this sheet, best first; they do not depend on the scale. */
export function layoutPanels(
  request: Prepared,
  sheet: SheetSize,
  inside: Area,
  mode: ChainMode,
  strict: boolean,
): readonly Panel[] {
  const withTable = needsHoleTable(request, mode);
  return ARRANGEMENTS.filter(({ holes }) => withTable || holes === "panel")
    .map((arrangement) => layoutPanel({ request, sheet, inside, withTable, strict, arrangement }))
    .filter((panel) => panel !== null);
}

interface Setup {
  readonly request: Prepared;
  readonly sheet: SheetSize;
  readonly inside: Area;
  /** A hole table is needed. */
  readonly withTable: boolean;
  readonly strict: boolean;
  readonly arrangement: Arrangement;
}

function layoutPanel(setup: Setup): Panel | null {
  const { request, sheet, inside, arrangement } = setup;
  const columns = arrangement.holes === "beside" ? holeColumns(request, sheet, inside) : NO_COLUMNS;
  if (columns === null) return null;
  const [scale] = scales(request.job.unit);
  const width = sheet.panel - 2 * MARGIN;
  const head = panelHead(setup, width);
  if (scale === undefined || checksThatFit(setup, head, titleBlock(request, sheet, scale, sheet.panel), []) === null)
    return null;
  const left = inside.x1 - sheet.panel - columns.width;
  return {
    left,
    foot: loosePieces(setup, "foot", left - inside.x0 - 8, []),
    finish: (unplaced, atScale) => {
      const title = titleBlock(request, sheet, atScale, sheet.panel);
      const count = checksThatFit(setup, head, title, unplaced);
      if (count === null) return null;
      const checks = tablePiece(checkTable(request, count), width, sheet.lettering);
      const x = inside.x1 - sheet.panel;
      return [
        stroke("table-heavy", line(at(x, inside.y0), at(x, inside.y1))),
        ...stacked([...head, checks, ...loosePieces(setup, "panel", width, unplaced)], x + MARGIN, inside.y1 - MARGIN),
        title.draw(x, inside.y0 + title.height),
        ...columns.items,
      ];
    },
  };
}

/** Lines of the check table for which there is room; null when the panel does not hold what it must. */
function checksThatFit(setup: Setup, head: readonly Piece[], title: Piece, unplaced: readonly string[]): number | null {
  const { request, sheet, inside, strict } = setup;
  const { lettering } = sheet;
  const width = sheet.panel - 2 * MARGIN;
  const room = inside.y1 - inside.y0 - title.height - 2 * MARGIN;
  const others = totalHeight([...head, ...loosePieces(setup, "panel", width, unplaced)]);
  const spare = room - others - headHeight(lettering) - rowHeight(lettering) - GAP - 1;
  const count = Math.min(MOST_CHECKS, Math.floor(spare / rowHeight(lettering) / 2));
  const wanted = strict ? Math.min(LEAST_CHECKS, request.lines.length) : 0;
  return count < wanted ? null : Math.max(0, count);
}

/** Notes and cautions, where the arrangement puts them here. */
function loosePieces(
  { request, sheet, arrangement }: Setup,
  where: "panel" | "foot",
  width: number,
  unplaced: readonly string[],
): readonly Piece[] {
  const { lettering } = sheet;
  return [
    ...(arrangement.notes === where
      ? [notesPiece("notes", "NOTES", plateNotes(request, unplaced), width, lettering)]
      : []),
    ...(arrangement.cautions === where ? [notesPiece("cautions", "CAUTIONS", SHEET_CAUTIONS, width, lettering)] : []),
  ];
}

function panelHead({ request, sheet, withTable, arrangement }: Setup, width: number): readonly Piece[] {
  const tape = tapeTable(request);
  const withHoles = arrangement.holes === "panel" && withTable;
  const tables = [
    revisionTable(request, 4),
    ...(withHoles ? [holeTable(request, 0, Infinity)] : []),
    rodTable(request),
    ...(tape === null ? [] : [tape]),
  ];
  return tables.map((table) => tablePiece(table, width, sheet.lettering));
}

function totalHeight(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, piece) => sum + piece.height + GAP, 0);
}

const GAP = 2;

function stacked(pieces: readonly Piece[], x: number, top: number): readonly SceneItem[] {
  let y = top;
  return pieces.map((piece) => {
    const item = piece.draw(x, y);
    y -= piece.height + GAP;
    return item;
  });
}

interface HoleColumns {
  readonly items: readonly SceneItem[];
  readonly width: number;
}

const NO_COLUMNS: HoleColumns = { items: [], width: 0 };
/** Least width that is left for the views, border included. */
const LEAST_DRAWING = 150;
const COLUMN = { small: 64, large: 88 };

/** The hole table in columns of full height beside the panel; null when they would take too much of the sheet. */
function holeColumns(request: Prepared, sheet: SheetSize, inside: Area): HoleColumns | null {
  const { lettering } = sheet;
  const count = request.plate.holes.length;
  const column = lettering.small < 2 ? COLUMN.small : COLUMN.large;
  const height = inside.y1 - inside.y0 - 2 * MARGIN;
  const perColumn = Math.floor((height - headHeight(lettering) - rowHeight(lettering) - 1) / rowHeight(lettering));
  const columns = Math.ceil(count / perColumn);
  const even = Math.ceil(count / columns);
  const width = columns * (column + 2 * MARGIN);
  if (sheet.width - sheet.panel - width < LEAST_DRAWING) return null;
  const left = inside.x1 - sheet.panel - width;
  const tables = Array.from({ length: columns }, (_, i) => {
    const piece = tablePiece(holeTable(request, i * even, (i + 1) * even), column, lettering);
    return piece.draw(left + i * (column + 2 * MARGIN) + MARGIN, inside.y1 - MARGIN);
  });
  return { items: [stroke("table-heavy", line(at(left, inside.y0), at(left, inside.y1))), ...tables], width };
}
