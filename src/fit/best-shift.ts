/**
 * The inner problem, angle fixed: the shift t with the least r such that |t - x_i| <= c_i + r for all holes, where
 * x_i = rod_i - R hole_i. Convex; one to three holes carry the optimum. The most violated hole enters the carrying set
 * until none is violated; r rises at every step, so this ends. (A move-to-front recursion would not be valid here: the
 * clearances differ.)
 */
import type { Workspace } from "./workspace.js";
import { at, NONE } from "./workspace.js";

/** A shift of the centred patterns, the holes that carry it (NONE where fewer than three), and the largest residual. */
export interface Shift {
  readonly tx: number;
  readonly ty: number;
  readonly value: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** Relative to the pattern's size: residuals that differ by less are one. */
const SAME = 4e-16;
const MOST_STEPS = 1000;

/** The best shift with the holes turned by `theta`. `near`: the best shift at a neighbouring angle, to start from. */
export function bestShift(work: Workspace, theta: number, near: Shift | null): Shift {
  turnHoles(work, theta);
  const slack = SAME * work.scale;
  let best = startFrom(work, near, slack);
  for (let step = 0; step < MOST_STEPS; step++) {
    const worst = mostViolated(work, best.tx, best.ty);
    if (residual(work, worst, best.tx, best.ty) <= best.value + slack) break;
    const next = enter(work, best, worst);
    if (next.value <= best.value) break;
    best = next;
  }
  return best;
}

function turnHoles({ n, px, py, qx, qy, x, y }: Workspace, theta: number): void {
  const cos = Math.cos(theta);
  const sin = Math.sin(theta);
  for (let i = 0; i < n; i++) {
    const hx = at(px, i);
    const hy = at(py, i);
    x[i] = at(qx, i) - (cos * hx - sin * hy);
    y[i] = at(qy, i) - (sin * hx + cos * hy);
  }
}

function startFrom(work: Workspace, near: Shift | null, slack: number): Shift {
  if (near === null) return one(work, work.tightest);
  if (near.b === NONE) return one(work, near.a);
  if (near.c !== NONE) {
    const same = three(work, near.a, near.b, near.c);
    if (same !== null && carries(work, same)) return same;
  }
  let best = one(work, near.a);
  if (residual(work, near.b, best.tx, best.ty) > best.value + slack) best = enter(work, best, near.b);
  if (near.c !== NONE && residual(work, near.c, best.tx, best.ty) > best.value + slack)
    best = enter(work, best, near.c);
  return best;
}

/** True where the three residuals balance: the optimum of these three holes, whatever the others do. */
function carries(work: Workspace, shift: Shift): boolean {
  const { l0, l1, l2 } = balance(work, shift);
  return l0 >= 0 && l1 >= 0 && l2 >= 0;
}

/** Distance - clearance of hole i when shifted to t. */
export function residual({ x, y, clearance }: Workspace, i: number, tx: number, ty: number): number {
  const dx = tx - at(x, i);
  const dy = ty - at(y, i);
  return Math.sqrt(dx * dx + dy * dy) - at(clearance, i);
}

function mostViolated(work: Workspace, tx: number, ty: number): number {
  let worst = 0;
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < work.n; i++) {
    const value = residual(work, i, tx, ty);
    if (value > most) {
      most = value;
      worst = i;
    }
  }
  return worst;
}

/** The optimum over the carrying holes and the one that enters: alone, with one of them, or with two. */
function enter(work: Workspace, { a, b, c }: Shift, hole: number): Shift {
  const over = (shift: Shift) => valueOver(work, shift, a, b, c, hole);
  let best = one(work, hole);
  let least = over(best);
  const offer = (shift: Shift | null): void => {
    if (shift === null) return;
    const value = over(shift);
    if (value >= least) return;
    best = shift;
    least = value;
  };
  offer(two(work, a, hole));
  if (b !== NONE) {
    offer(two(work, b, hole));
    offer(three(work, a, b, hole));
  }
  if (c !== NONE) {
    offer(two(work, c, hole));
    offer(three(work, a, c, hole));
    offer(three(work, b, c, hole));
  }
  return best;
}

function valueOver(work: Workspace, { tx, ty }: Shift, a: number, b: number, c: number, d: number): number {
  let most = Math.max(residual(work, a, tx, ty), residual(work, d, tx, ty));
  if (b !== NONE) most = Math.max(most, residual(work, b, tx, ty));
  if (c !== NONE) most = Math.max(most, residual(work, c, tx, ty));
  return most;
}

function one({ x, y, clearance }: Workspace, a: number): Shift {
  return { tx: at(x, a), ty: at(y, a), value: -at(clearance, a), a, b: NONE, c: NONE };
}

