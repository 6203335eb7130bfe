/**
 * Rod positions of one pattern, in the order in which the pattern names them. Positions are snapped once. Where a spacing
 * is an odd number of nanometres, or a hole of a bolt circle falls between, the position is rounded half away from zero,
 * so that a symmetric pattern is symmetric on the lattice too.
 */
import type { Point } from "../geometry/index.js";
import { pointAt, pointInNanometres, turnOf } from "../geometry/index.js";
import type { CircleStart, Pattern } from "../job/model/job.js";

/** How many rods the pattern has, without laying them out. */
export function countRods(pattern: Pattern): number {
  switch (pattern.kind) {
    case "rectangle":
      return gridCount(pattern.nx, pattern.ny, pattern.perimeter);
    case "lines":
      return gridCount(pattern.x.length, pattern.y.length, pattern.perimeter);
    case "circle":
      return pattern.count;
    case "points":
      return pattern.at.length;
  }
}

function gridCount(nx: number, ny: number, perimeter: boolean): number {
  return nx * ny - (perimeter ? Math.max(0, nx - 2) * Math.max(0, ny - 2) : 0);
}

/** Positions of a pattern in the base's own axes, exactly as typed: nothing is re-centred. */
export function rodPositions(pattern: Pattern): readonly Point[] {
  switch (pattern.kind) {
    case "rectangle":
      return grid(spaced(pattern.x, pattern.nx), spaced(pattern.y, pattern.ny), pattern.perimeter);
    case "lines":
      return grid(ascending(pattern.x), ascending(pattern.y), pattern.perimeter);
    case "circle":
      return boltCircle(pattern.diameter, pattern.count, pattern.start);
    case "points":
      return pattern.at.map(({ x, y }) => pointAt(x, y));
  }
}

/** `count` lines in nanometres, evenly over `overall`, centred on 0: k overall / (2 (count - 1)) for k = -(count - 1), ... */
function spaced(overall: number, count: number): readonly number[] {
  if (count === 1) return [0];
  return Array.from({ length: count }, (_, i) => (overall * (2 * i - count + 1)) / (2 * (count - 1)));
}

function ascending(lines: readonly number[]): readonly number[] {
  return [...lines].sort((a, b) => a - b);
}

function grid(xs: readonly number[], ys: readonly number[], perimeter: boolean): readonly Point[] {
  const isEnd = (i: number, among: readonly number[]) => i === 0 || i === among.length - 1;
  return ys.flatMap((y, j) =>
    xs.flatMap((x, i) => (perimeter && !isEnd(i, xs) && !isEnd(j, ys) ? [] : [pointInNanometres(x, y)])),
  );
}

function boltCircle(diameter: number, count: number, start: CircleStart): readonly Point[] {
  return Array.from({ length: count }, (_, i) => {
    const { cos, sin } = turnOf(startNumerator(start, count) + 360 * i, count);
    return pointInNanometres((diameter * cos) / 2, (diameter * sin) / 2);
  });
}

/** The first rod's angle in degrees times the count: whole for the two named starts, so that folding is exact. */
function startNumerator(start: CircleStart, count: number): number {
  switch (start.kind) {
    case "degrees":
      return start.degrees * count;
    case "straddle":
      return 180;
    case "on-axis":
      return 0;
  }
}
