/** The column of tables at the right of a sheet: title block at the foot, revisions at the head, the rest between. */
import { at, line, stroke } from "./items.js";
import type { Area } from "./paper.js";
import type { SheetRequest } from "./request.js";
import type { SceneItem } from "./scene.js";
import type { Scale, SheetSize } from "./sheet-sizes.js";
import { CAUTIONS, checkTable, holeTable, needsHoleTable, plateNotes, revisionTable, rodTable, tapeTable } from "./sheet-tables.js";
import { headHeight, notesPiece, type Piece, rowHeight, type TableText, tablePiece } from "./table.js";
import { titleBlock } from "./title-block.js";

/** Left edge of the panel and of what stands beside it; `finish` draws it, null when the notes do not fit either. */
export interface Panel {
  readonly left: number;
  readonly finish: (unplaced: readonly string[]) => readonly SceneItem[] | null;
}

const MARGIN = 3;
const LEAST_CHECKS = 4;
const MOST_CHECKS = 40;

/** Null when the tables do not fit this sheet. */
export function layoutPanel(request: SheetRequest, sheet: SheetSize, scale: Scale, inside: Area, strict: boolean): Panel | null {
  const width = sheet.panel - 2 * MARGIN;
  const title = titleBlock(request, sheet, scale, sheet.panel);
  const top = inside.y1 - MARGIN;
  const bottom = inside.y0 + title.height + MARGIN;
  const table = (words: TableText, room = width) => tablePiece(words, room, sheet.lettering);
  const plan = planHoleTable(request, sheet, inside, top - bottom);
  if (plan === null) return null;
  const tape = tapeTable(request);
  const fixed: readonly Piece[] = [
    table(revisionTable(request, 4)),
    ...plan.inPanel,
    table(rodTable(request)),
    ...(tape === null ? [] : [table(tape)]),
  ];
  const finish = (unplaced: readonly string[]) => {
    const notes = notesPiece("notes", "NOTES", plateNotes(request, unplaced), width, sheet.lettering);
    const cautions = notesPiece("cautions", "CAUTIONS", CAUTIONS, width, sheet.lettering);
    const needed = [...fixed, notes, cautions].reduce((sum, piece) => sum + piece.height + GAP, 0);
    const room = top - bottom - needed - headHeight(sheet.lettering) - rowHeight(sheet.lettering) - GAP - 1;
    const rows = Math.min(MOST_CHECKS, Math.floor(room / rowHeight(sheet.lettering)));
    if (rows < (strict ? Math.min(LEAST_CHECKS, request.rows.length) : 0)) return null;
    const pieces = [...fixed, table(checkTable(request, Math.max(0, rows))), notes, cautions];
    return [
      stroke("table-heavy", line(at(inside.x1 - sheet.panel, inside.y0), at(inside.x1 - sheet.panel, inside.y1))),
      ...stacked(pieces, inside.x1 - sheet.panel + MARGIN, top),
      title.draw(inside.x1 - sheet.panel, inside.y0 + title.height),
      ...plan.beside,
    ];
  };
  return { left: inside.x1 - sheet.panel - plan.besideWidth, finish };
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

interface HoleTablePlan {
  readonly inPanel: readonly Piece[];
  readonly beside: readonly SceneItem[];
  readonly besideWidth: number;
}

const COLUMN = { small: 64, large: 88 };

/** In the panel while it takes less than a third of it; otherwise in columns of their own beside it. */
function planHoleTable(request: SheetRequest, sheet: SheetSize, inside: Area, room: number): HoleTablePlan | null {
  if (!needsHoleTable(request)) return { inPanel: [], beside: [], besideWidth: 0 };
  const { lettering } = sheet;
  const count = request.plate.holes.length;
  const whole = tablePiece(holeTable(request, 0, count), sheet.panel - 2 * MARGIN, lettering);
  if (whole.height <= room * 0.34) return { inPanel: [whole], beside: [], besideWidth: 0 };
  const column = lettering.small < 2 ? COLUMN.small : COLUMN.large;
  const height = inside.y1 - inside.y0 - 2 * MARGIN;
  const perColumn = Math.floor((height - headHeight(lettering) - rowHeight(lettering) - 1) / rowHeight(lettering));
  const columns = Math.ceil(count / perColumn);
  const even = Math.ceil(count / columns);
  const besideWidth = columns * (column + 2 * MARGIN);
  if (besideWidth > (sheet.width - sheet.panel) * 0.45) return null;
  const left = inside.x1 - sheet.panel - besideWidth;
  const beside = Array.from({ length: columns }, (_, i) => {
    const piece = tablePiece(holeTable(request, i * even, Math.min(count, (i + 1) * even)), column, lettering);
    return piece.draw(left + i * (column + 2 * MARGIN) + MARGIN, inside.y1 - MARGIN);
  });
  const edge = stroke("table-heavy", line(at(left, inside.y0), at(left, inside.y1)));
  return { inPanel: [], beside: [edge, ...beside], besideWidth };
}
