/** Placements: from plate to file and back, and the one that fits pairs of points best. */
import type { Contour, Point } from "../geometry/vocabulary.js";
import type { Pose } from "./model.js";

/** Where a point of the plate lies in the file. */
export function toFile({ turn, mirrored, dx, dy }: Pose, { x, y }: Point): Point {
  const { cos, sin } = cosAndSin(turn);
  const across = mirrored ? -x : x;
  return { x: cos * across - sin * y + dx, y: sin * across + cos * y + dy };
}

/** Where a point of the file lies on the plate. */
export function toPlate(pose: Pose, point: Point): Point {
  return plateMove(pose)(point);
}

/** The same for many points. */
function plateMove({ turn, mirrored, dx, dy }: Pose): (point: Point) => Point {
  const { cos, sin } = cosAndSin(turn);
  return ({ x, y }) => {
    const [fx, fy] = [x - dx, y - dy];
    const across = cos * fx + sin * fy;
    return { x: mirrored ? -across : across, y: -sin * fx + cos * fy };
  };
}

/** A contour of the file on the plate; arcs bulge the other way where it is mirrored. */
export function contourToPlate(contour: Contour, pose: Pose): Contour {
  if (contour.kind === "circle") return { ...contour, center: toPlate(pose, contour.center) };
  const side = pose.mirrored ? -1 : 1;
  const move = plateMove(pose);
  return {
    kind: "path",
    segments: contour.segments.map(({ from, to, bulge }) => ({
      from: move(from),
      to: move(to),
      bulge: bulge * side || 0,
    })),
  };
}

function cosAndSin(degrees: number): { readonly cos: number; readonly sin: number } {
  const quarter = (
    [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
    ] as const
  )[degrees / 90];
  if (quarter !== undefined) return { cos: quarter[0], sin: quarter[1] };
  const angle = (degrees * Math.PI) / 180;
  return { cos: Math.cos(angle), sin: Math.sin(angle) };
}

/** A point of the plate and the point of the file that it should be. */
export type Pair = readonly [plate: Point, file: Point];

/** The pose with the least sum of squares over the pairs (Procrustes without scale); a turn near a degree's thousandth is that. */
export function placementOf(pairs: readonly Pair[], mirrored: boolean): Pose {
  const side = mirrored ? -1 : 1;
  const mean = (of: (pair: Pair) => number) => pairs.reduce((sum, pair) => sum + of(pair), 0) / pairs.length;
  const [px, py] = [mean(([p]) => side * p.x), mean(([p]) => p.y)];
  const [fx, fy] = [mean(([, f]) => f.x), mean(([, f]) => f.y)];
  let [along, across] = [0, 0];
  for (const [p, f] of pairs) {
    const [ax, ay, bx, by] = [side * p.x - px, p.y - py, f.x - fx, f.y - fy];
    along += ax * bx + ay * by;
    across += ax * by - ay * bx;
  }
  const turn = roundTurn((Math.atan2(across, along) * 180) / Math.PI);
  const { cos, sin } = cosAndSin(turn);
  return { turn, mirrored, dx: fx - (cos * px - sin * py), dy: fy - (sin * px + cos * py) };
}

/** 0 up to 360; a turn within 1e-5 degrees of a whole one is that: 1.7e-7 of the size, far below any threshold. */
function roundTurn(degrees: number): number {
  const whole = Math.round(degrees);
  const turn = Math.abs(degrees - whole) < 1e-5 ? whole : degrees;
  return ((turn % 360) + 360) % 360;
}
