/** Turns as a plan writes them, all in one range. */
import { wholeTurn } from "../../geometry/index.js";
import { formatDegrees } from "../../units/index.js";

/** Degrees counter-clockwise from plan east, from 0 to below 360: `330°` for a turn of -30. */
export function turnText(degrees: number): string {
  return formatDegrees(wholeTurn(degrees));
}
