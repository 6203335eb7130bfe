/** The longest slanting distance between two rods, drawn straight between their centres. */
import type { Hole, Plate } from "../template/model.js";
import { greatestOf } from "../units/extremes.js";
import { type Length, nanometres, type Unit } from "../units/index.js";
import { putAligned } from "./dimension.js";
import { brokenAt, brokenAtPoint, passes } from "./hole-gaps.js";
import { circleLetters, groupLetter, type Located } from "./located.js";
import type { Draft } from "./paper.js";
import { onPaper, type View } from "./plan-shapes.js";
import type { PaperPoint } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";
import { dimensionWords } from "./taped.js";
import { POINT_RADIUS } from "./working-point.js";

/** Two rods. */
export type RodPair = readonly [Hole, Hole];

/** Centre to centre, in nanometres. */
export function between([a, b]: RodPair): Length {
  return nanometres(Math.hypot(a.center.x - b.center.x, a.center.y - b.center.y) * 1e6);
}

/** Pairs of rods that lie farthest apart, in the order of their tags. */
export function longestPairs(rods: readonly Hole[]): readonly RodPair[] {
  const square = (a: Hole, b: Hole) => (a.center.x - b.center.x) ** 2 + (a.center.y - b.center.y) ** 2;
  const longest = greatestOf(
    rods.flatMap((a, i) =>
      greatestOf(
        rods.slice(i + 1).map((b) => square(a, b)),
        0,
      ),
    ),
    0,
  );
  return rods.flatMap((a, i) =>
    rods.slice(i + 1).flatMap((b): RodPair[] => (square(a, b) >= longest * (1 - 1e-9) ? [[a, b]] : [])),
  );
}

interface DiagonalInput extends Pick<Located, "base"> {
  readonly plate: Plate;
  readonly unit: Unit;
  readonly lettering: Lettering;
}

/**
 * Draws the diagonal whose line passes no other rod's hole; it is broken off at openings and at the working point. Where there
 * is none, or no room for its figure, the tape check alone has it.
 */
export function putDiagonal(draft: Draft, view: View, { plate, base, unit, lettering }: DiagonalInput): void {
  const circles = circleLetters({ base });
  const rods = plate.holes.filter((hole) => hole.role === "rod" && !circles.has(groupLetter(hole)));
  const pairs = longestPairs(rods).filter(([a, b]) => a.center.x !== b.center.x && a.center.y !== b.center.y);
  pairs.some((pair) => {
    const [p, q] = [onPaper(view, pair[0].center), onPaper(view, pair[1].center)];
    const others = plate.holes.filter((hole) => !pair.includes(hole));
    const [obstacles, openings] = [others.filter(isSmall), others.filter((hole) => !isSmall(hole))];
    if (passes(view, obstacles, p, q, 1)) return false;
    const breaks = (from: PaperPoint, to: PaperPoint) =>
      brokenAt(view, openings, from, to, 0.8).flatMap(([a, b]) => brokenAtPoint(view.origin, a, b, POINT_RADIUS + 0.8));
    const value = between(pair);
    const run = { p, q, value, prefix: "", words: dimensionWords(value, unit), outside: [], short: "dots" } as const;
    return putAligned(draft, run, unit, [lettering.body, lettering.small], breaks);
  });
}

function isSmall({ role }: Hole): boolean {
  return role !== "opening";
}
