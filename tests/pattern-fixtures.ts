/** Patterns for tests: invented sizes. */
import type { Pattern } from "../src/patterns/index.js";
import { millimetres } from "../src/units/index.js";

/** Four rods, 300 by 200 mm. */
export const rectangle = (changes: Partial<Pattern & { kind: "rectangle" }> = {}): Pattern => ({
  kind: "rectangle",
  x: millimetres(300),
  y: millimetres(200),
  nx: 2,
  ny: 2,
  perimeter: false,
  ...changes,
});

/** A bolt circle of 200 mm, or another. */
export const circle = (
  count: number,
  start: (Pattern & { kind: "circle" })["start"],
  diameter = millimetres(200),
): Pattern => ({
  kind: "circle",
  diameter,
  count,
  start,
});
