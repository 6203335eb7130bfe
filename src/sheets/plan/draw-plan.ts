/**
 * The anchor-rod plan of a job: plan sheets first, then details, then what is left of the tables. One size for all sheets;
 * tables run through the free paper of every panel.
 */

import { greatestOf, leastOf } from "../../units/extremes.js";
import { banners } from "../banner.js";
import { frameOf, insideBorder } from "../border.js";
import type { Area } from "../paper.js";
import type { Scene, SceneItem } from "../scene.js";
import type { Scale, SheetSize } from "../sheet-sizes.js";
import { type DetailInput, detailScale, drawDetail } from "./detail.js";
import { type Flow, startFlow } from "./flow.js";
import { gridExtent } from "./grid.js";
import { keyPlanPiece } from "./key-plan.js";
import { legendPiece } from "./legend.js";
import { lengthOf, planLength } from "./lengths.js";
import { northPiece } from "./north.js";
import { planNotes } from "./notes.js";
import { type LaidOutPanel, layoutPlanPanel, panelWidth, stack } from "./panel.js";
import type { PlanRequest } from "./request.js";
import { isEnlarged } from "./symbols.js";
import { planTables } from "./tables.js";
import { type Arrangement, arrangePlan } from "./tiles.js";
import { type DrawnWindow, drawWindow } from "./window.js";

/** A sheet but for its number and the number of sheets. */
interface OpenSheet {
  readonly name: string;
  readonly items: readonly SceneItem[];
  readonly panel: LaidOutPanel;
}

/** Every sheet of the plan, in order. Always at least one. */
export function drawPlanSheets(request: PlanRequest): readonly Scene[] {
  const arrangement = arrangePlan(request, bannerHeight(request));
  const { sheet } = arrangement;
  const sheetOf = new Map(arrangement.tiles.map(({ column, row }, i) => [`${column} ${row}`, i + 1]));
  const windows = arrangement.tiles.map((tile) => drawWindow(request, arrangement, tile, drawingArea(sheet), sheetOf));
  const details = drawDetails(request, sheet);
  const allLines = windows.some(({ hasSpacings }) => !hasSpacings);
  const flow = startFlow(planTables(request, { marks: details.listed, allLines }), sheet.lettering);
  const sheets = [
    ...windows.map((window, i) => planSheet(request, arrangement, window, i, flow)),
    ...details.pages.map((page, i) => detailSheet(request, sheet, page, i, details.pages.length, flow)),
    ...tableSheets(request, sheet, flow),
  ];
  return sheets.map((open, i) => finish(request, sheet, open, i + 1, sheets.length));
}

function finish(request: PlanRequest, sheet: SheetSize, open: OpenSheet, number: number, count: number): Scene {
  const { job } = request;
  return {
    size: sheet.name,
    width: sheet.width,
    height: sheet.height,
    title: `Anchor-rod plan rev ${job.revision}, sheet ${number} of ${count}: ${open.name}, job ${job.number}`,
    description: `Sheet ${number} of ${count}, size ${sheet.name}. ${job.title}. Status: ${job.status}.`,
    items: [frameOf(sheet), ...open.items, ...open.panel(number, count)],
  };
}

/** The banner of a job that is not released takes this much of every sheet. */
function bannerHeight({ job }: PlanRequest): number {
  return job.status === "released" ? 0 : 18;
}

/** The paper left of the panel. */
function drawingArea(sheet: SheetSize): Area {
  const inside = insideBorder(sheet);
  return { x0: inside.x0 + 4, y0: inside.y0 + 4, x1: inside.x1 - sheet.panel - 4, y1: inside.y1 - 4 };
}

