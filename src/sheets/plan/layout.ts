/** Where views, details and tables stand on the sheets of a plan: sizes only, nothing is drawn. Paper millimetres. */
import { greatestOf } from "../../units/extremes.js";
import { banners } from "../banner.js";
import { insideBorder } from "../border.js";
import type { Flow, FlowOptions } from "../flow.js";
import { legendBlock } from "../legend.js";
import type { Area } from "../paper.js";
import type { Lettering, Scale, SheetSize } from "../sheet-sizes.js";
import type { Piece } from "../table.js";
import { textWidth } from "../text-metrics.js";
import { type DetailInput, detailNeed, shortestRun } from "./detail.js";
import { panelWidth } from "./panel.js";
import type { PlanRequest } from "./request.js";
import { detailScales } from "./sizes.js";
import type { Arrangement, Tile } from "./tiles.js";

/** One sheet: the area of its part of the plan, cells for details, and what is free for tables. */
export interface SheetLayout {
  /** null: a sheet of details. */
  readonly tile: Tile | null;
  readonly view: Area;
  readonly cells: readonly Area[];
  readonly free: readonly Area[];
}

/** All sheets but those of tables alone. */
export interface PlanLayout {
  readonly arrangement: Arrangement;
  readonly detail: DetailPlan;
  readonly sheets: readonly SheetLayout[];
  /** How its tables are set. */
  readonly flow: FlowOptions;
}

/** Between a view and what stands beside it. */
const GAP = 6;

/** The paper left of the panel and below the banner. */
export function drawingArea({ job, layoutOpen }: PlanRequest, sheet: SheetSize): Area {
  const whole = wholeArea(sheet);
  const width = whole.x1 - whole.x0;
  const banner = banners({ job, held: [], open: layoutOpen }, width, sheet.lettering).reduce(
    (sum, { height }) => sum + height,
    0,
  );
  return { ...whole, y1: whole.y1 - banner };
}

/** The paper left of the panel. */
export function wholeArea(sheet: SheetSize): Area {
  const inside = insideBorder(sheet);
  return { x0: inside.x0 + 4, y0: inside.y0 + 4, x1: inside.x1 - sheet.panel - 4, y1: inside.y1 - 4 };
}

/** The same above the bars for print and plan scale. */
export function viewArea(request: PlanRequest, sheet: SheetSize): Area {
  const area = drawingArea(request, sheet);
  const foot = legendBlock([], [], request.job.unit, sheet.lettering);
  return { ...area, y0: area.y0 + foot.height + 1 };
}

/** Width and height of a detail's cell. */
export interface CellSize {
  readonly x: number;
  readonly y: number;
}

/** How details are drawn: the scale of most of them, and for each its own and the paper that it takes. */
export interface DetailPlan {
  readonly scale: Scale;
  readonly scales: readonly Scale[];
  readonly needs: readonly CellSize[];
  /** Every detail has the paper that it needs. */
  readonly fits: boolean;
}

/** A detail that takes this much more than half of the others is drawn to a smaller scale. */
const OUTLIER = 1.3;
/** A stretch as long as its figure: about this many letters. */
const SHORTEST_RUN = 3.2;
/** A detail of its own, smaller scale has no shorter one. */
const LEAST_RUN = 2.4;
/** Of many details only the smaller scales are tried that can be read. */
const MOST_SCALES = 3;
const FEW = 4;

/** Scales of details that can be read, largest first. */
export function detailPlans(inputs: readonly DetailInput[], sheet: SheetSize, area: Area): readonly DetailPlan[] {
  const [first] = inputs;
  if (first === undefined) return [];
  const run = middleOf(inputs.map(shortestRun).filter(Number.isFinite));
  const all = detailScales(first.unit);
  const fitting = all
    .map((scale) => planOf(inputs, scale, sheet.lettering, area))
    .filter(({ needs }) => needs.every(({ x, y }) => x <= area.x1 - area.x0 && y <= area.y1 - area.y0));
  const readable = fitting.filter(({ scale }) => run * scale.factor >= SHORTEST_RUN * sheet.lettering.small);
  const chosen = readable.length > 0 ? readable.slice(inputs.length > FEW ? -MOST_SCALES : 0) : fitting.slice(0, 1);
  if (chosen.length > 0) return chosen;
  const room = { x: area.x1 - area.x0, y: area.y1 - area.y0 };
  return all.slice(-1).map((scale) => ({
    scale,
    scales: inputs.map(() => scale),
    needs: inputs.map(() => room),
    fits: false,
  }));
}

