/** How a plate at full size is parted over sheets of paper. Millimetres; plate axes but where paper is named. */
import type { Extent } from "../../geometry/vocabulary.js";
import type { Hole } from "../../template/model.js";
import type { Area } from "../paper.js";
import { holeSpan } from "../plan-shapes.js";

/** Paper as an office has it. */
export interface OfficePaper {
  readonly name: string;
  readonly short: number;
  readonly long: number;
}

/** Row and column from 0, the first at the upper left. */
export interface Tile {
  readonly row: number;
  readonly column: number;
}

/** Windows of one size on one paper, each overlapping the next. */
export interface Tiling {
  readonly rows: number;
  readonly columns: number;
  readonly paper: { readonly name: string; readonly width: number; readonly height: number };
  /** Where the window stands on each paper. */
  readonly window: Area;
  /** Upper left of the first window. */
  readonly left: number;
  readonly top: number;
  /** From a window to the next. */
  readonly stepX: number;
  readonly stepY: number;
}

/** What two neighbours show both; the edge of the upper one lies in its middle. */
export const OVERLAP = 16;

/** White edge that printers need (common practice: 1/4 in at most), and bands at the right and the foot. */
export const EDGE = 7;
export const RIGHT_BAND = 10;
export const FOOT_BAND = 26;

/** Clear of the outline. */
const MARGIN = 3;

/** More sheets than a person glues together: one page at full size is made instead, for a plotter (common practice). */
export const MOST_TILES = 60;

/** Longest side of a page of PDF (ISO 32000-1, annex C: 14400 units of 1/72 in). */
const LONGEST_PAGE = 5080;

/** The way round with fewer sheets; one large page where they are too many. */
export function tilePlate(extent: Extent, holes: readonly Hole[], paper: OfficePaper): Tiling {
  const grown = grow(extent);
  const { name, short, long } = paper;
  const upright = layOut(grown, holes, { name, width: short, height: long });
  const landscape = layOut(grown, holes, { name, width: long, height: short });
  const best = countOf(landscape) < countOf(upright) ? landscape : upright;
  if (countOf(best) <= MOST_TILES) return best;
  const width = Math.max(grown.x1 - grown.x0 + 2 * EDGE + RIGHT_BAND, short);
  const height = Math.max(grown.y1 - grown.y0 + 2 * EDGE + FOOT_BAND, short);
  if (Math.max(width, height) > LONGEST_PAGE) return best;
  return layOut(grown, holes, { name: "plotter", width, height });
}

export function countOf({ rows, columns }: Pick<Tiling, "rows" | "columns">): number {
  return rows * columns;
}

function grow({ x0, y0, x1, y1 }: Extent): Extent {
  return { x0: x0 - MARGIN, y0: y0 - MARGIN, x1: x1 + MARGIN, y1: y1 + MARGIN };
}

function layOut(extent: Extent, holes: readonly Hole[], paper: Tiling["paper"]): Tiling {
  const window = {
    x0: EDGE,
    y0: EDGE + FOOT_BAND,
    x1: paper.width - EDGE - RIGHT_BAND,
    y1: paper.height - EDGE,
  };
  const [stepX, stepY] = [window.x1 - window.x0 - OVERLAP, window.y1 - window.y0 - OVERLAP];
  const columns = needed(extent.x1 - extent.x0, stepX);
  const rows = needed(extent.y1 - extent.y0, stepY);
  const spans = holes
    .filter(({ role }) => role !== "opening")
    .map(({ center, ...hole }) => ({ center, half: holeSpan({ center, ...hole }) }));
  const left = place(
    extent.x0,
    extent.x1,
    columns,
    stepX,
    spans.map(({ center, half }) => [center.x, half.x]),
  );
  const down = place(
    -extent.y1,
    -extent.y0,
    rows,
    stepY,
    spans.map(({ center, half }) => [-center.y, half.y]),
  );
  return { rows, columns, paper, window, left, top: -down, stepX, stepY };
}

function needed(length: number, step: number): number {
  return Math.max(1, Math.ceil((length - OVERLAP) / step - 1e-9));
}

/** Trials to either side of the middle. */
const TRIALS = 10;
/** A seam is clear of a hole's edge by this where it can be. */
const CLEAR = 12;

/** Where the first window begins: near the middle, but so that seams pass clear of holes, as far as there is paper to spare. */
function place(
  low: number,
  high: number,
  count: number,
  step: number,
  holes: readonly (readonly [center: number, half: number])[],
): number {
  const spare = count * step + OVERLAP - (high - low);
  const shares = [0, ...Array.from({ length: TRIALS }, (_, i) => [(i + 1) / TRIALS, -(i + 1) / TRIALS]).flat()];
  const trials = shares.map((share) => {
    const start = low - (spare * (1 + share)) / 2;
    return { start, clear: Math.min(CLEAR, clearOf(start, count, step, holes)) };
  });
  return trials.reduce((best, trial) => (trial.clear > best.clear ? trial : best)).start;
}

function clearOf(start: number, count: number, step: number, holes: readonly (readonly [number, number])[]): number {
  let clear = Number.POSITIVE_INFINITY;
  for (let seam = 1; seam < count; seam += 1)
    for (const [center, half] of holes)
      clear = Math.min(clear, Math.abs(start + seam * step + OVERLAP / 2 - center) - half);
  return clear;
}

/** Every tile, row by row. */
export function tilesOf({ rows, columns }: Tiling): readonly Tile[] {
  return Array.from({ length: rows * columns }, (_, i) => ({ row: Math.floor(i / columns), column: i % columns }));
}

/** What of the plate a tile shows. */
export function windowOf({ window, left, top, stepX, stepY }: Tiling, { row, column }: Tile): Area {
  const [x0, y1] = [left + column * stepX, top - row * stepY];
  return { x0, y0: y1 - (window.y1 - window.y0), x1: x0 + window.x1 - window.x0, y1 };
}

/** Between this column and the one before it, this row and the one above it: where the edge of the upper paper lies. */
export function seamsOf({ left, top, stepX, stepY }: Tiling): {
  readonly before: (column: number) => number;
  readonly above: (row: number) => number;
} {
  return {
    before: (column) => left + column * stepX + OVERLAP / 2,
    above: (row) => top - row * stepY - OVERLAP / 2,
  };
}

/** `2-3`: row and column from 1; "" of a plate that is one page. */
export function tileName(tiling: Tiling, { row, column }: Tile): string {
  return countOf(tiling) === 1 ? "" : `${row + 1}-${column + 1}`;
}

/** A cross that two tiles or four show at the same place of the plate. */
export interface Register {
  readonly x: number;
  readonly y: number;
}

/** Those of a tile: two on each seam, and where seams cross. */
export function registersOf(tiling: Tiling, tile: Tile): readonly Register[] {
  const { before, above } = seamsOf(tiling);
  const { x0, y0, x1, y1 } = windowOf(tiling, tile);
  const xs = [tile.column, tile.column + 1].filter((column) => column > 0 && column < tiling.columns).map(before);
  const ys = [tile.row, tile.row + 1].filter((row) => row > 0 && row < tiling.rows).map(above);
  const along = (low: number, high: number) => [0.25, 0.75].map((share) => low + (high - low) * share);
  return [
    ...xs.flatMap((x) => [...along(y0, y1), ...ys].map((y) => ({ x, y }))),
    ...ys.flatMap((y) => along(x0, x1).map((x) => ({ x, y }))),
  ];
}
