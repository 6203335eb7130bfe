/** Which sheet, which scale, and how the plan is cut into sheets where it does not fit one. Plan millimetres. */
import { type Extent, growExtent, type Point } from "../../geometry/index.js";
import { greatestOf } from "../../units/extremes.js";
import { toMillimetres } from "../../units/index.js";
import { BORDER } from "../border.js";
import type { Scale, SheetSize } from "../sheet-sizes.js";
import { type BaseFigure, figureOf } from "./figures.js";
import { gridExtent, type LineSpan, lineSpans } from "./grid.js";
import { type Margins, marginsOf, slantingReach } from "./margins.js";
import type { PlanRequest } from "./request.js";
import { planScales, planSheets } from "./sizes.js";

/** A part of the plan that one sheet shows: between match lines, or all of it. */
export interface Tile {
  readonly column: number;
  readonly row: number;
  readonly window: Extent;
  readonly figures: readonly BaseFigure[];
}

/** The plan, arranged on sheets. Tiles run from the north-west, row by row. */
export interface Arrangement {
  readonly sheet: SheetSize;
  readonly scale: Scale;
  readonly margins: Margins;
  readonly content: Extent;
  readonly spans: readonly LineSpan[];
  readonly columns: number;
  readonly rows: number;
  readonly tiles: readonly Tile[];
}

/** On paper, between neighbouring working points: comfortable, and the least that can be read. */
const COMFORT = 26;
const LEAST = 12;
/** How far grid lines run past their last crossing, on paper. */
const PAD = 9;

/** The smallest sheet on which all stands comfortably; else several of the largest. */
export function arrangePlan(request: PlanRequest, banner: number): Arrangement {
  const figures = request.plan.bases.map(figureOf);
  const apart = usualSpacing(figures.map(({ placed }) => placed.workingPoint));
  const { unit } = request.job;
  for (const least of [COMFORT, LEAST])
    for (const sheet of planSheets(unit, request.job.bases.length))
      for (const scale of planScales(unit)) {
        if (apart * scale.factor < least) continue;
        const whole = wholePlan(request, figures, sheet, scale, banner);
        if (whole !== null) return whole;
      }
  return cutPlan(request, figures, apart, banner);
}

function roomOn(
  sheet: SheetSize,
  { left, right, top, bottom }: Margins,
  banner: number,
): { readonly x: number; readonly y: number } {
  const x = sheet.width - BORDER.left - BORDER.other - sheet.panel - left - right - 8;
  return { x, y: sheet.height - 2 * BORDER.other - top - bottom - banner - 8 };
}

/** Grid, bases and the bubbles of slanting lines. */
function contentOf(
  { plan }: PlanRequest,
  { lettering }: SheetSize,
  scale: Scale,
): { readonly box: Extent; readonly spans: readonly LineSpan[] } {
  const bare = gridExtent(plan);
  const pad = PAD / scale.factor;
  const spans = lineSpans(plan, bare, pad);
  const slanting = spans.filter(({ line }) => line.kind !== "x" && line.kind !== "y");
  const ends = slanting
    .flatMap(endsOf)
    .map((end) => growExtent(boxOf(end), slantingReach(plan, lettering) / scale.factor));
  const box = ends.reduce(join, growExtent(bare, PAD / 2 / scale.factor));
  return { box, spans: lineSpans(plan, { ...box, x0: box.x0, y1: box.y1 }, pad) };
}

function boxOf({ x, y }: Point): Extent {
  return { x0: x, y0: y, x1: x, y1: y };
}

function join(a: Extent, b: Extent): Extent {
  return {
    x0: Math.min(a.x0, b.x0),
    y0: Math.min(a.y0, b.y0),
    x1: Math.max(a.x1, b.x1),
    y1: Math.max(a.y1, b.y1),
  };
}

function endsOf(span: LineSpan): readonly Point[] {
  if (span.kind === "straight") return [span.from, span.to];
  const { center, radius, start, sweep } = span;
  const count = Math.max(2, Math.ceil(sweep / 10));
  return Array.from({ length: count + 1 }, (_, i) => {
    const angle = ((start + (sweep * i) / count) * Math.PI) / 180;
    return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
  });
}

function wholePlan(
  request: PlanRequest,
  figures: readonly BaseFigure[],
  sheet: SheetSize,
  scale: Scale,
  banner: number,
): Arrangement | null {
  const { box, spans } = contentOf(request, sheet, scale);
  const margins = marginsOf(request.plan, sheet.lettering);
  const room = roomOn(sheet, margins, banner);
  if ((box.x1 - box.x0) * scale.factor > room.x || (box.y1 - box.y0) * scale.factor > room.y) return null;
  return {
    ...{ sheet, scale, margins, content: box, spans, columns: 1, rows: 1 },
    tiles: [{ column: 0, row: 0, window: box, figures }],
  };
}

