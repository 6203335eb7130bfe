/**
 * The outer problem: the best angle within the bound. A descent finds a local optimum; then every other angle is either ruled
 * out by the lower bound of an angle already looked at, or looked at itself, so that the result is the best of all angles.
 */
import type { AtAngle } from "./at-angle.js";
import { evaluate, ruledOut } from "./at-angle.js";
import type { Workspace } from "./workspace.js";
import { at } from "./workspace.js";

/** Relative to the pattern's size: how near the descent goes, and what the certificate leaves open. */
const DESCENT = 1e-14;
const CERTIFICATE = 2e-12;
/** First step of a descent that knows only its direction, in radians; each further one is this many times as long. */
const FIRST_STEP = 1e-4;
const GROWTH = 5;
const MOST_STEPS = 200;
/** From a gap's near end, how many times as far from the best angle the next look is: near a smooth optimum one reaches back. */
const OUTWARD = 4;
const NARROWEST = 1e-13;
/** After so many looks the certificate leaves ten times as much open, so that the search ends on any figures. */
const PATIENCE = 10_000;

/** The best angle; angles on both sides of it, when the value has a kink there; and a lower bound over all angles. */
export interface BestAngle {
  readonly best: AtAngle;
  readonly low: AtAngle;
  readonly high: AtAngle;
  readonly lowerBound: number;
}

/** A descent's result: the best angle and the ends of its last bracket. */
interface Descent {
  readonly best: AtAngle;
  readonly low: AtAngle;
  readonly high: AtAngle;
}

/** The best angle in [-maxTurn, maxTurn]. */
export function bestAngle(work: Workspace, maxTurn: number): BestAngle {
  const start = Math.min(maxTurn, Math.max(-maxTurn, leastSquaresTurn(work)));
  const looked: AtAngle[] = [];
  let found = descend(work, evaluate(work, start, null), -maxTurn, maxTurn, looked);
  const gaps = [{ from: -maxTurn, to: maxTurn }];
  let open = CERTIFICATE * work.scale;
  let looks = 0;
  const rule = (angle: AtAngle): void => cutOut(gaps, angle, found.best.value - open);
  for (const angle of looked) rule(angle);
  for (let gap = gaps.pop(); gap !== undefined; gap = gaps.pop()) {
    gaps.push(gap);
    if (++looks % PATIENCE === 0) open *= 10;
    const angle = evaluate(work, lookIn(gap, found.best.theta), found.best);
    if (angle.value < found.best.value) {
      const mark = looked.length;
      found = descend(work, angle, gap.from, gap.to, looked);
      for (const each of looked.slice(mark)) rule(each);
    }
    rule(angle);
  }
  const lowerBound = found.best.value - open;
  return { ...found, lowerBound };
}

/** The turn of least squares of the centred patterns: where the descent starts. */
function leastSquaresTurn({ n, px, py, qx, qy }: Workspace): number {
  let along = 0;
  let across = 0;
  for (let i = 0; i < n; i++) {
    along += at(px, i) * at(qx, i) + at(py, i) * at(qy, i);
    across += at(px, i) * at(qy, i) - at(py, i) * at(qx, i);
  }
  return along === 0 && across === 0 ? 0 : Math.atan2(across, along);
}

interface Gap {
  readonly from: number;
  readonly to: number;
}

/** Takes what an angle rules out from the gaps. */
function cutOut(gaps: Gap[], angle: AtAngle, least: number): void {
  const { from, to } = ruledOut(angle, least);
  const cut = { from: Math.min(from, angle.theta - NARROWEST), to: Math.max(to, angle.theta + NARROWEST) };
  for (let i = gaps.length - 1; i >= 0; i--) {
    const gap = gaps[i] as Gap;
    if (cut.from >= gap.to || cut.to <= gap.from) continue;
    const rest = [];
    if (gap.from < cut.from) rest.push({ from: gap.from, to: cut.from });
    if (gap.to > cut.to) rest.push({ from: cut.to, to: gap.to });
    gaps.splice(i, 1, ...rest);
  }
}

/** Where to look in a gap: outward from the best angle in steps that grow with the distance, else in its middle. */
function lookIn({ from, to }: Gap, best: number): number {
  const middle = (from + to) / 2;
  if (from >= best) return Math.min(middle, best + OUTWARD * (from - best));
  if (to <= best) return Math.max(middle, best - OUTWARD * (best - to));
  return middle;
}

/** Goes downhill from `start` to a local optimum in [least, most]. Everything looked at is added to `looked`. */
function descend(work: Workspace, start: AtAngle, least: number, most: number, looked: AtAngle[]): Descent {
  const look = (theta: number, near: AtAngle): AtAngle => {
    const angle = evaluate(work, theta, near);
    looked.push(angle);
    return angle;
  };
  looked.push(start);
  const down = start.slope < 0 ? 1 : -1;
  const end = down > 0 ? most : least;
  let behind = start;
  let ahead = start;
  for (let step = FIRST_STEP; ahead.slope * down < 0 && ahead.theta !== end; step *= GROWTH) {
    const theta = down > 0 ? Math.min(end, ahead.theta + step) : Math.max(end, ahead.theta - step);
    behind = ahead;
    ahead = look(theta, ahead);
  }
  const [low, high] = down > 0 ? [behind, ahead] : [ahead, behind];
  return narrow(work, low, high, look);
}

function narrow(work: Workspace, from: AtAngle, to: AtAngle, look: (theta: number, near: AtAngle) => AtAngle): Descent {
  let [low, high] = [from, to];
  const enough = DESCENT * work.scale;
  for (let step = 0; step < MOST_STEPS; step++) {
    const best = low.value <= high.value ? low : high;
    const width = high.theta - low.theta;
    if (!(low.slope < 0 && high.slope > 0) || Math.abs(best.slope) * width <= enough) break;
    const theta = between(low, high, step);
    if (theta <= low.theta || theta >= high.theta) break;
    const angle = look(theta, best);
    if (angle.slope < 0) low = angle;
    else high = angle;
  }
  return { best: low.value <= high.value ? low : high, low, high };
}

/** Next look in a bracket: where the slope would vanish on one smooth piece, else where the two tangents meet. */
function between(low: AtAngle, high: AtAngle, step: number): number {
  const width = high.theta - low.theta;
  if (step % 4 === 3) return low.theta + width / 2;
  if (sameCarriers(low, high)) return low.theta + (width * -low.slope) / (high.slope - low.slope);
  return low.theta + (high.value - low.value - high.slope * width) / (low.slope - high.slope);
}

function sameCarriers({ shift: s }: AtAngle, { shift: t }: AtAngle): boolean {
  return s.a === t.a && s.b === t.b && s.c === t.c;
}
