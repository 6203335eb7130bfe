/** How the plan of a scale is cut into parts, one a sheet, where it does not fit one. Plan millimetres. */
import { type Extent, growExtent, type Point } from "../../geometry/index.js";
import { toMillimetres } from "../../units/index.js";
import type { Area } from "../paper.js";
import type { Scale, SheetSize } from "../sheet-sizes.js";
import { clipped } from "./clip.js";
import { cutParts, type Part, type Stop } from "./cuts.js";
import type { BaseFigure } from "./figures.js";
import { gridExtent, isSlanting, type LineSpan, lineSpans } from "./grid.js";
import { type Margins, marginsOf, slantingReach } from "./margins.js";
import type { PlanRequest } from "./request.js";

/** A part of the plan that one sheet shows: its bases stand in `region`, between match lines; `window` is what is drawn. */
export interface Tile {
  readonly region: Extent;
  readonly window: Extent;
  readonly figures: readonly BaseFigure[];
}

/** The plan, arranged on sheets. Tiles run from the north-west; the first sheets of the plan are theirs, in order. */
export interface Arrangement {
  readonly sheet: SheetSize;
  readonly scale: Scale;
  readonly margins: Margins;
  readonly spans: readonly LineSpan[];
  readonly tiles: readonly Tile[];
  /** The sheet has room for a view with what stands around it. */
  readonly fits: boolean;
}

/** A view has at least this for its part of the plan both ways, on paper. */
const LEAST_VIEW = 60;
/** How far grid lines run past their last crossing, on paper. */
const PAD = 9;
/** The first line beyond a match line is shown when the gap is no wider than this on paper. */
const NEAREST = 85;
/** Kept clear about a line or a small base where the plan is cut, on paper. */
const STOP_PAD = 3;
/** Shown past the last base where the next line is farther off, on paper. */
const FREE = 24;

/** The plan of this scale on sheets of this size, in as few parts as they have room for. */
export function arrangePlan(
  request: PlanRequest,
  figures: readonly BaseFigure[],
  sheet: SheetSize,
  scale: Scale,
  area: Area,
): Arrangement {
  const { box, spans } = contentOf(request, sheet, scale);
  const roomWith = ({ left, right, top, bottom }: Margins) => ({
    x: (area.x1 - area.x0 - left - right) / scale.factor,
    y: (area.y1 - area.y0 - top - bottom) / scale.factor,
  });
  const plain = marginsOf(request.plan, sheet.lettering, false);
  const whole = roomWith(plain);
  if (box.x1 - box.x0 <= whole.x && box.y1 - box.y0 <= whole.y) {
    return { sheet, scale, margins: plain, spans, tiles: [{ region: box, window: box, figures }], fits: true };
  }
  const margins = marginsOf(request.plan, sheet.lettering, true);
  const least = LEAST_VIEW / scale.factor;
  const given = roomWith(margins);
  const room = { x: Math.max(least, given.x), y: Math.max(least, given.y) };
  const cutter: Cutter = { request, figures, box, spans, room, sheet, scale };
  const [byColumns, byRows] = [tilesOf(cutter, "x"), tilesOf(cutter, "y")];
  const tiles = byRows.length < byColumns.length ? byRows : byColumns;
  const fits = given.x >= least && given.y >= least;
  return { sheet, scale, margins, spans, tiles: tiles.toSorted(fromNorthWest), fits };
}

/** The whole plan at a scale, as one part. */
export function arrangeWhole(
  request: PlanRequest,
  figures: readonly BaseFigure[],
  sheet: SheetSize,
  scale: Scale,
): Arrangement {
  const { box, spans } = contentOf(request, sheet, scale);
  const margins = marginsOf(request.plan, sheet.lettering, false);
  return { sheet, scale, margins, spans, tiles: [{ region: box, window: box, figures }], fits: true };
}

function fromNorthWest({ region: a }: Tile, { region: b }: Tile): number {
  return b.y1 - a.y1 || a.x0 - b.x0;
}

