/** Why rods may lie off a plate that should take them: swapped axes, or a length in another unit than was meant. Guesses for notes. */

import type { Contour, Point } from "../geometry/index.js";
import { extentOf, extentOfPoints, extentSize, point, toLattice, twiceDepthInside } from "../geometry/index.js";
import type { PlacedRod } from "../rods/model.js";
import { greatestOf } from "../units/extremes.js";
import type { Length } from "../units/index.js";
import type { CheckContext } from "./model.js";
import { suspectSlip } from "./slips.js";
import { wordsIn } from "./words.js";

interface Sides {
  readonly x: Length;
  readonly y: Length;
}

/** A plate is at most this many times its pattern: common practice, generous. */
const MOST_PATTERNS = 6;
/** Rods stand at least this many diameters apart: less would not take two nuts. */
const LEAST_DIAMETERS = 2;

/** Overall spacing of the rods along x and y. */
export function patternSides({ rods }: Pick<CheckContext, "rods">): Sides {
  return extentSize(extentOfPoints(rods.map(({ center }) => center)));
}

/** Diameter of the largest rod. */
export function largestDiameter({ rods }: Pick<CheckContext, "rods">): Length {
  return greatestOf(rods.map(({ group }) => group.rod.diameter)) as Length;
}

/** What a rod needs between its centre and the edge, doubled. */
type Needed = (rod: PlacedRod) => number;

/** `; the pattern is 16 x 8, the base plate 14 x 22: are x and y swapped?`, or the slip of a unit; "" where none is seen. */
export function whyOff(context: CheckContext, plate: Contour, name: string, needed: Needed = () => 0): string {
  const [pattern, sides] = [patternSides(context), extentSize(extentOf(plate))];
  const say = wordsIn(context.job.unit);
  const sizes = `; the pattern is ${say.length(pattern.x)} x ${say.length(pattern.y)}, the ${name} ${say.length(sides.x)} x ${say.length(sides.y)}`;
  const slip = isSwapped(context, plate, needed)
    ? "are x and y swapped?"
    : slipOf(context, plate, pattern, sides, name);
  return slip === null ? "" : `${sizes}: ${slip}`;
}

/** True where the rods do not fit as they are, and fit with x and y swapped about the middle of the plate. */
function isSwapped({ rods }: CheckContext, plate: Contour, needed: Needed): boolean {
  const { x0, y0, x1, y1 } = extentOf(plate);
  const [x, y] = [(x0 + x1) / 2, (y0 + y1) / 2];
  const fits = (rod: PlacedRod, at: Point) => twiceDepthInside(at, plate) >= needed(rod);
  const swapped = rods.every((rod) => fits(rod, point(x + rod.center.y - y, y + rod.center.x - x)));
  return swapped && rods.some((rod) => !fits(rod, rod.center));
}

/** A coordinate as it is typed, of the rod that lies farthest out: patterns of points and lines alone have such. */
function coordinateSlip(context: CheckContext, plate: Contour): string | null {
  const { x0, y0, x1, y1 } = extentOf(plate);
  const [low, high] = [point(x0, y0), point(x1, y1)];
  const least = largestDiameter(context);
  for (const axis of ["x", "y"] as const) {
    const most = Math.max(Math.abs(toLattice(low[axis])), Math.abs(toLattice(high[axis])));
    for (const { tag, center, group } of context.rods) {
      if (group.pattern.kind !== "points" && group.pattern.kind !== "lines") continue;
      const slip = suspectSlip(Math.abs(toLattice(center[axis])), { from: 0, to: most }, context.job.unit);
      if (slip !== null && slip.meant >= least) return `${axis} of ${tag}, ${slip.words}`;
    }
  }
  return null;
}

/** The pattern is looked at first, then the plate. */
function slipOf(context: CheckContext, plate: Contour, pattern: Sides, sides: Sides, name: string): string | null {
  const coordinate = coordinateSlip(context, plate);
  if (coordinate !== null) return coordinate;
  const { unit } = context.job;
  const least = LEAST_DIAMETERS * largestDiameter(context);
  const most = MOST_PATTERNS * Math.max(pattern.x, pattern.y, least);
  for (const axis of ["x", "y"] as const) {
    if (pattern[axis] <= sides[axis]) continue;
    const smallest = Math.max(least, Math.ceil(sides[axis] / MOST_PATTERNS));
    const own = suspectSlip(pattern[axis], { from: smallest, to: sides[axis] }, unit);
    if (own !== null) return `${axis} of the pattern, ${own.words}`;
    const other = suspectSlip(sides[axis], { from: pattern[axis], to: most }, unit);
    if (other !== null) return `${axis} of the ${name}, ${other.words}`;
  }
  return null;
}
