/** Where two grid lines cross, and which crossing a placement means. */
import type { Point, Turn, Vector } from "../geometry/index.js";
import { millimetresBetween, point, pointAt, toLattice, turnOf } from "../geometry/index.js";
import { FARTHEST_POINT, NM_PER_MM } from "../units/index.js";
import type { Input, Offset } from "./model/job.js";
import type { GridLine } from "./model/plan.js";

/** A straight line as a point and a unit direction, a radial line as a ray, an arc as a whole circle; millimetres. */
type Curve =
  | { readonly kind: "straight"; readonly through: Point; readonly along: Vector; readonly ray: boolean }
  | { readonly kind: "circle"; readonly center: Point; readonly radius: number };

/**
 * Every point in which two lines cross within 100 km of plan 0,0, snapped; exact for an x and a y line. Radial lines start at
 * their centre.
 */
export function crossingsOf(a: GridLine, b: GridLine): readonly Point[] {
  if (a.kind === "x" && b.kind === "y") return [pointAt(a.at, b.at)];
  if (a.kind === "y" && b.kind === "x") return [pointAt(b.at, a.at)];
  const found = curveCrossings(curveOf(a), curveOf(b))
    .filter(isWithinReach)
    .map(({ x, y }) => point(x, y));
  return found.filter((at, i) => !found.slice(0, i).some((other) => millimetresBetween(at, other) < SAME_MM));
}

const isWithinReach = ({ x, y }: Point): boolean => Math.hypot(x, y) <= FARTHEST_POINT;

/** Two crossings closer than this are one, in millimetres: a line that touches an arc. */
const SAME_MM = 1e-3;

/** The crossing that is meant: the only one, or of two the one nearest to `near`. */
export type Chosen =
  | { readonly ok: true; readonly at: Point }
  | { readonly ok: false; readonly why: "none" | "far" | "several"; readonly crossings: readonly Point[] };

/** Chooses among the crossings of two lines; a tie is several still. */
export function chooseCrossing(a: GridLine, b: GridLine, near: Input<Offset>): Chosen {
  const crossings = crossingsOf(a, b);
  const [first, second] = nearestFirst(crossings, near);
  if (first === undefined) return { ok: false, why: crossFar(a, b) ? "far" : "none", crossings };
  if (second === undefined) return { ok: true, at: first.at };
  const isTie = near.kind === "missing" || toLattice(first.away) === toLattice(second.away);
  return isTie ? { ok: false, why: "several", crossings } : { ok: true, at: first.at };
}

function crossFar(a: GridLine, b: GridLine): boolean {
  const isPlain = (a.kind === "x" && b.kind === "y") || (a.kind === "y" && b.kind === "x");
  return !isPlain && curveCrossings(curveOf(a), curveOf(b)).length > 0;
}

/** Why two lines have no crossing, in words. */
export function noCrossingWords(why: "none" | "far"): string {
  return why === "none" ? "do not cross" : "cross farther than 100 km from plan 0,0";
}

function nearestFirst(crossings: readonly Point[], near: Input<Offset>) {
  const from = near.kind === "given" ? pointAt(near.value.x, near.value.y) : { x: 0, y: 0 };
  return crossings.map((at) => ({ at, away: millimetresBetween(at, from) })).sort((a, b) => a.away - b.away);
}

function curveOf(line: GridLine): Curve {
  switch (line.kind) {
    case "x":
      return { kind: "straight", through: { x: line.at / NM_PER_MM, y: 0 }, along: { dx: 0, dy: 1 }, ray: false };
    case "y":
      return { kind: "straight", through: { x: 0, y: line.at / NM_PER_MM }, along: { dx: 1, dy: 0 }, ray: false };
    case "skewed":
      return {
        kind: "straight",
        through: pointAt(line.through.x, line.through.y),
        along: heading(line.degrees),
        ray: false,
      };
    case "radial":
      return {
        kind: "straight",
        through: pointAt(line.center.x, line.center.y),
        along: heading(line.degrees),
        ray: true,
      };
    case "arc":
      return { kind: "circle", center: pointAt(line.center.x, line.center.y), radius: line.radius / NM_PER_MM };
  }
}

function heading(degrees: number): Vector {
  const { cos, sin }: Turn = turnOf(degrees);
  return { dx: cos, dy: sin };
}

function curveCrossings(a: Curve, b: Curve): readonly Point[] {
  if (a.kind === "straight") return b.kind === "straight" ? straightCrossings(a, b) : circleCrossings(a, b);
  return b.kind === "straight" ? circleCrossings(b, a) : twoCircles(a, b);
}

type Straight = Extract<Curve, { kind: "straight" }>;
type Round = Extract<Curve, { kind: "circle" }>;

/** Lines whose directions differ by less than this (sine) count as parallel: 1 mm in 1000 km. */
const PARALLEL = 1e-9;

function straightCrossings(a: Straight, b: Straight): readonly Point[] {
  const across = a.along.dx * b.along.dy - a.along.dy * b.along.dx;
  if (Math.abs(across) < PARALLEL) return [];
  const [wx, wy] = [b.through.x - a.through.x, b.through.y - a.through.y];
  const s = (wx * b.along.dy - wy * b.along.dx) / across;
  const t = (wx * a.along.dy - wy * a.along.dx) / across;
  return reaches(a, s) && reaches(b, t) ? [onLine(a, s)] : [];
}

function reaches({ ray }: Straight, along: number): boolean {
  return !ray || along >= -SAME_MM;
}

function onLine({ through, along }: Straight, distance: number): Point {
  return { x: through.x + distance * along.dx, y: through.y + distance * along.dy };
}

function circleCrossings(line: Straight, { center, radius }: Round): readonly Point[] {
  const [wx, wy] = [center.x - line.through.x, center.y - line.through.y];
  const foot = wx * line.along.dx + wy * line.along.dy;
  const off = Math.abs(wx * line.along.dy - wy * line.along.dx);
  const half = halfChord(radius, off);
  return half
    .flatMap((h) => [foot - h, foot + h])
    .filter((s) => reaches(line, s))
    .map((s) => onLine(line, s));
}

/** Half the chord at a distance from the centre, as a list; empty where the line passes by. A touch counts as one. */
function halfChord(radius: number, off: number): readonly number[] {
  if (off > radius + SAME_MM / 1e3) return [];
  return [Math.sqrt(Math.max(0, (radius - off) * (radius + off)))];
}

function twoCircles(a: Round, b: Round): readonly Point[] {
  const apart = millimetresBetween(a.center, b.center);
  if (apart < SAME_MM) return [];
  const foot = (apart * apart + (a.radius - b.radius) * (a.radius + b.radius)) / (2 * apart);
  const [ux, uy] = [(b.center.x - a.center.x) / apart, (b.center.y - a.center.y) / apart];
  const half = halfChord(a.radius, Math.abs(foot));
  return half
    .flatMap((h) => [-h, h])
    .map((h) => ({ x: a.center.x + foot * ux - h * uy, y: a.center.y + foot * uy + h * ux }));
}
