/** Symmetry of a rod pattern about its own middle: how many ways of laying it down set the same rods. */
import type { Point } from "../geometry/index.js";
import { millimetresBetween } from "../geometry/index.js";
import type { PlacedRod } from "../rods/index.js";
import type { Isometry } from "./outline-symmetry.js";
import { applyIsometry } from "./outline-symmetry.js";
import { rodKind } from "./rod-kind.js";

/** Rods this near stand on one spot: roundings to the lattice, in millimetres. */
const SAME_MM = 1e-4;

interface Spot extends Point {
  readonly kind: string;
}

/**
 * Order of the pattern's symmetry group about the centroid of its rods, turns and mirrors, kinds of rods told apart: 4 for a
 * rectangle, 8 for a square, 2 n for n rods on a circle. Infinity for a single rod.
 */
export function symmetryOrder(rods: readonly PlacedRod[]): number {
  const spots = centred(rods.map(({ center, group }) => ({ ...center, kind: rodKind(group) })));
  const first = spots.find(({ x, y }) => Math.hypot(x, y) > SAME_MM);
  if (first === undefined) return Infinity;
  const grid = gridOf(spots);
  const radius = Math.hypot(first.x, first.y);
  const targets = spots.filter(
    ({ x, y, kind }) => kind === first.kind && Math.abs(Math.hypot(x, y) - radius) < SAME_MM,
  );
  return [false, true].reduce(
    (sum, mirrored) => sum + targets.filter((target) => maps(turnTo(first, target, mirrored), spots, grid)).length,
    0,
  );
}

function centred(spots: readonly Spot[]): readonly Spot[] {
  const mean = (axis: "x" | "y") => spots.reduce((sum, spot) => sum + spot[axis], 0) / spots.length;
  const [x, y] = [mean("x"), mean("y")];
  return spots.map((spot) => ({ ...spot, x: spot.x - x, y: spot.y - y }));
}

function turnTo(from: Point, to: Point, mirrored: boolean): Isometry {
  const angle = Math.atan2(to.y, to.x) - Math.atan2(from.y, mirrored ? -from.x : from.x);
  return { mirrored, cos: Math.cos(angle), sin: Math.sin(angle), x: 0, y: 0 };
}

/** Spots by cells of a millimetre. */
type Grid = ReadonlyMap<string, readonly Spot[]>;

function gridOf(spots: readonly Spot[]): Grid {
  const grid = new Map<string, Spot[]>();
  for (const spot of spots) {
    const key = `${Math.round(spot.x)} ${Math.round(spot.y)}`;
    grid.set(key, [...(grid.get(key) ?? []), spot]);
  }
  return grid;
}

function maps(move: Isometry, spots: readonly Spot[], grid: Grid): boolean {
  return spots.every((spot) => {
    const at = applyIsometry(move, spot);
    return around(grid, at).some(({ x, y, kind }) => kind === spot.kind && millimetresBetween(at, { x, y }) < SAME_MM);
  });
}

function around(grid: Grid, { x, y }: Point): readonly Spot[] {
  return [-0.5, 0.5].flatMap((dx) =>
    [-0.5, 0.5].flatMap((dy) => grid.get(`${Math.round(x + dx)} ${Math.round(y + dy)}`) ?? []),
  );
}
