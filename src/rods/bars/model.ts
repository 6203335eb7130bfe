/** Bars of the stock and the pieces cut from them. Lengths are integer nanometres; nothing here knows what a piece is for. */
import type { Length } from "../../units/length.js";

/** Pieces of one length. `name` tells them in the plan; two kinds may be as long. */
export interface CutPiece {
  readonly name: string;
  readonly length: Length;
  readonly quantity: number;
}

/** What bars are cut from and how. */
export interface BarStock {
  /** Lengths that are bought, any number of each. */
  readonly lengths: readonly Length[];
  /** Lost at every cut; zero of a bar that is sheared. */
  readonly kerf: Length;
  /** Taken off each bar before its first piece, the saw cut of it included. */
  readonly endTrim: Length;
}

/** How bars are cut: so many of one stock length in the same way. */
export interface BarPattern {
  readonly stock: Length;
  readonly bars: number;
  /** Longest first. */
  readonly pieces: readonly { readonly name: string; readonly length: Length; readonly count: number }[];
  /** Left of each bar when its pieces are off: one cut is made after every piece but one that ends with the bar. */
  readonly remnant: Length;
}

/** Bars for all pieces, with what is proven of them. */
export interface BarPlan {
  readonly patterns: readonly BarPattern[];
  readonly bars: number;
  /** Of all bars together, nanometres: it may be longer than a `Length` is. */
  readonly stockLength: number;
  /** No way of cutting needs less stock than this, nanometres. */
  readonly leastStockLength: number;
  /** No way of cutting takes fewer bars; where only one length is in stock it says the same as `leastStockLength`. */
  readonly leastBars: number;
  readonly isProvenLeast: boolean;
  /** Longer than the longest bar gives. */
  readonly tooLong: readonly CutPiece[];
}

/** The same without names and units: sizes take their saw cut with them. Sizes are distinct, longest first. */
export interface CuttingProblem {
  readonly sizes: readonly number[];
  readonly counts: readonly number[];
  readonly bars: readonly CuttingBar[];
}

/** What a bar holds, and what it costs: whole numbers. */
export interface CuttingBar {
  readonly capacity: number;
  readonly cost: number;
}

/** One bar as it is filled: how many of each size. */
export interface Filling {
  readonly bar: number;
  readonly counts: readonly number[];
}

/** So many bars filled alike. */
export interface Repeated {
  readonly filling: Filling;
  readonly times: number;
}

/** Bars that hold every piece, their cost, and the least that is proven. */
export interface Cutting {
  readonly fillings: readonly Repeated[];
  readonly cost: number;
  readonly least: number;
}

/** Work that is left, counted in steps and not by a clock, so that the same pieces give the same plan on every machine. */
export interface Steps {
  left: number;
}