/** Grid, bases and the bubbles of slanting lines. */
function contentOf(
  { plan }: PlanRequest,
  { lettering }: SheetSize,
  scale: Scale,
): { readonly box: Extent; readonly spans: readonly LineSpan[] } {
  const bare = gridExtent(plan);
  const pad = PAD / scale.factor;
  const reach = slantingReach(plan, lettering) / scale.factor;
  const box = lineSpans(plan, bare, pad)
    .filter(({ line }) => isSlanting(line))
    .flatMap(endsOf)
    .map((end) => growExtent(boxOf(end), reach))
    .reduce(join, growExtent(bare, PAD / 2 / scale.factor));
  return { box, spans: lineSpans(plan, box, pad) };
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

/** All that the cutting goes by; `room` for what a sheet shows, in plan millimetres. */
interface Cutter {
  readonly request: PlanRequest;
  readonly figures: readonly BaseFigure[];
  readonly box: Extent;
  readonly spans: readonly LineSpan[];
  readonly room: { readonly x: number; readonly y: number };
  readonly sheet: SheetSize;
  readonly scale: Scale;
}

type Axis = "x" | "y";

/** Cut across one axis first, each of the strips then across the other; parts without base or line of their own are left out. */
function tilesOf(cutter: Cutter, first: Axis): readonly Tile[] {
  const { box, figures } = cutter;
  const strips = partsAlong(cutter, first, box, figures);
  const tiles = strips.flatMap((strip) => {
    const own = figures.filter((figure) => isWithin(figure, first, strip, box));
    const across = first === "x" ? "y" : "x";
    return partsAlong(cutter, across, box, own).map((part) => {
      const [x, y] = first === "x" ? [strip, part] : [part, strip];
      const inside = own.filter((figure) => isWithin(figure, across, part, box));
      return tileOf(cutter, x, y, inside);
    });
  });
  if (tiles.length === 1) return tiles;
  const busy = tiles.filter((tile) => tile.figures.length > 0);
  return withAllLines(cutter, busy, tiles).map((tile) => trimmed(cutter, tile));
}

function partsAlong(cutter: Cutter, axis: Axis, box: Extent, figures: readonly BaseFigure[]): readonly Part[] {
  const { scale, room } = cutter;
  const [from, to] = axis === "x" ? [box.x0, box.x1] : [box.y0, box.y1];
  return cutParts(from, to, stopsOf(cutter, axis, figures), {
    room: room[axis],
    nearest: NEAREST / scale.factor,
    free: FREE / scale.factor,
    past: 1 / scale.factor,
  });
}

/** Bases with all their ink, and lines. */
function stopsOf({ request, scale }: Cutter, axis: Axis, figures: readonly BaseFigure[]): readonly Stop[] {
  const pad = STOP_PAD / scale.factor;
  const bases = figures.map(({ placed, reach }): Stop => {
    const at = placed.workingPoint[axis];
    const room = Math.max(reach, pad);
    return { low: at - room, high: at + room, wing: placed.lines.some(isSlanting), isLine: false };
  });
  const lines = request.plan.spec.lines.flatMap((line): readonly Stop[] => {
    if (line.kind !== axis) return [];
    const at = toMillimetres(line.at);
    return [{ low: at - pad, high: at + pad, wing: false, isLine: true }];
  });
  return [...bases, ...lines];
}

/** Working points outside the box belong to the part at that end. */
function isWithin({ placed }: BaseFigure, axis: Axis, { from, to }: Part, box: Extent): boolean {
  const at = placed.workingPoint[axis];
  const [low, high] = axis === "x" ? [box.x0, box.x1] : [box.y0, box.y1];
  return (at >= from || from <= low) && (at < to || to >= high);
}

function tileOf({ box }: Cutter, x: Part, y: Part, figures: readonly BaseFigure[]): Tile {
  const window = { x0: x.shownFrom, x1: x.shownTo, y0: y.shownFrom, y1: y.shownTo };
  const region = { x0: x.from, x1: x.to, y0: y.from, y1: y.to };
  return { region, window: { ...box, ...window }, figures };
}

/** The busy tiles, and of the others those that alone show a line. */
function withAllLines({ spans }: Cutter, busy: readonly Tile[], all: readonly Tile[]): readonly Tile[] {
  const shown = new Set(busy);
  for (const span of spans) {
    if ([...shown].some(({ window }) => isShown(span, window))) continue;
    const other = all.find(({ window }) => isShown(span, window));
    if (other !== undefined) shown.add(other);
  }
  return all.filter((tile) => shown.has(tile));
}

/** Something of the line lies in the window. */
function isShown(span: LineSpan, window: Extent): boolean {
  if (span.kind === "straight") return clipped(span.from, span.to, window) !== null;
  return endsOf(span).some(({ x, y }) => x >= window.x0 && x <= window.x1 && y >= window.y0 && y <= window.y1);
}

/**
 * The tile's sheet shows the line: one of its bases stands on it, or it lies in the tile; of its neighbours only the next line
 * of the building's own axes across the match line.
 */
export function shows({ tiles }: Arrangement, { region, window, figures }: Tile, span: LineSpan): boolean {
  if (tiles.length === 1) return isShown(span, window);
  const { line } = span;
  const isUsedIn = (own: readonly BaseFigure[]) => own.some(({ placed }) => placed.placement.lines.includes(line.name));
  if (isUsedIn(figures)) return isShown(span, window);
  if (isSlanting(line)) return isShown(span, window) && !tiles.some((other) => isUsedIn(other.figures));
  const at = line.kind === "x" || line.kind === "y" ? toMillimetres(line.at) : 0;
  const [low, high] = line.kind === "x" ? [region.x0, region.x1] : [region.y0, region.y1];
  if (at < low || at > high) return isShown(span, window);
  const inside = {
    x0: Math.max(region.x0, window.x0),
    y0: Math.max(region.y0, window.y0),
    x1: Math.min(region.x1, window.x1),
    y1: Math.min(region.y1, window.y1),
  };
  return isShown(span, inside);
}

/** The window drawn in to the tile's bases, their crossings and slanting lines, where the tile has no line of its own beyond. */
function trimmed(cutter: Cutter, tile: Tile): Tile {
  const { figures, region, window } = tile;
  if (figures.length === 0) return tile;
  const { spans, scale, request, sheet } = cutter;
  const pad = PAD / 2 / scale.factor;
  const reach = slantingReach(request.plan, sheet.lettering) / scale.factor;
  const used = new Set(figures.flatMap(({ placed }) => placed.placement.lines));
  const bases = figures
    .map(({ placed, reach: ink }) =>
      join(growExtent(boxOf(placed.workingPoint), ink + pad), growExtent(boxOf(placed.crossing), pad)),
    )
    .reduce(join);
  const ends = spans
    .filter(({ line }) => isSlanting(line) && used.has(line.name))
    .flatMap(endsOf)
    .filter(({ x, y }) => x >= region.x0 && x <= region.x1 && y >= region.y0 && y <= region.y1)
    .map((end) => growExtent(boxOf(end), reach));
  const lines = ownLines(cutter, tile).map((at) => growExtent(at, pad));
  const box = [...ends, ...lines].reduce(join, bases);
  return { ...tile, window: drawnIn(window, region, box, cutter.box) };
}

/** Lines of the building's own axes that lie in the region and are used nowhere: they are shown here. */
function ownLines({ request }: Cutter, { region }: Tile): readonly Extent[] {
  const used = new Set(request.plan.bases.flatMap(({ placement }) => placement.lines));
  const middle = { x: (region.x0 + region.x1) / 2, y: (region.y0 + region.y1) / 2 };
  return request.plan.spec.lines.flatMap((line) => {
    if (used.has(line.name) || (line.kind !== "x" && line.kind !== "y")) return [];
    const at = toMillimetres(line.at);
    const [low, high] = line.kind === "x" ? [region.x0, region.x1] : [region.y0, region.y1];
    if (at < low || at > high) return [];
    return [boxOf(line.kind === "x" ? { x: at, y: middle.y } : { x: middle.x, y: at })];
  });
}

/** Each side moves in to the box, but for one at a match line, across which the next line is shown. */
function drawnIn(window: Extent, region: Extent, box: Extent, all: Extent): Extent {
  const keep = (side: keyof Extent) => Math.abs(region[side] - all[side]) > 1e-6;
  return {
    x0: keep("x0") ? Math.min(window.x0, box.x0) : Math.max(window.x0, Math.min(box.x0, window.x1)),
    y0: keep("y0") ? Math.min(window.y0, box.y0) : Math.max(window.y0, Math.min(box.y0, window.y1)),
    x1: keep("x1") ? Math.max(window.x1, box.x1) : Math.min(window.x1, Math.max(box.x1, window.x0)),
    y1: keep("y1") ? Math.max(window.y1, box.y1) : Math.min(window.y1, Math.max(box.y1, window.y0)),
  };
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
