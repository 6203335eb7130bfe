/** Where a placement stands: its distances, square, from its two grid lines. */
import { toLattice } from "../../geometry/index.js";
import type { GridLine } from "../../job/index.js";
import type { PlacedBase } from "../../plan/index.js";
import type { Length, Unit } from "../../units/index.js";
import { nanometres } from "../../units/index.js";
import { distanceFrom, sideWord } from "./grid.js";
import { planLength } from "./lengths.js";

/** Distance from one line, positive to the side that `side` names; a zero has no side. */
export interface LineDistance {
  readonly line: GridLine;
  readonly distance: Length;
  readonly side: string;
}

/** Crossings of skewed lines are on the lattice to a nanometre only. */
const NOISE = 2;

/** Both distances, in the order in which the placement names its lines. */
export function locate({ lines, workingPoint, placement }: PlacedBase): readonly [LineDistance, LineDistance] {
  const isAtCrossing = placement.offset.x === 0 && placement.offset.y === 0;
  const from = (line: GridLine): LineDistance => {
    const found = isAtCrossing ? nanometres(0) : toLattice(distanceFrom(line, workingPoint));
    const distance = Math.abs(found) <= NOISE ? nanometres(0) : found;
    return { line, distance, side: sideWord(line, distance) };
  };
  return [from(lines[0]), from(lines[1])];
}

/** `0`, `4 1/2" E`, `115 N`. */
export function distanceText({ distance, side }: LineDistance, unit: Unit): string {
  return distance === 0 ? planLength(0, unit) : `${planLength(Math.abs(distance), unit)} ${side}`;
}
