/** How far the plate may turn from its best position before it is worse by a given amount. */
import type { AtAngle } from "./at-angle.js";
import { evaluate } from "./at-angle.js";
import type { Fit, FitHole, FitOptions, FitRod } from "./model.js";
import { DEFAULT_MAX_TURN } from "./model.js";
import { setRods, workspaceFor } from "./workspace.js";

/** Angles in radians. */
export interface TurnRange {
  readonly from: number;
  readonly to: number;
}

const FIRST_STEP = 1e-10;
const HALVINGS = 60;

/** The angles around a fit's own, within maxTurn, at which some shift keeps the value within `slack` of the fit's. */
export function turnRange(
  holes: readonly FitHole[],
  rods: readonly FitRod[],
  { theta, value }: Fit,
  slack: number,
  { maxTurn = DEFAULT_MAX_TURN }: FitOptions = {},
): TurnRange {
  const work = workspaceFor(holes);
  setRods(work, rods);
  let near: AtAngle | null = null;
  const holds = (angle: number): boolean => {
    near = evaluate(work, angle, near);
    return near.value <= value + slack;
  };
  return { from: reach(theta, -maxTurn, holds), to: reach(theta, maxTurn, holds) };
}

/** The farthest angle towards `end` that holds: outward in growing steps, then halved. */
function reach(start: number, end: number, holds: (angle: number) => boolean): number {
  const way = Math.sign(end - start);
  let good = start;
  let bad = end;
  for (let step = FIRST_STEP; ; step *= 2) {
    const next = way * (start + way * step - end) < 0 ? start + way * step : end;
    if (!holds(next)) {
      bad = next;
      break;
    }
    good = next;
    if (next === end) return end;
  }
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (good + bad) / 2;
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return good;
}
