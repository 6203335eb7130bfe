/** Paper beside the plan: for dimension chains, bubbles, the plan's title and the foot of the sheet. Millimetres. */
import type { Plan } from "../../plan/index.js";
import { greatestOf } from "../../units/extremes.js";
import type { Lettering } from "../sheet-sizes.js";
import { textWidth } from "../text-metrics.js";
import { isSlanting } from "./grid.js";

/** From the end of a slanting line to its bubble. */
export const STEM = 7;
/** Clear paper between two bubbles. */
export const BUBBLE_GAP = 1.5;

/** Room around a plan, millimetres. */
export interface Margins {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Letter of a name in its bubble: long names are set small. */
export function bubbleLetter(name: string, { body, small }: Lettering): number {
  return textWidth(name, body, true) / 2 <= body * 1.6 ? body : small;
}

/** Radius of the bubble that holds a name. */
export function bubbleRadius(name: string, lettering: Lettering): number {
  return Math.max(lettering.body * 1.45, textWidth(name, bubbleLetter(name, lettering), true) / 2 + 1.1);
}

/** Distances of dimension lines and bubbles from the window, outwards, for a lettering. */
export function chainLevels({ body }: Lettering): {
  readonly first: number;
  readonly next: number;
  readonly bubble: number;
} {
  return { first: body + 6, next: 2 * body + 3, bubble: body + 3 };
}

/** `isCut`: with a row for the overall of all parts. Room for two rows of the job's largest bubbles at the left and above, for what is said of far points, and for the view's title. */
export function marginsOf({ spec }: Plan, lettering: Lettering, isCut: boolean): Margins {
  const { first, next, bubble } = chainLevels(lettering);
  const beside = first + next * (isCut ? 2 : 1) + bubble + 2 * (2 * largest(spec.lines, lettering) + BUBBLE_GAP) + 1;
  const chain = spec.lines.some(isSlanting) ? first + lettering.body : 0;
  return { left: beside, top: beside, right: lettering.small * 4, bottom: chain + titleHeight(lettering) + 4 };
}

/** Height of a view's title and its scale under it. */
export function titleHeight({ body, small }: Lettering): number {
  return body + 2 * small + 5;
}

/** How far the bubble of a slanting line reaches past the line's end. */
export function slantingReach({ spec }: Plan, lettering: Lettering): number {
  return STEM + 2 * largest(spec.lines, lettering) + 1;
}

function largest(lines: readonly { readonly name: string }[], lettering: Lettering): number {
  return greatestOf(
    lines.map(({ name }) => bubbleRadius(name, lettering)),
    bubbleRadius("", lettering),
  );
}
