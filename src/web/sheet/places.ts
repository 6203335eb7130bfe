/** Boxes of the paper as places on the screen: millimetres from the upper left. */
import type { PaperBox } from "../../tasks/live/figure-model.js";

/** Dots of a screen in a millimetre of its paper: 96 to the inch, as style sheets have them. */
export const DOTS_PER_MM = 96 / 25.4;

/** Style of an element over a box of a paper of this height, wider by `more` millimetres all around. */
export function over({ x0, y0, x1, y1 }: PaperBox, height: number, more: number) {
  return {
    left: `${x0 - more}mm`,
    top: `${height - y1 - more}mm`,
    width: `${x1 - x0 + 2 * more}mm`,
    height: `${y1 - y0 + 2 * more}mm`,
  };
}

/** The middle of a box on a paper of this height, y down. */
export function middleOf({ x0, y0, x1, y1 }: PaperBox, height: number): { readonly x: number; readonly y: number } {
  return { x: (x0 + x1) / 2, y: height - (y0 + y1) / 2 };
}
