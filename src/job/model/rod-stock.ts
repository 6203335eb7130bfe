/** What a rod shop has in stock and sends along: values of the shop, no code's. */
import type { Length } from "../../units/length.js";
import type { Given, Input } from "./values.js";

/** Bars that rods are cut from. */
export interface RodStock {
  /** Lengths of bar, any number of each: for every diameter that has none of its own. */
  readonly lengths: Input<readonly Length[]>;
  /** For bars of these rods alone, by the diameter of the rod. */
  readonly byDiameter: readonly { readonly diameter: Length; readonly lengths: Given<readonly Length[]> }[];
  /** Lost at every saw cut; a shear loses nothing. */
  readonly kerf: Input<Length>;
  /** Taken off each bar before its first piece, its cut included. */
  readonly endTrim: Given<Length>;
  /** Shortest rest of a bar that goes back to the stock. */
  readonly leastRemnant: Input<Length>;
  /** In hundredths of the count, rounded up to whole pieces of each kind. */
  readonly spareNuts: Input<number>;
  readonly spareWashers: Input<number>;
}

/** Lengths for bars of a rod of that diameter. */
export function stockLengths({ lengths, byDiameter }: RodStock, diameter: Length): Input<readonly Length[]> {
  return byDiameter.find((each) => each.diameter === diameter)?.lengths ?? lengths;
}
