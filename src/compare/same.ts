/** When two figures of two states are the same. */
import type { HolePlace, HoleSize } from "./model.js";

/**
 * 50 nm: summaries and cut files are rounded to 1e-6 in or 1e-5 mm, so that one figure read from two of them in two units may
 * differ by some 20 nm; a thousandth of an inch is 25 400 nm.
 */
export const SAME = 50;

/** True where two lengths in nanometres are at most SAME apart. */
export const sameLength = (a: number, b: number): boolean => Math.abs(a - b) <= SAME;

/** True where both coordinates, in nanometres, are at most SAME apart. */
export const samePlace = (a: HolePlace, b: HolePlace): boolean => sameLength(a.x, b.x) && sameLength(a.y, b.y);

/** True where shapes are of one kind and every measure, in nanometres, is at most SAME apart; sides are not swapped. */
export function sameSize(a: HoleSize, b: HoleSize): boolean {
  if (a.kind === "circle" || b.kind === "circle") {
    return a.kind === "circle" && b.kind === "circle" && sameLength(a.diameter, b.diameter);
  }
  return sameLength(a.width, b.width) && sameLength(a.height, b.height) && sameLength(a.radius, b.radius);
}

/** Straight distance in nanometres, rounded to a whole one. */
export const distanceBetween = (a: HolePlace, b: HolePlace): number =>
  Math.round(Math.sqrt((b.x - a.x) ** 2 + (b.y - a.y) ** 2));