function planSheet(
  request: PlanRequest,
  arrangement: Arrangement,
  { items, page, unlabelled, hasControl, hasSpacings }: DrawnWindow,
  index: number,
  flow: Flow,
): OpenSheet {
  const { sheet, scale, tiles } = arrangement;
  const { lettering } = sheet;
  const width = panelWidth(sheet);
  const head = [
    ...(tiles.length > 1 ? [keyPlanPiece(arrangement, index, overallWords(request), width, lettering)] : []),
    northPiece(request, width, lettering),
    legendPiece(hasControl, width, lettering),
  ];
  const notes = planNotes(request, { ...unlabelled, enlarged: isEnlarged(page), spacings: !hasSpacings });
  const name = tiles.length > 1 ? `PLAN, PART ${index + 1} OF ${tiles.length}` : "PLAN";
  const panel = layoutPlanPanel(request, sheet, { title: name, scale, head, notes }, flow);
  return { name: name.toLowerCase(), items, panel };
}

/** `OVERALL 300'-0" × 150'-0"`, between the outermost x and y lines. */
function overallWords({ plan, job }: PlanRequest): string {
  const { x0, y0, x1, y1 } = gridExtent({ ...plan, bases: [], extent: NOWHERE });
  return `GRID OVERALL ${planLength(lengthOf(x1 - x0), job.unit)} × ${planLength(lengthOf(y1 - y0), job.unit)}`;
}

const NOWHERE = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };

/** Least size of a detail's cell. */
const CELL = { x: 150, y: 150 };

/** Details of one sheet, and the paper below and beside the last of them that is free for tables. */
interface DetailPage {
  readonly items: readonly SceneItem[];
  readonly free: readonly Area[];
}

interface Details {
  readonly pages: readonly DetailPage[];
  /** Marks whose rods are left to the coordinate table. */
  readonly listed: ReadonlySet<string>;
}

/** All details at one scale where that can be read, as many to a sheet as it holds. */
function drawDetails(request: PlanRequest, sheet: SheetSize): Details {
  const inputs = detailInputs(request);
  const whole = drawingArea(sheet);
  const area = { ...whole, y1: whole.y1 - bannerHeight(request) };
  const columns = Math.max(1, Math.floor((area.x1 - area.x0) / CELL.x));
  const rows = Math.max(1, Math.floor((area.y1 - area.y0) / CELL.y));
  const cells = cellsOf(area, columns, rows);
  const [first] = cells;
  if (first === undefined) throw new RangeError("a sheet without room for a detail");
  const scaleOf = commonScale(inputs, first, sheet);
  const listed = new Set<string>();
  const drawn = inputs.map((input, i) => {
    const cell = cells[i % cells.length] ?? first;
    const detail = drawDetail(input, cell, scaleOf(input), sheet.lettering);
    if (detail.listed) listed.add(input.base.mark);
    return detail.item;
  });
  const pages = Array.from({ length: Math.ceil(drawn.length / cells.length) }, (_, i) => {
    const items = drawn.slice(i * cells.length, (i + 1) * cells.length);
    return { items, free: freePaper(area, cells, items.length, columns) };
  });
  return { pages, listed };
}

/** Below the rows of cells that are used, and right of the last cell. */
function freePaper(area: Area, cells: readonly Area[], used: number, columns: number): readonly Area[] {
  const last = cells[used - 1];
  if (last === undefined) return [area];
  const beside = { x0: last.x1 + 4, y0: last.y0, x1: area.x1, y1: last.y1 };
  const below = { ...area, y1: last.y0 - 4 };
  return used % columns === 0 ? [below] : [below, beside];
}

/** Where the smallest scale is less than half of the largest, each detail has its own. */
function commonScale(
  inputs: readonly DetailInput[],
  cell: Area,
  { lettering }: SheetSize,
): (input: DetailInput) => Scale {
  const best = inputs.map((input) => detailScale(input, cell, lettering));
  const [low, high] = [leastOf(best.map(({ factor }) => factor)), greatestOf(best.map(({ factor }) => factor))];
  const common = best.find(({ factor }) => factor === low);
  return (input) => (common !== undefined && low * 2.01 >= high ? common : detailScale(input, cell, lettering));
}

