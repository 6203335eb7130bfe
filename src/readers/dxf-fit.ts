/** The circle that runs nearest to points: algebraic least squares (Kasa's fit), exact where the points lie on one. */
import { type CutPoint, distance } from "./dxf-measures.js";

/** The circle by least squares (of squared radii) through points, in their unit. */
export interface FittedCircle {
  readonly center: CutPoint;
  readonly radius: number;
  /** How far the farthest point is from the circle. */
  readonly deviation: number;
}

/** Null where the points lie on a line, or nearly. */
export function fitCircle(points: readonly CutPoint[]): FittedCircle | null {
  const count = points.length;
  if (count < 3) return null;
  const mean = { x: sum(points, ({ x }) => x) / count, y: sum(points, ({ y }) => y) / count };
  const moments = momentsAbout(points, mean);
  const { xx, xy, yy, xz, yz } = moments;
  const determinant = xx * yy - xy * xy;
  if (!(determinant > 1e-12 * (xx + yy) * (xx + yy))) return null;
  const [u, v] = [(xz * yy - yz * xy) / (2 * determinant), (yz * xx - xz * xy) / (2 * determinant)];
  const center = { x: mean.x + u, y: mean.y + v };
  const radius = Math.sqrt(u * u + v * v + (xx + yy) / count);
  if (!Number.isFinite(radius)) return null;
  const deviation = points.reduce((worst, point) => Math.max(worst, Math.abs(distance(point, center) - radius)), 0);
  return { center, radius, deviation };
}

function sum(points: readonly CutPoint[], value: (point: CutPoint) => number): number {
  return points.reduce((total, point) => total + value(point), 0);
}

function momentsAbout(points: readonly CutPoint[], mean: CutPoint) {
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0];
  for (const point of points) {
    const [x, y] = [point.x - mean.x, point.y - mean.y];
    const z = x * x + y * y;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * z;
    yz += y * z;
  }
  return { xx, xy, yy, xz, yz };
}
