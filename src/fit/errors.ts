/** Errors of position as they are drawn in a trial: terms that add up, each in a zone of its own reach. */
import type { RandomSource } from "./random.js";

/** `disc`: within `reach` of its place. `square`: within `reach` along each axis. */
export type ErrorZone = "disc" | "square";

/** Even over the zone; or normal, `sigma` (per axis) a share of the reach, cut off at the zone's edge where `truncated`. */
export type ErrorSpread =
  | { readonly kind: "uniform" }
  | { readonly kind: "normal"; readonly sigma: number; readonly truncated: boolean };

/** One source of position errors: zone, spread over it, and the reach that it has at each rod. */
export interface ErrorTerm {
  readonly zone: ErrorZone;
  readonly spread: ErrorSpread;
  /** By rod, in any one length unit. */
  readonly reach: readonly number[];
  /** One draw moves all the rods alike; otherwise each rod has its own. */
  readonly common: boolean;
}

/** Draws a point of the unit zone into `point`. */
type DrawPoint = (random: RandomSource, point: Float64Array) => void;

/** Adds the draws of all the terms to the errors of the rods. The number of draws does not hang on any reach. */
export function drawErrors(
  terms: readonly ErrorTerm[],
  random: RandomSource,
  dx: Float64Array,
  dy: Float64Array,
): () => void {
  const drawn = terms.map(({ zone, spread, reach, common }) => ({
    draw: drawIn(zone, spread),
    reach: Float64Array.from(reach),
    common,
  }));
  const point = new Float64Array(2);
  return () => {
    dx.fill(0);
    dy.fill(0);
    for (const { draw, reach, common } of drawn) {
      if (common) draw(random, point);
      for (let i = 0; i < dx.length; i++) {
        if (!common) draw(random, point);
        const size = reach[i] as number;
        dx[i] = (dx[i] as number) + size * (point[0] as number);
        dy[i] = (dy[i] as number) + size * (point[1] as number);
      }
    }
  };
}

function drawIn(zone: ErrorZone, spread: ErrorSpread): DrawPoint {
  if (spread.kind === "uniform") return zone === "disc" ? uniformDisc : uniformSquare;
  const { sigma, truncated } = spread;
  const normal: DrawPoint = (random, point) => {
    point[0] = sigma * random.normal();
    point[1] = sigma * random.normal();
  };
  return truncated ? within(normal, zone) : normal;
}

const uniformSquare: DrawPoint = (random, point) => {
  point[0] = random.signed();
  point[1] = random.signed();
};

function within(draw: DrawPoint, zone: ErrorZone): DrawPoint {
  return (random, point) => {
    do draw(random, point);
    while (!isInside(zone, point[0] as number, point[1] as number));
  };
}

function isInside(zone: ErrorZone, x: number, y: number): boolean {
  return zone === "disc" ? x * x + y * y <= 1 : Math.abs(x) <= 1 && Math.abs(y) <= 1;
}

const uniformDisc = within(uniformSquare, "disc");