function detailSheet(
  request: PlanRequest,
  sheet: SheetSize,
  { items, free }: DetailPage,
  index: number,
  count: number,
  flow: Flow,
): OpenSheet {
  const name = count > 1 ? `DETAILS, PART ${index + 1} OF ${count}` : "DETAILS";
  const tables = free.filter(isRoomy(sheet)).flatMap((area) => tableColumns(sheet, area, flow));
  const panel = layoutPlanPanel(request, sheet, { title: name, scale: null, head: [], notes: DETAIL_NOTES }, flow);
  return { name: name.toLowerCase(), items: [...bannerItems(request, sheet), ...items, ...tables], panel };
}

/** Tables are set beside details where there is this much height, and the width of a panel. */
const LEAST_FREE = 60;

function isRoomy(sheet: SheetSize): (area: Area) => boolean {
  return ({ x0, y0, x1, y1 }) => y1 - y0 > LEAST_FREE && x1 - x0 > LEAST_COLUMN * panelWidth(sheet);
}

const DETAIL_NOTES = [
  "Each type in its own axes, seen from above, before it is turned; +X and +Y are the type's own axes, not north.",
  "Distances from the working point (W.P.), which the plan locates; dashed: concrete; phantom: base plate.",
];

function detailInputs({ job, plan, held }: PlanRequest): readonly DetailInput[] {
  return job.bases.flatMap((base) => {
    const own = plan.bases.filter(({ placement }) => placement.mark === base.mark);
    const [first] = own;
    if (first === undefined) return [];
    return [{ base, rods: first.ownRods, count: own.length, held: held.has(base.mark), unit: job.unit }];
  });
}

/** Equal cells, row by row from the upper left. */
function cellsOf({ x0, y0, x1, y1 }: Area, columns: number, rows: number): readonly Area[] {
  const [w, h] = [(x1 - x0) / columns, (y1 - y0) / rows];
  return Array.from({ length: columns * rows }, (_, i) => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    const [left, top] = [x0 + column * w, y1 - row * h];
    return { x0: left + 1, y0: top - h + 1, x1: left + w - 1, y1: top - 1 };
  });
}

function bannerItems({ job }: PlanRequest, sheet: SheetSize): readonly SceneItem[] {
  const { lettering } = sheet;
  const area = drawingArea(sheet);
  return banners({ job, held: [] }, area.x1 - area.x0, lettering).map((piece) => piece.draw(area.x0, area.y1));
}

const COLUMN_GAP = 8;

/** Sheets of tables alone, while any table is left. */
function tableSheets(request: PlanRequest, sheet: SheetSize, flow: Flow): readonly OpenSheet[] {
  const sheets: OpenSheet[] = [];
  const area = drawingArea(sheet);
  while (!flow.isEmpty) {
    const tables = tableColumns(sheet, { ...area, y1: area.y1 - bannerHeight(request) }, flow, 1);
    if (tables.length === 0) throw new RangeError("a row of a table that is higher than a sheet");
    const panel = layoutPlanPanel(request, sheet, { title: "SCHEDULES", scale: null, head: [], notes: [] }, flow);
    sheets.push({ name: "schedules", items: [...bannerItems(request, sheet), ...tables], panel });
  }
  return sheets;
}

/** Widths of a column of tables, as shares of the panel's. */
const LEAST_COLUMN = 0.95;
const MOST_COLUMN = 1.1;

/** Columns about as wide as the panel's, from the left. */
function tableColumns(sheet: SheetSize, area: Area, flow: Flow, least?: number): readonly SceneItem[] {
  const panel = panelWidth(sheet);
  const columns = Math.max(1, Math.floor((area.x1 - area.x0 + COLUMN_GAP) / (LEAST_COLUMN * panel + COLUMN_GAP)));
  const width = Math.min(MOST_COLUMN * panel, (area.x1 - area.x0 - (columns - 1) * COLUMN_GAP) / columns);
  return Array.from({ length: columns }, (_, i) =>
    stack(flow.take(width, area.y1 - area.y0, least), area.x0 + i * (width + COLUMN_GAP), area.y1),
  ).flat();
}
