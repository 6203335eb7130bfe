/**
 * A rod as a shop makes it: what saw, threader, bender, galvanizer and packer need. Of one group of a base: all its rods are
 * alike. Nothing is guessed: what the job leaves open is `Missing`, with the key that would say it.
 */
import type { Bottom, Nut, ZincProcess } from "../../job/model/job.js";
import type { Input, Missing } from "../../job/model/values.js";
import type { ThreadSeries } from "../../standards/index.js";
import type { Length } from "../../units/length.js";
import type { OrderedWeldable } from "./welding.js";

/** How a rod is made, by its ends. */
export type RodKind =
  | "threaded both ends"
  | "threaded one end"
  | "full thread"
  | "hooked"
  | "headed with nut"
  | "headed with plate"
  | "swedged";

/** A part of a length, added up in order; a deduction is negative. `from`: who gave it, or which rule or source. */
export interface LengthTerm {
  readonly words: string;
  readonly length: Length;
  readonly from: string;
}

/** A length that is given, or worked out of parts; the parts add up to it. */
export interface WorkedLength {
  readonly value: Length;
  readonly by: "given" | "worked out";
  readonly terms: readonly LengthTerm[];
}

/**
 * A hook: `reach` from the axis of the shank to the end of the leg, inside radius of its bend and who gave it. `arc`: bar along
 * the centre line of the bend, a quarter turn; `leg`: straight bar beyond it; `bar`: both.
 */
export interface Hook {
  readonly reach: Length;
  readonly insideRadius: Length;
  readonly radiusFrom: string;
  readonly arc: Length;
  readonly leg: Length;
  readonly bar: Length;
}

/** What goes on a rod, of one kind. */
export interface Hardware {
  readonly what: "nut" | "washer" | "plate washer" | "plate" | "thread protector";
  /** Where: `base plate`, `levelling`, `template`, `lower end`, `top`. */
  readonly place: string;
  /** As it is ordered, in words of the trade: `1-1/4 heavy hex nut, ASTM A563 DH, galvanized, over-tapped 0.024 in`. */
  readonly words: string;
  /** On one rod. */
  readonly count: number;
  /** Of one piece, in kilograms by its nominal sizes; null where they are not known. */
  readonly kilograms: number | null;
}

/** One kind of step on the way of a lot through the shop, in order. */
export type OperationName = "cut" | "thread" | "bend" | "swedge" | "weld" | "galvanize" | "mark" | "assemble" | "pack";

/** A step with what its station needs to know. `from`: common practice of the shop file, or a source. */
export interface Operation {
  readonly name: OperationName;
  /** In words of the trade: `shear bar 1-1/4 to 37-1/2`. */
  readonly words: string;
  readonly from: string;
}

/** One kind of rod. Lengths are of the finished rod where nothing else is said. */
export interface RodDetail {
  readonly kind: Input<RodKind>;
  /** As printed: `1-1/4`, `M30`. */
  readonly size: string;
  readonly diameter: Length;
  readonly thread: ThreadSeries;
  /** Thread as it is called out: `1-1/4-7 UNC-2A`, `M30x3.5-6g`. */
  readonly threadCallout: string;
  readonly fullThread: boolean;
  /** What anchors it at its lower end. */
  readonly bottom: Input<Bottom>;
  readonly threadClass: Input<string>;
  readonly grade: Input<string>;
  /** What is ordered beside the grade so that the rods may be welded to. */
  readonly weldable: OrderedWeldable;
  /** Colour of the projecting end, of a grade that has one. */
  readonly endColor: Input<string>;
  readonly finish: Input<string>;
  /** Of a galvanized rod; missing where the order has no preference, null of a rod that is not galvanized. */
  readonly zincProcess: Input<ZincProcess> | null;
  readonly projection: Input<Length>;
  readonly embedment: Input<Length>;
  /** Down to where the embedment goes: `to the top of the nut at the lower end`. */
  readonly embedmentTo: string;
  readonly topThread: Input<Length>;
  /** Zero where the lower end has none. */
  readonly bottomThread: Input<Length>;
  /** null where the rod is straight. */
  readonly hook: Input<Hook> | null;
  /** End to end; of a hooked rod from its top to the outside of the hook. */
  readonly overall: Input<WorkedLength>;
  /** Of the bar before it is bent, threaded and coated. */
  readonly cut: Input<WorkedLength>;
  /** rolled: on bar of the pitch diameter. cut: on bar of the full size. */
  readonly threading: Input<"rolled" | "cut">;
  /** Diameter of the bar. */
  readonly bar: Input<Length>;
  readonly separation: Input<"sheared" | "sawn">;
  /** Of one bar as cut, kilograms. */
  readonly kilograms: Input<number>;
  /** Every nut on it. */
  readonly nut: Input<Nut>;
  readonly hardware: readonly Hardware[];
  /** Where the nut at the lower end is tack welded; empty where it is not. */
  readonly tackWelds: readonly string[];
  readonly protectors: boolean;
  /** What is not known and would say more of the hardware: its keys are asked for. */
  readonly open: readonly Missing[];
  readonly operations: readonly Operation[];
  /** Tolerances and remarks for the detail, each with its source. */
  readonly notes: readonly string[];
}
