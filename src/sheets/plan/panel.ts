/** The column at the right of every sheet of a plan: revisions, key plan, north, tables, notes, cautions, title block. */
import { insideBorder } from "../border.js";
import { type Flow, stack, TABLE_GAP } from "../flow.js";
import { at, line, stroke } from "../items.js";
import { SHEET_CAUTIONS } from "../plate-notes.js";
import { revisionTable } from "../revision-table.js";
import type { SceneItem } from "../scene.js";
import type { Scale, SheetSize } from "../sheet-sizes.js";
import { releaseWords } from "../status-words.js";
import { notesPiece, type Piece, tablePiece } from "../table.js";
import { printable } from "../text-metrics.js";
import { blockOfRows, editionWords, field, type Row, rowMakers, scaleWords } from "../title-block.js";
import { unitWord } from "../unit-word.js";
import type { PlanRequest } from "./request.js";

/** What one sheet's panel says beside the tables that flow through. */
export interface PanelText {
  readonly title: string;
  /** null: views of several scales, or none. */
  readonly scale: Scale | null;
  /** Pieces between revisions and tables. */
  readonly head: readonly Piece[];
  readonly notes: readonly string[];
}

const MARGIN = 3;

/** Width of pieces in the panel. */
export function panelWidth(sheet: SheetSize): number {
  return sheet.panel - 2 * MARGIN;
}

/** A panel that is laid out but for the number of its sheet, which only the last sheet settles. */
export interface LaidOutPanel {
  /** Height left for tables beside what stands on every sheet; negative: the sheet is too low. Millimetres. */
  readonly room: number;
  draw(sheetNumber: number, sheetCount: number): readonly SceneItem[];
}

/** Lays the panel out at the right of the border; takes from the flow what finds room. */
export function layoutPlanPanel(request: PlanRequest, sheet: SheetSize, words: PanelText, flow: Flow): LaidOutPanel {
  const { lettering } = sheet;
  const inside = insideBorder(sheet);
  const width = panelWidth(sheet);
  const x = inside.x1 - sheet.panel;
  const titleHeight = planTitleBlock(request, sheet, words, 1, 1).height;
  const revisions = tablePiece(revisionTable(request, 4), width, lettering);
  const notes = words.notes.length > 0 ? [notesPiece("notes", "NOTES", words.notes, width, lettering)] : [];
  const cautions = notesPiece("cautions", "CAUTIONS", SHEET_CAUTIONS, width, lettering);
  const fixed = [revisions, ...words.head, ...notes, cautions];
  const used = fixed.reduce((sum, { height }) => sum + height + TABLE_GAP, 0);
  const room = inside.y1 - inside.y0 - titleHeight - 2 * MARGIN - used;
  const order = [revisions, ...words.head, ...flow.take(width, room), ...notes, cautions];
  const draw = (sheetNumber: number, sheetCount: number) => [
    stroke("table-heavy", line(at(x, inside.y0), at(x, inside.y1))),
    ...stack(order, x + MARGIN, inside.y1 - MARGIN),
    planTitleBlock(request, sheet, words, sheetNumber, sheetCount).draw(x, inside.y0 + titleHeight),
  ];
  return { room, draw };
}

/** Title block after ISO 7200. CHECKED BY and APPROVED BY are left to people. */
function planTitleBlock(
  request: PlanRequest,
  sheet: SheetSize,
  words: PanelText,
  number: number,
  count: number,
): Piece {
  const { lettering } = sheet;
  return blockOfRows(titleRows(request, sheet, words, `${number} OF ${count}`), lettering, sheet.panel);
}

/** The job's, but where a question about the layout stops its release. */
function planStatus({ job, layoutOpen }: PlanRequest): string {
  return job.status === "released" ? releaseWords(job, layoutOpen) : job.status.toUpperCase();
}

function titleRows(request: PlanRequest, sheet: SheetSize, words: PanelText, sheetWords: string): readonly Row[] {
  const { job, coordinateFiles, dxfName, programVersion } = request;
  const { row, signed } = rowMakers(sheet.panel, sheet.lettering);
  const files = [...coordinateFiles, ...(dxfName === null ? [] : [dxfName])];
  return [
    row(field("JOB NO.", printable(job.number), 0.26), field("TITLE", printable(job.title), 0.74, "body", 2)),
    row(field(words.title, "ANCHOR-ROD PLAN", 0.8, "title"), field("REV", job.revision, 0.2, "title")),
    row(
      field("STATUS", planStatus(request), 0.36, "body", 2),
      field("SOURCE DRAWING", sourceWords(request), 0.36),
      field("DATE", job.date, 0.28),
    ),
    row(
      field("GENERAL TOLERANCES", job.tolerances === "" ? "NOT SPECIFIED" : job.tolerances, 0.36),
      field("SCALE", planScaleWords(words.scale), 0.36),
      field("UNITS", job.unit === "in" ? "FEET AND INCHES" : unitWord(job.unit), 0.28),
    ),
    signed(
      row(field("DRAWN", printable(job.drawnBy), 0.36), field("CHECKED BY", "", 0.36), field("APPROVED BY", "", 0.28)),
    ),
    row(field("COORDINATE FILES AND PLAN AS DXF", files.length === 0 ? "NONE" : files.join("\n"), 1, "small", 5)),
    row(field("RULES AND EDITIONS", editionWords({ job }), 1, "small", 4)),
    row(
      field("OWNER", printable(job.owner), 0.36),
      field("PROGRAM", `rodplate ${programVersion}`, 0.27),
      field("SIZE", sheet.name, 0.12),
      field("SHEET", sheetWords, 0.25),
    ),
  ];
}

function sourceWords({ job }: PlanRequest): string {
  const { number, revision } = job.drawing;
  if (number === "") return "NOT GIVEN";
  return revision === "" ? number : `${number} REV ${revision}`;
}

/** Scale of a sheet; null: views of several scales, or none. */
export function planScaleWords(scale: Scale | null): string {
  return scale === null ? "AS SHOWN" : scaleWords(scale);
}
