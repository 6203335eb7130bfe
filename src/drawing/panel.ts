/** The column of tables at the right of a sheet: title block at the foot, revisions at the head, the rest between. */
import { at, line, stroke } from "./items.js";
import type { Area } from "./paper.js";
import type { SheetRequest } from "./request.js";
import type { SceneItem } from "./scene.js";
import type { Lettering, Scale, SheetSize } from "./sheet-sizes.js";
import {
  CAUTIONS,
  checkTable,
  countCheckLines,
  holeTable,
  needsHoleTable,
  plateNotes,
  revisionTable,
  rodTable,
  tapeTable,
} from "./sheet-tables.js";
import { headHeight, notesPiece, type Piece, rowHeight, type TableText, tablePiece } from "./table.js";
import { titleBlock } from "./title-block.js";

/** Left edge of the panel and of what stands beside it; `finish` draws it, null when the notes do not fit either. */
export interface Panel {
  readonly left: number;
  /** What stands at the foot of the drawing area instead of in the panel. */
  readonly foot: readonly Piece[];
  readonly finish: (unplaced: readonly string[]) => readonly SceneItem[] | null;
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

/** The arrangements of the tables that fit this sheet, best first. */
export function layoutPanels(
  request: SheetRequest,
  sheet: SheetSize,
  scale: Scale,
  inside: Area,
  strict: boolean,
): readonly Panel[] {
  const withTable = needsHoleTable(request);
  return ARRANGEMENTS.filter(({ holes }) => withTable || holes === "panel")
    .map((arrangement) => layoutPanel(request, sheet, scale, inside, strict, arrangement))
    .filter((panel) => panel !== null);
}

function layoutPanel(
  request: SheetRequest,
  sheet: SheetSize,
  scale: Scale,
  inside: Area,
  strict: boolean,
  arrangement: Arrangement,
): Panel | null {
  const width = sheet.panel - 2 * MARGIN;
  const { lettering } = sheet;
  const title = titleBlock(request, sheet, scale, sheet.panel);
  const top = inside.y1 - MARGIN;
  const room = top - inside.y0 - title.height - MARGIN;
  const columns = arrangement.holes === "beside" ? holeColumns(request, sheet, inside) : NO_COLUMNS;
  if (columns === null) return null;
  const holes =
    arrangement.holes === "panel" && needsHoleTable(request)
      ? [tablePiece(holeTable(request, 0, Infinity), width, lettering)]
      : [];
  const head = panelHead(request, holes, width, lettering);
  const left = inside.x1 - sheet.panel - columns.width;
  const cautions = (wide: number) => notesPiece("cautions", "CAUTIONS", CAUTIONS, wide, lettering);
  const notes = (wide: number, unplaced: readonly string[]) =>
    notesPiece("notes", "NOTES", plateNotes(request, unplaced), wide, lettering);
  const footWidth = left - inside.x0 - 8;
  const wanted = strict ? Math.min(LEAST_CHECKS, countCheckLines(request)) : 0;
  const finish = (unplaced: readonly string[]) => {
    const tail = [
      ...(arrangement.notes === "panel" ? [notes(width, unplaced)] : []),
      ...(arrangement.cautions === "panel" ? [cautions(width)] : []),
    ];
    const spare = room - totalHeight([...head, ...tail]) - headHeight(lettering) - rowHeight(lettering) - GAP - 1;
    const rows = Math.min(MOST_CHECKS, Math.floor(spare / rowHeight(lettering) / 2));
    if (rows < wanted) return null;
    const checks = tablePiece(checkTable(request, Math.max(0, rows)), width, lettering);
    return [
      stroke("table-heavy", line(at(inside.x1 - sheet.panel, inside.y0), at(inside.x1 - sheet.panel, inside.y1))),
      ...stacked([...head, checks, ...tail], inside.x1 - sheet.panel + MARGIN, top),
      title.draw(inside.x1 - sheet.panel, inside.y0 + title.height),
      ...columns.items,
    ];
  };
  if (finish([]) === null) return null;
  const atFoot = [
    ...(arrangement.notes === "foot" ? [notes(footWidth, [])] : []),
    ...(arrangement.cautions === "foot" ? [cautions(footWidth)] : []),
  ];
  return { left, foot: atFoot, finish };
}

function panelHead(
  request: SheetRequest,
  holes: readonly Piece[],
  width: number,
  lettering: Lettering,
): readonly Piece[] {
  const table = (words: TableText) => tablePiece(words, width, lettering);
  const tape = tapeTable(request);
  return [
    table(revisionTable(request, 4)),
    ...holes,
    table(rodTable(request)),
    ...(tape === null ? [] : [table(tape)]),
  ];
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
function holeColumns(request: SheetRequest, sheet: SheetSize, inside: Area): HoleColumns | null {
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
