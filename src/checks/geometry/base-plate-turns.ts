/** The base plate turned by quarters over rods that stand right: a column is welded to it, so it is never turned over. */
import type { Point } from "../../geometry/index.js";
import { millimetresBetween, pointAt, turn, twiceToLattice } from "../../geometry/index.js";
import type { ColumnShape } from "../../job/model/job.js";
import type { DropsOn, WrongPlacement } from "../../orientation/model.js";
import type { CheckContext } from "../model.js";
import type { Words } from "../words.js";

/** A quarter turn of the base plate. `same`: the column then stands as it should; else `how` says what is wrong with it. */
export interface BasePlateTurn {
  readonly degrees: number;
  readonly dropsOn: DropsOn;
  readonly same: boolean;
  readonly how: (say: Words) => string;
}

/**
 * Turned by 90, 180 and 270. The plate turned over right rods meets them as the right plate meets the rods of a template that
 * was turned the other way, which is known already.
 */
export function turnedBasePlates({ base, plate }: CheckContext): readonly BasePlateTurn[] {
  const column = base.column.kind === "given" ? base.column.value : null;
  return [90, 180, 270].flatMap((degrees) => {
    const mirrored = plate.wrong.find(({ way }) => way.exact && !way.faceDown && way.degrees === 360 - degrees);
    return mirrored === undefined ? [] : [turned(degrees, mirrored, column)];
  });
}

function turned(degrees: number, { dropsOn }: WrongPlacement, column: ColumnShape | null): BasePlateTurn {
  const axes = column === null || isSameTurned(column, degrees);
  const offTwice = column === null ? 0 : columnOff(degrees, dropsOn, pointAt(column.at.x, column.at.y));
  const how = (say: Words) => {
    const off = `column ${say.twice(offTwice)} off its place`;
    if (axes) return off;
    return offTwice === 0 ? "strong axis across" : `strong axis across, ${off}`;
  };
  return { degrees, dropsOn, same: axes && offTwice === 0, how };
}

/** True where the column's section looks the same after a turn by quarters. */
function isSameTurned(column: ColumnShape, degrees: number): boolean {
  switch (column.kind) {
    case "pipe":
      return true;
    case "tube":
      return degrees === 180 || column.x === column.y;
    case "wide flange":
      return degrees === 180;
  }
}

/** Twice how far the column's middle ends up from where it belongs: best position over the rods, then the turn. */
function columnOff(degrees: number, dropsOn: DropsOn, at: Point): number {
  if (dropsOn.kind === "not known") return 0;
  const { theta, shift } = dropsOn;
  const [cos, sin] = [Math.cos(theta), Math.sin(theta)];
  const placed = { x: cos * at.x - sin * at.y + shift.x, y: sin * at.x + cos * at.y + shift.y };
  return twiceToLattice(millimetresBetween(turn(degrees).apply(placed), at));
}
