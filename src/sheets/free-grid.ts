/** A coarse picture of the paper that is taken, so that a block of any size is tested by four numbers. Paper millimetres. */

import type { Obstacles } from "./obstacles.js";
import type { Area } from "./paper.js";

/** `sums` counts the taken cells below and left of each corner. */
export interface FreeGrid {
  readonly area: Area;
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  readonly sums: Int32Array;
}

const FINEST = 1;
const MOST_CELLS = 30_000;

/** The cells of the area that something drawn runs through. */
export function gridOf(area: Area, obstacles: Obstacles): FreeGrid {
  const [width, height] = [area.x1 - area.x0, area.y1 - area.y0];
  const cell = Math.max(FINEST, Math.sqrt((width * height) / MOST_CELLS));
  const columns = Math.max(1, Math.ceil(width / cell));
  const rows = Math.max(1, Math.ceil(height / cell));
  const sums = new Int32Array((columns + 1) * (rows + 1));
  const grid = { area, cell, columns, rows, sums };
  takeSegments(grid, obstacles.segments);
  takeCircles(grid, obstacles.circles);
  takeTexts(grid, obstacles.texts);
  sumUp(grid);
  return grid;
}

/** No cell of this rectangle is taken, and all of it lies in the area. */
export function isGridFree({ area, cell, columns, sums }: FreeGrid, x0: number, y0: number, x1: number, y1: number) {
  if (x0 < area.x0 || y0 < area.y0 || x1 > area.x1 || y1 > area.y1) return false;
  const i0 = Math.floor((x0 - area.x0) / cell);
  const i1 = Math.ceil((x1 - area.x0) / cell);
  const low = Math.floor((y0 - area.y0) / cell) * (columns + 1);
  const high = Math.ceil((y1 - area.y0) / cell) * (columns + 1);
  return (sums[high + i1] ?? 0) - (sums[high + i0] ?? 0) - (sums[low + i1] ?? 0) + (sums[low + i0] ?? 0) === 0;
}

/** Somewhere in the area a block of this size stands free; looked for cell by cell, row by row of blocks. */
export function hasRoomFor({ cell, columns, rows, sums }: FreeGrid, width: number, height: number): boolean {
  const [across, up] = [Math.ceil(width / cell), Math.ceil(height / cell)];
  const step = columns + 1;
  for (let low = 0; low + up * step < (rows + 1) * step; low += step)
    if (longestRun(sums, low, low + up * step, columns) >= across) return true;
  return false;
}

/** Columns side by side in which no cell is taken between two lines of the grid, given by where they begin in the sums. */
function longestRun(sums: Int32Array, low: number, high: number, columns: number): number {
  let [longest, run, before] = [0, 0, 0];
  for (let i = 1; i <= columns; i++) {
    const below = (sums[high + i] ?? 0) - (sums[low + i] ?? 0);
    run = below === before ? run + 1 : 0;
    if (run > longest) longest = run;
    before = below;
  }
  return longest;
}

function take({ area, cell, columns, rows, sums }: FreeGrid, x: number, y: number): void {
  const i = Math.floor((x - area.x0) / cell);
  const j = Math.floor((y - area.y0) / cell);
  if (i >= 0 && j >= 0 && i < columns && j < rows) sums[(j + 1) * (columns + 1) + i + 1] = 1;
}

function sumUp({ columns, rows, sums }: FreeGrid): void {
  const wide = columns + 1;
  for (let j = 1; j <= rows; j++) {
    let row = 0;
    for (let i = 1; i <= columns; i++) {
      row += sums[j * wide + i] ?? 0;
      sums[j * wide + i] = row + (sums[(j - 1) * wide + i] ?? 0);
    }
  }
}

/** Points along a line stand this much of a cell apart; what slips between them is less than the clearance of a block. */
const STEP = 0.6;
/** More than a drawing area is long in cells: what is drawn far outside of it costs no more. */
const MOST_STEPS = 4000;

function stepsOf(length: number, cell: number): number {
  return Math.min(MOST_STEPS, Math.ceil(length / (cell * STEP)));
}

function takeSegments(grid: FreeGrid, segments: readonly number[]): void {
  for (let i = 0; i < segments.length; i += 5) {
    const x = segments[i] ?? 0;
    const y = segments[i + 1] ?? 0;
    const dx = (segments[i + 2] ?? 0) - x;
    const dy = (segments[i + 3] ?? 0) - y;
    const steps = Math.max(1, stepsOf(Math.sqrt(dx * dx + dy * dy), grid.cell));
    for (let k = 0; k <= steps; k++) take(grid, x + (dx * k) / steps, y + (dy * k) / steps);
  }
}

function takeCircles(grid: FreeGrid, circles: readonly number[]): void {
  for (let i = 0; i < circles.length; i += 4) {
    const x = circles[i] ?? 0;
    const y = circles[i + 1] ?? 0;
    const radius = circles[i + 2] ?? 0;
    const steps = Math.max(8, stepsOf(2 * Math.PI * radius, grid.cell));
    const turn = (2 * Math.PI) / steps;
    for (let k = 0; k < steps; k++) take(grid, x + radius * Math.cos(k * turn), y + radius * Math.sin(k * turn));
  }
}

function takeTexts(grid: FreeGrid, texts: readonly number[]): void {
  for (let i = 0; i < texts.length; i += 6) {
    const [ux, uy] = [texts[i + 2] ?? 0, texts[i + 3] ?? 0];
    const [length, height] = [texts[i + 4] ?? 0, texts[i + 5] ?? 0];
    const along = Math.max(1, stepsOf(length, grid.cell));
    const up = Math.max(1, stepsOf(height, grid.cell));
    for (let k = 0; k <= along; k++)
      for (let j = 0; j <= up; j++) {
        const u = (length * k) / along;
        const v = (height * j) / up;
        take(grid, (texts[i] ?? 0) + u * ux - v * uy, (texts[i + 1] ?? 0) + u * uy + v * ux);
      }
  }
}
