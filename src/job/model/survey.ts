/** What a job says of its survey: how good it is, where on the rods it was taken, and what the erection may be off. */
import type { Length } from "../../units/length.js";
import type { Input } from "./values.js";

/** Where on the rods their points were taken: at their tops, or so far above the top of concrete. */
export type SurveyHeight = { readonly kind: "top" } | { readonly kind: "above concrete"; readonly value: Length };

/** The survey of the rods as built: its accuracy, where it was taken, and what the erection allows. */
export interface SurveySpec {
  /** Day of the survey, ISO. */
  readonly date: Input<string>;
  /** With what and by whom, in words. */
  readonly instrument: Input<string>;
  /** Every surveyed point lies within this radius of the true one in plan. */
  readonly accuracy: Input<Length>;
  readonly height: Input<SurveyHeight>;
  /** Farthest from its place that a point without a known name is taken for a rod's. */
  readonly within: Input<Length>;
  /** Erection tolerance: the column off its line along each of the base's own axes, and turned, in degrees. */
  readonly line: Input<Length>;
  readonly turn: Input<number>;
}
