/**
 * Does the plate drop on, yes or no: the fit's question without its answer to the last digit. Most trials are decided by the
 * least-squares position (fits) or by two rods too far apart or too near (does not); the others by the fit's own bound.
 */
import type { AtAngle } from "./at-angle.js";
import { evaluate, ruledOut } from "./at-angle.js";
import { bestShift } from "./best-shift.js";
import type { FitHole } from "./model.js";
import type { Workspace } from "./workspace.js";
import { at, NONE, workspaceFor } from "./workspace.js";

/** What freedom the plate needs to drop on. */
export type Drop = "held" | "shifted" | "turned" | "none";

/** A test that is made once for a plate and asked for every trial. */
export interface DropTest {
  /** For rods that are off their holes by dx, dy, in the order of the holes. */
  judge(dx: Float64Array, dy: Float64Array): Drop;
}

const NARROWEST = 1e-13;
const MOST_LOOKS = 200;

/** A test for these holes; the plate may turn by at most `maxTurn` radians either way. */
export function dropTest(holes: readonly FitHole[], maxTurn: number): DropTest {
  const work = workspaceFor(holes);
  const distances = nominalDistances(work);
  if (holes.some(({ clearance }) => clearance < 0)) return { judge: () => "none" };
  return {
    judge: (dx, dy) => {
      if (fitsHeld(work, dx, dy)) return "held";
      setErrors(work, dx, dy);
      if (hasHopelessPair(work, distances, dx, dy)) return "none";
      if (fitsShifted(work)) return "shifted";
      if (maxTurn === 0) return "none";
      return fitsNear(work, maxTurn) || fitsTurned(work, maxTurn) ? "turned" : "none";
    },
  };
}

/** Distance of each pair of holes, by rows of the upper triangle. */
function nominalDistances({ n, px, py }: Workspace): Float64Array {
  const distances = new Float64Array((n * (n - 1)) / 2);
  let pair = 0;
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const [x, y] = [at(px, j) - at(px, i), at(py, j) - at(py, i)];
      distances[pair++] = Math.sqrt(x * x + y * y);
    }
  }
  return distances;
}

function fitsHeld({ n, clearance }: Workspace, dx: Float64Array, dy: Float64Array): boolean {
  for (let i = 0; i < n; i++) {
    const [x, y, c] = [at(dx, i), at(dy, i), at(clearance, i)];
    if (x * x + y * y > c * c) return false;
  }
  return true;
}

function setErrors(work: Workspace, dx: Float64Array, dy: Float64Array): void {
  const { n, px, py, qx, qy } = work;
  let [x, y] = [0, 0];
  for (let i = 0; i < n; i++) {
    x += at(dx, i);
    y += at(dy, i);
  }
  x /= n;
  y /= n;
  for (let i = 0; i < n; i++) {
    qx[i] = at(px, i) + at(dx, i) - x;
    qy[i] = at(py, i) + at(dy, i) - y;
  }
}

/** Two rods that are farther off their distance than both clearances: no motion changes a distance. */
function hasHopelessPair(
  { n, qx, qy, clearance }: Workspace,
  distances: Float64Array,
  dx: Float64Array,
  dy: Float64Array,
) {
  let pair = 0;
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++, pair++) {
      const both = at(clearance, i) + at(clearance, j);
      const [ex, ey] = [at(dx, j) - at(dx, i), at(dy, j) - at(dy, i)];
      if (ex * ex + ey * ey <= both * both) continue;
      const [x, y] = [at(qx, j) - at(qx, i), at(qy, j) - at(qy, i)];
      if (Math.abs(Math.sqrt(x * x + y * y) - at(distances, pair)) > both) return true;
    }
  }
  return false;
}

function fitsShifted(work: Workspace): boolean {
  const { n, px, py, qx, qy, clearance } = work;
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const both = at(clearance, i) + at(clearance, j);
      const x = at(qx, j) - at(px, j) - at(qx, i) + at(px, i);
      const y = at(qy, j) - at(py, j) - at(qy, i) + at(py, i);
      if (x * x + y * y > both * both) return false;
    }
  }
  return fitsAt(work, 1, 0) || bestShift(work, 0, null).value <= 0;
}

/** Steps towards the hole that lies worst before the exact question is asked. */
const MOST_STEPS = 12;
/** Each step goes somewhat past the edge of that hole's clearance, so that it ends inside of all. */
const PAST = 1.3;

