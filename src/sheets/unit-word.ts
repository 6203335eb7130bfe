/** The unit as sheets name it. */
import type { Unit } from "../units/index.js";

/** The unit as title blocks and headings name it. */
export function unitWord(unit: Unit): string {
  return unit === "in" ? "INCHES" : "MILLIMETRES";
}