/** Cuts between bases at the smallest scale that can be read; parts without a base are left out. */
function cutPlan(request: PlanRequest, figures: readonly BaseFigure[], apart: number, banner: number): Arrangement {
  const sheet = planSheets(request.job.unit, request.job.bases.length).at(-1);
  const scales = planScales(request.job.unit).toReversed();
  const scale = scales.find(({ factor }) => apart * factor >= LEAST) ?? scales.at(-1);
  if (sheet === undefined || scale === undefined) throw new RangeError("no sheets for a plan");
  const { box, spans } = contentOf(request, sheet, scale);
  const margins = marginsOf(request.plan, sheet.lettering);
  const room = roomOn(sheet, margins, banner);
  const places = figures.map(({ placed }) => placed.workingPoint);
  const { lines } = request.plan.spec;
  const stops = {
    x: lines.flatMap((line) => (line.kind === "x" ? [toMillimetres(line.at)] : [])),
    y: lines.flatMap((line) => (line.kind === "y" ? [toMillimetres(line.at)] : [])),
  };
  const xs = cuts(box.x0, box.x1, room.x / scale.factor, [...places.map(({ x }) => x), ...stops.x]);
  const ys = cuts(box.y0, box.y1, room.y / scale.factor, [...places.map(({ y }) => y), ...stops.y]);
  const [columns, rows] = [xs.length - 1, ys.length - 1];
  const tiles = Array.from({ length: columns * rows }, (_, i): Tile => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    const [y0 = 0, y1 = 0] = [ys[rows - 1 - row], ys[rows - row]];
    const window = { x0: xs[column] ?? 0, x1: xs[column + 1] ?? 0, y0, y1 };
    return { column, row, window, figures: [] };
  });
  return { sheet, scale, margins, content: box, spans, columns, rows, tiles: filled(tiles, figures, xs, ys) };
}

function filled(
  tiles: readonly Tile[],
  figures: readonly BaseFigure[],
  xs: readonly number[],
  ys: readonly number[],
): readonly Tile[] {
  const [columns, rows] = [xs.length - 1, ys.length - 1];
  const own: BaseFigure[][] = tiles.map(() => []);
  for (const figure of figures) {
    const { x, y } = figure.placed.workingPoint;
    const column = stepOf(xs, x, columns);
    const row = rows - 1 - stepOf(ys, y, rows);
    own[row * columns + column]?.push(figure);
  }
  const all = tiles.map((tile, i) => ({ ...tile, figures: own[i] ?? [] }));
  const busy = all.filter((tile) => tile.figures.length > 0);
  return busy.length > 0 ? busy : all;
}

function stepOf(marks: readonly number[], value: number, count: number): number {
  const found = marks.findIndex((mark) => value < mark) - 1;
  return found < 0 ? (value < (marks[0] ?? 0) ? 0 : count - 1) : Math.min(found, count - 1);
}

/** Ends and match lines along one axis: halfway between neighbours, near even shares; each part leaves room for the next line. */
function cuts(from: number, to: number, room: number, places: readonly number[]): readonly number[] {
  const total = to - from;
  if (total <= room) return [from, to];
  const sorted = [...new Set(places)].toSorted((a, b) => a - b);
  const gaps = sorted
    .slice(1)
    .map((next, i) => ({ at: (next + (sorted[i] ?? next)) / 2, size: next - (sorted[i] ?? next) }));
  const usable = room * SHARE;
  const count = Math.ceil(total / usable);
  const result = [from];
  while (to - (result.at(-1) ?? from) > usable) {
    const start = result.at(-1) ?? from;
    const wanted = start + Math.min(usable, Math.max(total / count, (to - start) / Math.ceil((to - start) / usable)));
    result.push(bestCut(gaps, start + usable * 0.4, start + usable, wanted));
  }
  return [...result, to];
}

/** A part may use this much of the room; the rest shows the first line beyond the match line. */
const SHARE = 0.86;

function bestCut(
  gaps: readonly { readonly at: number; readonly size: number }[],
  low: number,
  high: number,
  wanted: number,
): number {
  const near = gaps.filter(({ at }) => at > low && at <= high);
  const widest = greatestOf(
    near.map(({ size }) => size),
    0,
  );
  const wide = near.filter(({ size }) => size >= widest / 2);
  const best = wide.toSorted((a, b) => Math.abs(a.at - wanted) - Math.abs(b.at - wanted))[0];
  return best?.at ?? wanted;
}

/** Half of the working points stand no further than this from their nearest neighbour; infinite for fewer than two. */
export function usualSpacing(points: readonly Point[]): number {
  const sorted = points.toSorted((a, b) => a.x - b.x || a.y - b.y);
  const nearest = sorted.map((_, i) => Math.min(nearestFrom(sorted, i, 1), nearestFrom(sorted, i, -1)));
  return nearest.toSorted((a, b) => a - b)[Math.floor(nearest.length / 2)] ?? Infinity;
}

/** Distance to the nearest other point, looking along the sorted list in one direction. */
function nearestFrom(sorted: readonly Point[], index: number, step: 1 | -1): number {
  const from = sorted[index];
  let best = Infinity;
  for (let k = index + step; from !== undefined; k += step) {
    const other = sorted[k];
    if (other === undefined || Math.abs(other.x - from.x) >= best) break;
    const apart = Math.hypot(other.x - from.x, other.y - from.y);
    if (apart > 0) best = Math.min(best, apart);
  }
  return best;
}
