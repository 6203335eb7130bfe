/** Rods where lines in x and lines in y cross, with or without those inside. */
import type { Point } from "../geometry/index.js";
import { pointInNanometres } from "../geometry/index.js";
import { yesNoLeaf } from "../leaves/leaves.js";
import type { PatternColumn } from "./model.js";

/** The column that leaves the inside out. */
export const PERIMETER: PatternColumn = {
  name: "Perimeter",
  also: ["Perimeter only"],
  cell: "yes or no",
  example: "yes",
};

/** The key that leaves the inside out. */
export function perimeterLeaf() {
  return yesNoLeaf("True leaves the inside out.").optional();
}

/** How many crossings have a rod. */
export function countCrossings(nx: number, ny: number, perimeter: boolean): number {
  return nx * ny - (perimeter ? Math.max(0, nx - 2) * Math.max(0, ny - 2) : 0);
}

/**
 * Row by row from the lowest y. Lines are in nanometres; one between two of them, where a spacing is an odd number, is
 * rounded half away from zero, so that a symmetric pattern is symmetric on the lattice too.
 */
export function crossings(xs: readonly number[], ys: readonly number[], perimeter: boolean): readonly Point[] {
  const isEnd = (i: number, among: readonly number[]) => i === 0 || i === among.length - 1;
  return ys.flatMap((y, j) =>
    xs.flatMap((x, i) => (perimeter && !isEnd(i, xs) && !isEnd(j, ys) ? [] : [pointInNanometres(x, y)])),
  );
}