/** On the line between two, each at its clearance + r; none where one of them alone governs. */
function two({ x, y, clearance }: Workspace, a: number, b: number): Shift | null {
  const dx = at(x, b) - at(x, a);
  const dy = at(y, b) - at(y, a);
  const apart = Math.sqrt(dx * dx + dy * dy);
  const ca = at(clearance, a);
  const value = (apart - ca - at(clearance, b)) / 2;
  const share = (ca + value) / apart;
  if (!(share >= 0 && share <= 1)) return null;
  return { tx: at(x, a) + share * dx, ty: at(y, a) + share * dy, value, a, b, c: NONE };
}

/**
 * Apollonius: with s = c_a + r and hole a at the origin, |t| = s and |t - p| = s + d give 2 p.t = |p|^2 - d^2 - 2 s d for
 * each of the others; t = u + s v, and |t|^2 = s^2 is one quadratic. The smallest root with no negative distance holds.
 */
function three({ x, y, clearance }: Workspace, a: number, b: number, c: number): Shift | null {
  const [xa, ya, ca] = [at(x, a), at(y, a), at(clearance, a)];
  const [px, py, d] = [at(x, b) - xa, at(y, b) - ya, at(clearance, b) - ca];
  const [qx, qy, e] = [at(x, c) - xa, at(y, c) - ya, at(clearance, c) - ca];
  const cross = px * qy - py * qx;
  if (cross === 0) return null;
  const f = (px * px + py * py - d * d) / 2;
  const g = (qx * qx + qy * qy - e * e) / 2;
  const ux = (f * qy - g * py) / cross;
  const uy = (g * px - f * qx) / cross;
  const vx = (e * py - d * qy) / cross;
  const vy = (d * qx - e * px) / cross;
  const s = smallestRoot(vx * vx + vy * vy - 1, ux * vx + uy * vy, ux * ux + uy * uy, Math.max(0, -d, -e));
  return s === null ? null : { tx: xa + ux + s * vx, ty: ya + uy + s * vy, value: s - ca, a, b, c };
}

/** Smallest root of k s^2 + 2 h s + m = 0 that is at least `from`; stable form. */
function smallestRoot(k: number, h: number, m: number, from: number): number | null {
  const square = h * h - k * m;
  if (square < 0) return null;
  const q = h >= 0 ? -h - Math.sqrt(square) : -h + Math.sqrt(square);
  const first = k === 0 ? Number.NaN : q / k;
  const second = q === 0 ? Number.NaN : m / q;
  const least = Math.min(first >= from ? first : Infinity, second >= from ? second : Infinity);
  return least === Infinity ? null : least;
}

/** Weights of the carrying holes, with sum 1, that balance their unit residuals; and those residuals' directions. */
export interface Balance {
  readonly l0: number;
  readonly l1: number;
  readonly l2: number;
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** One hole: weight 1, no direction. Two: halves, opposite. Three: weights as the cross products of the unit residuals. */
export function balance(work: Workspace, { tx, ty, a, b, c }: Shift): Balance {
  if (b === NONE) return { l0: 1, l1: 0, l2: 0, x0: 0, y0: 0, x1: 0, y1: 0, x2: 0, y2: 0 };
  const { x, y } = work;
  if (c === NONE) {
    const dx = at(x, b) - at(x, a);
    const dy = at(y, b) - at(y, a);
    const d = Math.sqrt(dx * dx + dy * dy);
    return { l0: 0.5, l1: 0.5, l2: 0, x0: dx / d, y0: dy / d, x1: -dx / d, y1: -dy / d, x2: 0, y2: 0 };
  }
  const [ax, ay] = [tx - at(x, a), ty - at(y, a)];
  const [bx, by] = [tx - at(x, b), ty - at(y, b)];
  const [cx, cy] = [tx - at(x, c), ty - at(y, c)];
  const [la, lb, lc] = [unitBy(ax, ay), unitBy(bx, by), unitBy(cx, cy)];
  const [x0, y0, x1, y1, x2, y2] = [ax * la, ay * la, bx * lb, by * lb, cx * lc, cy * lc];
  const w0 = x1 * y2 - y1 * x2;
  const w1 = x2 * y0 - y2 * x0;
  const w2 = x0 * y1 - y0 * x1;
  const sum = w0 + w1 + w2;
  return { l0: w0 / sum, l1: w1 / sum, l2: w2 / sum, x0, y0, x1, y1, x2, y2 };
}

function unitBy(dx: number, dy: number): number {
  const length = Math.sqrt(dx * dx + dy * dy);
  return length === 0 ? 0 : 1 / length;
}
