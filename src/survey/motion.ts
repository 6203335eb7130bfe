/** Motions between rods as designed and as built: least squares, and the plate's best position, certified. */

import type { FitHole } from "../fit/index.js";
import { certifyFit, turnRange } from "../fit/index.js";
import { toLattice } from "../geometry/index.js";
import type { Point } from "../geometry/vocabulary.js";
import type { BestPosition, Motion } from "./model.js";

const DEGREES = 180 / Math.PI;

/** The same spare to this many millimetres. */
const SLACK = 1e-6;

/** A hole of the base plate, its rod, and its name; millimetres in the base's own axes. */
export interface HoleOverRod extends FitHole {
  readonly tag: string;
  readonly rod: Point;
}

/** A pair of places, designed and built. */
export interface Pair {
  readonly from: Point;
  readonly to: Point;
}

interface TurnAndShift {
  /** Radians. */
  readonly angle: number;
  readonly x: number;
  readonly y: number;
}

/**
 * Least squares over shift and turn: the turn is the direction of the sums of products about both centroids (the plane case
 * of the orthogonal Procrustes problem), the shift is the working point's.
 */
export function bestMotion(pairs: readonly Pair[]): Motion {
  const { angle, x, y } = leastSquares(pairs);
  return { x: toLattice(x), y: toLattice(y), turn: pairs.length < 2 ? null : angle * DEGREES };
}

function leastSquares(pairs: readonly Pair[]): TurnAndShift {
  const mean = (of: (pair: Pair) => number): number => pairs.reduce((sum, pair) => sum + of(pair), 0) / pairs.length;
  const [fx, fy] = [mean(({ from }) => from.x), mean(({ from }) => from.y)];
  const [tx, ty] = [mean(({ to }) => to.x), mean(({ to }) => to.y)];
  let [along, across] = [0, 0];
  for (const { from, to } of pairs) {
    const [ax, ay, bx, by] = [from.x - fx, from.y - fy, to.x - tx, to.y - ty];
    along += ax * bx + ay * by;
    across += ax * by - ay * bx;
  }
  const angle = pairs.length < 2 ? 0 : Math.atan2(across, along) + 0;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { angle, x: tx - (cos * fx - sin * fy), y: ty - (sin * fx + cos * fy) };
}

/**
 * The position with most to spare. The solver's bound on the turn lies around the least-squares turn, so that a group that
 * was set turned as a whole has the same spare as one that was not: how it then stands is another answer.
 */
export function bestPosition(holes: readonly HoleOverRod[]): BestPosition {
  const start = leastSquares(holes.map(({ x, y, rod }) => ({ from: { x, y }, to: rod }))).angle;
  const [cos, sin] = [Math.cos(start), Math.sin(start)];
  const turned = holes.map(({ x, y, clearance }) => ({ x: cos * x - sin * y, y: sin * x + cos * y, clearance }));
  const rods = holes.map(({ rod }) => rod);
  const fit = certifyFit(turned, rods);
  const { from, to } = turnRange(turned, rods, fit, SLACK);
  return {
    spare: toLattice(-fit.value),
    motion: { x: toLattice(fit.tx), y: toLattice(fit.ty), turn: (start + fit.theta) * DEGREES },
    turnRange: [(start + from) * DEGREES, (start + to) * DEGREES],
    certainTo: fit.value - fit.lowerBound,
    governs: fit.multipliers.map(({ hole, weight }) => ({ tag: holes[hole]?.tag ?? "", share: weight })),
  };
}

/** Where a hole's centre lies when the plate has made a motion, in millimetres. */
export function movedHole({ x: sx, y: sy, turn }: Motion, { x, y }: Point): Point {
  const angle = (turn ?? 0) / DEGREES;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: cos * x - sin * y + sx / 1e6, y: sin * x + cos * y + sy / 1e6 };
}

/** The same rod in the plate's own axes. */
export function inPlateAxes({ x: sx, y: sy, turn }: Motion, { x, y }: Point): Point {
  const angle = (turn ?? 0) / DEGREES;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [dx, dy] = [x - sx / 1e6, y - sy / 1e6];
  return { x: cos * dx + sin * dy, y: -sin * dx + cos * dy };
}