function planOf(inputs: readonly DetailInput[], scale: Scale, lettering: Lettering, area: Area): DetailPlan {
  const wanted = inputs.map((input) => detailNeed(input, scale, lettering));
  const cap = {
    x: Math.min(middleOf(wanted.map(({ x }) => x)) * OUTLIER, area.x1 - area.x0),
    y: Math.min(middleOf(wanted.map(({ y }) => y)) * OUTLIER, area.y1 - area.y0),
  };
  const own = inputs.map((input) => {
    const least = (LEAST_RUN * lettering.small) / shortestRun(input);
    const smaller = detailScales(input.unit).filter(
      ({ factor }) => factor === scale.factor || (factor < scale.factor && factor >= least),
    );
    const needs = smaller.map((each) => ({ scale: each, need: detailNeed(input, each, lettering) }));
    return needs.find(({ need }) => need.x <= cap.x && need.y <= cap.y) ?? needs.at(-1) ?? { scale, need: cap };
  });
  return { scale, scales: own.map((each) => each.scale), needs: own.map(({ need }) => need), fits: true };
}

function middleOf(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
}

/** The sheets of plan and details; the details that a plan leaves room for stand beside it. */
export function layOut(
  request: PlanRequest,
  arrangement: Arrangement,
  { needs }: Pick<DetailPlan, "needs">,
): readonly SheetLayout[] {
  const area = viewArea(request, arrangement.sheet);
  let left = needs;
  const sheets = arrangement.tiles.map((tile) => {
    const layout = besidePlan(arrangement, tile, area, left);
    left = left.slice(layout.cells.length);
    return layout;
  });
  const whole = drawingArea(request, arrangement.sheet);
  while (left.length > 0) {
    const { cells, free } = shelves(whole, left, true);
    if (cells.length === 0) throw new RangeError("a sheet without room for a detail");
    sheets.push({ tile: null, view: whole, cells, free });
    left = left.slice(cells.length);
  }
  return sheets;
}

interface Filled {
  readonly cells: readonly Area[];
  readonly free: readonly Area[];
}

/** Details in rows, each as high as its highest; `spread`: full rows and a full area take up what is left over. */
function shelves(area: Area, needs: readonly CellSize[], spread: boolean): Filled {
  const width = area.x1 - area.x0;
  const rows: (readonly CellSize[])[] = [];
  let [next, used] = [0, 0];
  while (next < needs.length) {
    const row = rowFrom(needs, next, width);
    const height = greatestOf(
      row.map(({ y }) => y),
      0,
    );
    if (row.length === 0 || used + height > area.y1 - area.y0 + 1e-6) break;
    rows.push(row);
    next += row.length;
    used += height;
  }
  const isOpen = next >= needs.length;
  const extra = spread && !isOpen && rows.length > 0 ? (area.y1 - area.y0 - used) / rows.length : 0;
  return setRows(area, rows, isOpen, extra);
}

function rowFrom(needs: readonly CellSize[], from: number, width: number): readonly CellSize[] {
  let [to, sum] = [from, 0];
  for (; to < needs.length; to++) {
    sum += needs[to]?.x ?? 0;
    if (sum > width + 1e-6) break;
  }
  return needs.slice(from, to);
}

/** `isOpen`: the last row need not be full, and paper beside it and below is free. */
function setRows(area: Area, rows: readonly (readonly CellSize[])[], isOpen: boolean, extra: number): Filled {
  let top = area.y1;
  let right = area.x0;
  const cells: Area[] = [];
  rows.forEach((row, i) => {
    const sum = row.reduce((total, { x }) => total + x, 0);
    const isLast = isOpen && i === rows.length - 1;
    const more = isLast ? 0 : (area.x1 - area.x0 - sum) / row.length;
    const height =
      greatestOf(
        row.map(({ y }) => y),
        0,
      ) + extra;
    right = area.x0;
    for (const { x } of row) {
      cells.push({ x0: right, y0: top - height, x1: right + x + more, y1: top });
      right += x + more;
    }
    top -= height;
  });
  const last = cells.at(-1);
  if (last === undefined) return { cells, free: [area] };
  const isOneRow = rows.length === 1;
  const beside = { x0: right + GAP, x1: area.x1, y1: last.y1, y0: isOneRow ? area.y0 : last.y0 };
  const below = { ...area, y1: top - GAP, x1: isOneRow ? right : area.x1 };
  return { cells, free: [below, beside] };
}

