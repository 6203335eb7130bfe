/** Evaluates printed formulas. */
import { type Length, nanometres } from "../units/length.js";
import type { Rule } from "./model.js";

/** `factor` x d + `add`, to 1 nm. Factors have at most three decimals, so that the product is exact before it is rounded. */
export function evaluate(rule: Rule, diameter: Length): Length {
  return nanometres((diameter * Math.round(rule.factor * 1000)) / 1000 + rule.add);
}