/** With the holes turned by cos, sin about their mean: from the rods' mean, step by step, to where all rods are inside. */
function fitsAt(work: Workspace, cos: number, sin: number): boolean {
  const { n, px, py, qx, qy, x, y, clearance } = work;
  for (let i = 0; i < n; i++) {
    const [hx, hy] = [at(px, i), at(py, i)];
    x[i] = at(qx, i) - (cos * hx - sin * hy);
    y[i] = at(qy, i) - (sin * hx + cos * hy);
  }
  let [tx, ty] = [0, 0];
  for (let step = 0; step < MOST_STEPS; step++) {
    let worst = NONE;
    let most = 0;
    for (let i = 0; i < n; i++) {
      const [dx, dy, c] = [at(x, i) - tx, at(y, i) - ty, at(clearance, i)];
      const over = dx * dx + dy * dy - c * c;
      if (over <= most) continue;
      most = over;
      worst = i;
    }
    if (worst === NONE) return true;
    const [dx, dy] = [at(x, worst) - tx, at(y, worst) - ty];
    const share = Math.min(1, PAST * (1 - at(clearance, worst) / Math.sqrt(dx * dx + dy * dy)));
    tx += share * dx;
    ty += share * dy;
  }
  return false;
}

/** The turn of least squares, its cosine and sine without an angle. */
function fitsNear(work: Workspace, maxTurn: number): boolean {
  const { along, across } = leastSquares(work);
  const size = Math.sqrt(along * along + across * across);
  return size > 0 && Math.abs(Math.atan2(across, along)) <= maxTurn && fitsAt(work, along / size, across / size);
}

function leastSquares({ n, px, py, qx, qy }: Workspace): { readonly along: number; readonly across: number } {
  let [along, across] = [0, 0];
  for (let i = 0; i < n; i++) {
    along += at(px, i) * at(qx, i) + at(py, i) * at(qy, i);
    across += at(px, i) * at(qy, i) - at(py, i) * at(qx, i);
  }
  return { along, across };
}

/** Looks at angles until one fits or all are ruled out. */
function fitsTurned(work: Workspace, maxTurn: number): boolean {
  const { along, across } = leastSquares(work);
  const start = Math.min(maxTurn, Math.max(-maxTurn, Math.atan2(across, along)));
  const gaps = [{ from: -maxTurn, to: maxTurn }];
  let [low, high]: [AtAngle | null, AtAngle | null] = [null, null];
  let theta = start;
  let near: AtAngle | null = null;
  for (let look = 0; look < MOST_LOOKS; look++) {
    near = evaluate(work, theta, near);
    if (near.value <= 0) return true;
    if (near.slope < 0) low = near;
    else high = near;
    cutOut(gaps, near);
    const gap = gaps.at(-1);
    if (gap === undefined) return false;
    theta = nextLook(gap, low, high, look);
  }
  return false;
}

interface Gap {
  readonly from: number;
  readonly to: number;
}

/** Takes the angles at which nothing fits out of the gaps. */
function cutOut(gaps: Gap[], angle: AtAngle): void {
  const ruled = ruledOut(angle, 0);
  const from = Math.min(ruled.from, angle.theta - NARROWEST);
  const to = Math.max(ruled.to, angle.theta + NARROWEST);
  for (let i = gaps.length - 1; i >= 0; i--) {
    const gap = gaps[i] as Gap;
    if (from >= gap.to || to <= gap.from) continue;
    const left = { from: gap.from, to: from };
    const right = { from: to, to: gap.to };
    gaps.splice(i, 1, ...[left, right].filter((rest) => rest.from < rest.to));
  }
}

/** Where the tangents of both sides meet; with one side known, twice as far as its tangent's root; else the gap's middle. */
function nextLook({ from, to }: Gap, low: AtAngle | null, high: AtAngle | null, look: number): number {
  const middle = (from + to) / 2;
  if (look % 4 === 3) return middle;
  const theta =
    low !== null && high !== null
      ? low.theta + (high.value - low.value - high.slope * (high.theta - low.theta)) / (low.slope - high.slope)
      : outward(low ?? high);
  return theta > from && theta < to ? theta : middle;
}

function outward(angle: AtAngle | null): number {
  return angle === null || angle.slope === 0 ? Number.NaN : angle.theta - (2 * angle.value) / angle.slope;
}
