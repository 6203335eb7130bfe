/** The base plate turned over rods that stand right: a column is welded to it, so it is never turned over. */
import type { Point } from "../../geometry/index.js";
import { millimetresBetween, pointAt, twiceToLattice } from "../../geometry/index.js";
import type { ColumnShape } from "../../job/model/job.js";
import type { TurnedPlate } from "../../orientation/index.js";
import type { Words } from "../words.js";

/** What a turn of the base plate does to its column: nothing (`same`), or `how` says what. */
export interface ColumnTurn {
  readonly same: boolean;
  readonly how: (say: Words) => string;
}

/** A turn is said to a hundredth of a degree. */
export function degreesText(degrees: number): string {
  return String(Math.round(degrees * 100) / 100);
}

/** How the column stands when its base plate lies turned. */
export function columnTurn(plate: TurnedPlate, column: ColumnShape): ColumnTurn {
  const axes = axesWords(plate.degrees, column);
  const offTwice = columnOff(plate, pointAt(column.at.x, column.at.y));
  const how = (say: Words) => {
    const off = offTwice === 0 ? [] : [`column ${say.twice(offTwice)} off its place`];
    return [...(axes === null ? [] : [axes]), ...off].join(", ");
  };
  return { same: axes === null && offTwice === 0, how };
}

/** The turn after which a column's section looks the same, in degrees; 0: any. */
function symmetryOf(column: ColumnShape): number {
  switch (column.kind) {
    case "pipe":
      return 0;
    case "tube":
      return column.x === column.y ? 90 : 180;
    case "wide flange":
      return 180;
  }
}

/** null where the section looks the same. */
function axesWords(degrees: number, column: ColumnShape): string | null {
  const period = symmetryOf(column);
  if (period === 0) return null;
  const over = degrees % period;
  const out = Math.min(over, period - over);
  if (out === 0) return null;
  return out === 90 ? "strong axis across" : `column turned ${degreesText(out)} degrees out`;
}

/** Twice how far the column's middle ends up from where it belongs. */
function columnOff({ cos, sin, shift }: TurnedPlate, at: Point): number {
  const placed = { x: cos * at.x - sin * at.y + shift.x, y: sin * at.x + cos * at.y + shift.y };
  return twiceToLattice(millimetresBetween(placed, at));
}