/** Paper right of the view and below it: one of both runs the whole way, whichever holds more. */
function besidePlan(arrangement: Arrangement, tile: Tile, area: Area, needs: readonly CellSize[]): SheetLayout {
  const { x, y } = viewNeed(arrangement, tile);
  const view = { ...area, x1: Math.min(area.x1, area.x0 + x), y0: Math.max(area.y0, area.y1 - y) };
  const ways = [
    [
      { ...area, x0: view.x1 + GAP },
      { ...area, x1: view.x1, y1: view.y0 - GAP },
    ],
    [
      { ...area, y1: view.y0 - GAP },
      { ...area, x0: view.x1 + GAP, y0: view.y0 },
    ],
  ].map((areas) => filledAll(areas, needs));
  const [first, second] = ways;
  const best = first !== undefined && second !== undefined && second.cells.length > first.cells.length ? second : first;
  return { tile, view, cells: best?.cells ?? [], free: best?.free ?? [] };
}

function filledAll(areas: readonly Area[], needs: readonly CellSize[]): Filled {
  const cells: Area[] = [];
  const free: Area[] = [];
  for (const area of areas) {
    const part = shelves(area, needs.slice(cells.length), false);
    for (const cell of part.cells) cells.push(cell);
    for (const each of part.free) free.push(each);
  }
  return { cells, free };
}

/** Title of the plan's view. */
export const VIEW_TITLE = "ANCHOR-ROD PLAN: VIEW FROM ABOVE";

/** Paper of a view with all that stands around it. */
export function viewNeed({ scale, margins, sheet }: Arrangement, { window }: Tile): CellSize {
  const { left, right, top, bottom } = margins;
  const { body } = sheet.lettering;
  return {
    x: Math.max((window.x1 - window.x0) * scale.factor, textWidth(VIEW_TITLE, body, true) + 4) + left + right,
    y: (window.y1 - window.y0) * scale.factor + top + bottom,
  };
}

/** Tables are set in free paper of this height. */
const LEAST_FREE = 60;
/** A table wider than the panel is broken there too. */
const LEAST_COLUMN = 0.94;
const MOST_COLUMN = 1.1;
const COLUMN_GAP = 8;
/** Columns are a little wider than their tables need. */
const EASE = 1.06;

/** How tables are set; `whole`: those that a column can hold whole are not broken for the panel. */
export function flowOptions(sheet: SheetSize, whole: boolean): FlowOptions {
  const leastWidth = LEAST_COLUMN * panelWidth(sheet);
  return { leastWidth, wholeUpTo: whole ? widestColumn(sheet) : 0 };
}

function widestColumn(sheet: SheetSize): number {
  return MOST_COLUMN * panelWidth(sheet);
}

/** A column of tables and where it stands. */
export interface SetColumn {
  readonly x: number;
  readonly top: number;
  readonly pieces: readonly Piece[];
}

/** Sets tables in columns of free paper, each as wide as the table that comes next needs, but not much wider than a panel. */
export function setColumns(sheet: SheetSize, area: Area, flow: Flow, leastRows?: number): readonly SetColumn[] {
  const columns: SetColumn[] = [];
  const height = area.y1 - area.y0;
  if (height <= LEAST_FREE) return columns;
  let x = area.x0;
  while (!flow.isEmpty) {
    const width = columnWidth(sheet, flow.next, area.x1 - x);
    if (width === null) break;
    const pieces = flow.take(width, height, leastRows);
    if (pieces.length === 0) break;
    columns.push({ x, top: area.y1, pieces });
    x += width + COLUMN_GAP;
  }
  return columns;
}

/** null: too little room. */
function columnWidth(sheet: SheetSize, next: number, room: number): number | null {
  const panel = panelWidth(sheet);
  const wanted = Math.min(widestColumn(sheet), Math.max(panel / 2, next * EASE));
  const least = Math.min(next > panel ? LEAST_COLUMN * panel : Math.max(panel / 2, next), wanted);
  return room < least ? null : Math.min(room, wanted);
}
