/** How a shop makes rods: values of the shop, no code's. What it leaves open is common practice, and says so. */
import type { Length } from "../../units/length.js";
import type { RodStock } from "./rod-stock.js";
import type { Given } from "./values.js";

/** The `rodShop` block of a shop file. */
export interface RodShop {
  readonly making: RodMaking;
  readonly stock: RodStock;
}

/** What a shop's saw, threader, bender and plating barrel take. Greatest diameters are themselves taken. */
export interface RodMaking {
  /** Bar up to this diameter is sheared, thicker bar is sawn. */
  readonly shearedUpTo: Given<Length>;
  /** Threads up to this size are rolled, on bar of the pitch diameter; larger ones are cut, on bar of the full size. */
  readonly rolledUpTo: Given<Length>;
  /** The largest thread that the shop cuts. */
  readonly cutUpTo: Given<Length>;
  /** Inside radius of a bend, as a multiple of the rod's diameter. */
  readonly bendRadius: Given<number>;
  /** Rod that stands out below the nut at its lower end. */
  readonly belowNut: Given<Length>;
  /** Lengths that are worked out are rounded up to this. */
  readonly lengthStep: Given<Length>;
  /** Longest rod that is galvanized mechanically, and heaviest, in kilograms. */
  readonly mechanicalLongest: Given<Length>;
  readonly mechanicalHeaviest: Given<number>;
}
