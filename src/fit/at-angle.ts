/** The value as a function of the angle alone: the best shift at that angle, its slope, and what it proves of other angles. */
import type { Shift } from "./best-shift.js";
import { balance, bestShift } from "./best-shift.js";
import type { Workspace } from "./workspace.js";
import { at, NONE } from "./workspace.js";

/** The best shift at one angle. `slope` = B = d value / d theta and `pull` = A are sums of weight x unit residual x hole. */
export interface AtAngle {
  readonly theta: number;
  readonly shift: Shift;
  readonly value: number;
  readonly slope: number;
  readonly pull: number;
  readonly l0: number;
  readonly l1: number;
  readonly l2: number;
}

/** Value, slope and weights at `theta`. */
export function evaluate(work: Workspace, theta: number, near: AtAngle | null): AtAngle {
  const shift = bestShift(work, theta, near === null ? null : near.shift);
  const { l0, l1, l2, x0, y0, x1, y1, x2, y2 } = balance(work, shift);
  const cos = Math.cos(theta);
  const sin = Math.sin(theta);
  let slope = 0;
  let pull = 0;
  const add = (hole: number, weight: number, ux: number, uy: number): void => {
    const hx = cos * at(work.px, hole) - sin * at(work.py, hole);
    const hy = sin * at(work.px, hole) + cos * at(work.py, hole);
    pull += weight * (ux * hx + uy * hy);
    slope += weight * (uy * hx - ux * hy);
  };
  if (shift.b !== NONE) {
    add(shift.a, l0, x0, y0);
    add(shift.b, l1, x1, y1);
    if (shift.c !== NONE) add(shift.c, l2, x2, y2);
  }
  return { theta, shift, value: shift.value, slope, pull, l0, l1, l2 };
}

/** The angles around an evaluated one at which no shift is better than `least`. */
export interface Ruled {
  readonly from: number;
  readonly to: number;
}

/**
 * Where the lower bound is at least `least`. Weak duality: f(theta + d) >= value + B sin d - A (1 - cos d), for every d, so
 * value - A + M cos(d - phi) >= least with M = |(A, B)|.
 */
export function ruledOut({ theta, value, slope, pull }: AtAngle, least: number): Ruled {
  const size = Math.sqrt(slope * slope + pull * pull);
  const level = least - value + pull;
  if (level <= -size) return { from: theta - Math.PI, to: theta + Math.PI };
  if (level > size) return { from: theta, to: theta };
  const middle = Math.atan2(slope, pull);
  const reach = Math.acos(Math.min(1, level / size));
  return { from: theta + Math.min(0, middle - reach), to: theta + Math.max(0, middle + reach) };
}
