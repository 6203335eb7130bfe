/** Does the plate drop on, and how far is it from not doing so: minimax fit of a hole pattern over rods, certified. */
import type { AtAngle } from "./at-angle.js";
import { evaluate } from "./at-angle.js";
import { bestAngle } from "./best-angle.js";
import { residual } from "./best-shift.js";
import type { CertifiedFit, Fit, FitHole, FitOptions, FitRod, Multiplier } from "./model.js";
import { DEFAULT_MAX_TURN } from "./model.js";
import type { Workspace } from "./workspace.js";
import { NONE, setRods, workspaceFor } from "./workspace.js";

/** Relative to the pattern's size: a residual this near to the value governs. */
const ACTIVE = 1e-9;

/**
 * The position of the plate, |theta| <= maxTurn, with the least largest |R(theta) hole + t - rod| - clearance; rods in the
 * order of the holes. Certified over all positions to 2e-12 of the pattern's size. Where one hole governs, other positions
 * have the same value.
 */
export function fitPlate(holes: readonly FitHole[], rods: readonly FitRod[], options: FitOptions = {}): Fit {
  const { value, theta, tx, ty, active } = certifyFit(holes, rods, options);
  return { value, theta, tx, ty, active };
}

/** As `fitPlate`, with what proves it: which holes govern by how much, and a lower bound over all positions. */
export function certifyFit(
  holes: readonly FitHole[],
  rods: readonly FitRod[],
  { maxTurn = DEFAULT_MAX_TURN }: FitOptions = {},
): CertifiedFit {
  refuseNonsense(holes, rods, maxTurn);
  const work = workspaceFor(holes);
  setRods(work, rods);
  const { best, low, high, lowerBound } = bestAngle(work, maxTurn);
  evaluate(work, best.theta, best);
  return {
    ...positionOf(work, best),
    active: governing(work, best),
    multipliers: weights(low, high, best),
    lowerBound,
  };
}

function refuseNonsense(holes: readonly FitHole[], rods: readonly FitRod[], maxTurn: number): void {
  if (holes.length === 0 || holes.length !== rods.length) {
    throw new RangeError(`a rod for each hole is needed, at least one: ${holes.length} holes, ${rods.length} rods`);
  }
  if (!(maxTurn >= 0 && maxTurn <= Math.PI)) throw new RangeError(`maxTurn must lie in 0 to pi, not ${maxTurn}`);
  const figures = [...holes.flatMap(({ x, y, clearance }) => [x, y, clearance]), ...rods.flatMap(({ x, y }) => [x, y])];
  const bad = figures.find((figure) => !Number.isFinite(figure));
  if (bad !== undefined) throw new RangeError(`not a number: ${bad}`);
}

/** The motion about the plate's own origin: the centred shift, plus where the means lie. */
function positionOf(work: Workspace, { theta, value, shift }: AtAngle) {
  const cos = Math.cos(theta);
  const sin = Math.sin(theta);
  const tx = shift.tx + work.rodX - (cos * work.holeX - sin * work.holeY);
  const ty = shift.ty + work.rodY - (sin * work.holeX + cos * work.holeY);
  return { value, theta, tx, ty };
}

function governing(work: Workspace, { value, shift }: AtAngle): readonly number[] {
  const active: number[] = [];
  for (let i = 0; i < work.n; i++) {
    if (residual(work, i, shift.tx, shift.ty) >= value - ACTIVE * work.scale) active.push(i);
  }
  return active;
}

/** At a kink the weights of both sides are mixed so that the slope vanishes; at the bound of the angle they are one side's. */
function weights(low: AtAngle, high: AtAngle, best: AtAngle): readonly Multiplier[] {
  const sum = new Map<number, number>();
  const add = ({ shift: { a, b, c }, l0, l1, l2 }: AtAngle, share: number): void => {
    for (const [hole, weight] of [
      [a, l0],
      [b, l1],
      [c, l2],
    ] as const) {
      if (hole !== NONE && weight * share > 0) sum.set(hole, (sum.get(hole) ?? 0) + weight * share);
    }
  };
  if (low.slope < 0 && high.slope > 0) {
    add(low, high.slope / (high.slope - low.slope));
    add(high, -low.slope / (high.slope - low.slope));
  } else add(best, 1);
  return [...sum].map(([hole, weight]) => ({ hole, weight })).sort((a, b) => a.hole - b.hole);
}
