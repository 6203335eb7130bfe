/** Where two lines or arcs cross, touch or run over each other. Any one unit, y up. */
import { type CutPoint, type CutSegment, distance, roundOf } from "./dxf-measures.js";

/** A line, an arc, or a full circle (`arc` null). */
export type Curve =
  | { readonly kind: "line"; readonly from: CutPoint; readonly to: CutPoint }
  | {
      readonly kind: "round";
      readonly center: CutPoint;
      readonly radius: number;
      readonly arc: { readonly start: number; readonly sweep: number } | null;
    };

/** One place where two curves meet; of an overlap one point that lies on both. */
export interface Meeting {
  readonly at: CutPoint;
  /** cross: in a point, touching included. overlap: along a length above the tolerance. */
  readonly kind: "cross" | "overlap";
}

/** The curve of a segment. `start` in radians, `sweep` counter-clockwise and above zero. */
export function curveOf(segment: CutSegment): Curve {
  if (segment.bulge === 0) return { kind: "line", from: segment.from, to: segment.to };
  const { center, radius } = roundOf(segment);
  const first = segment.bulge > 0 ? segment.from : segment.to;
  const start = Math.atan2(first.y - center.y, first.x - center.x);
  return { kind: "round", center, radius, arc: { start, sweep: 4 * Math.atan(Math.abs(segment.bulge)) } };
}

/** Points in which two curves meet within a tolerance, at most two; or one point of the length that they share. */
export function meetingsOf(a: Curve, b: Curve, tolerance: number): readonly Meeting[] {
  if (a.kind === "line") return b.kind === "line" ? twoLines(a, b, tolerance) : lineAndRound(a, b, tolerance);
  return b.kind === "line" ? lineAndRound(b, a, tolerance) : twoRounds(a, b, tolerance);
}

type Line = Extract<Curve, { kind: "line" }>;
type Round = Extract<Curve, { kind: "round" }>;

const cross = (at: CutPoint): Meeting => ({ at, kind: "cross" });

function twoLines(a: Line, b: Line, tolerance: number): readonly Meeting[] {
  const [ax, ay] = [a.to.x - a.from.x, a.to.y - a.from.y];
  const [bx, by] = [b.to.x - b.from.x, b.to.y - b.from.y];
  const [dx, dy] = [b.from.x - a.from.x, b.from.y - a.from.y];
  const [lengthA, lengthB] = [Math.hypot(ax, ay), Math.hypot(bx, by)];
  const turn = ax * by - ay * bx;
  const away = (x: number, y: number) => Math.abs(ax * y - ay * x) / lengthA;
  if (away(dx, dy) <= tolerance && away(dx + bx, dy + by) <= tolerance) return alongLine(a, b, lengthA, tolerance);
  if (turn === 0) return [];
  const [s, t] = [(dx * by - dy * bx) / turn, (dx * ay - dy * ax) / turn];
  const [slackA, slackB] = [tolerance / lengthA, tolerance / lengthB];
  if (s < -slackA || s > 1 + slackA || t < -slackB || t > 1 + slackB) return [];
  return [cross({ x: a.from.x + s * ax, y: a.from.y + s * ay })];
}

function alongLine(a: Line, b: Line, length: number, tolerance: number): readonly Meeting[] {
  const along = ({ x, y }: CutPoint) =>
    ((x - a.from.x) * (a.to.x - a.from.x) + (y - a.from.y) * (a.to.y - a.from.y)) / length;
  const [first, last] = [along(b.from), along(b.to)];
  const [low, high] = [Math.max(0, Math.min(first, last)), Math.min(length, Math.max(first, last))];
  if (high < low - tolerance) return [];
  const share = low / length;
  const at = { x: a.from.x + share * (a.to.x - a.from.x), y: a.from.y + share * (a.to.y - a.from.y) };
  return [{ at, kind: high - low > tolerance ? "overlap" : "cross" }];
}

function lineAndRound(line: Line, round: Round, tolerance: number): readonly Meeting[] {
  const length = distance(line.from, line.to);
  const [ux, uy] = [(line.to.x - line.from.x) / length, (line.to.y - line.from.y) / length];
  const [cx, cy] = [round.center.x - line.from.x, round.center.y - line.from.y];
  const foot = cx * ux + cy * uy;
  const away = Math.abs(cx * uy - cy * ux);
  if (away > round.radius + tolerance) return [];
  const half = Math.sqrt(Math.max(0, round.radius * round.radius - away * away));
  return (half === 0 ? [foot] : [foot - half, foot + half])
    .filter((along) => along >= -tolerance && along <= length + tolerance)
    .map((along) => ({ x: line.from.x + along * ux, y: line.from.y + along * uy }))
    .filter((point) => isOnArc(round, point, tolerance))
    .map(cross);
}

function twoRounds(a: Round, b: Round, tolerance: number): readonly Meeting[] {
  const apart = distance(a.center, b.center);
  if (apart <= tolerance && Math.abs(a.radius - b.radius) <= tolerance) return alongRound(a, b, tolerance);
  if (apart > a.radius + b.radius + tolerance || apart < Math.abs(a.radius - b.radius) - tolerance) return [];
  if (apart === 0) return [];
  const foot = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart);
  const half = Math.sqrt(Math.max(0, a.radius * a.radius - foot * foot));
  const [ux, uy] = [(b.center.x - a.center.x) / apart, (b.center.y - a.center.y) / apart];
  return (half === 0 ? [0] : [half, -half])
    .map((side) => ({ x: a.center.x + foot * ux - side * uy, y: a.center.y + foot * uy + side * ux }))
    .filter((point) => isOnArc(a, point, tolerance) && isOnArc(b, point, tolerance))
    .map(cross);
}

/** Arcs of one circle: where the longer length that they share begins. */
function alongRound(a: Round, b: Round, tolerance: number): readonly Meeting[] {
  const whole = { start: 0, sweep: 2 * Math.PI };
  const [one, other] = [a.arc ?? whole, b.arc ?? whole];
  const slack = tolerance / a.radius;
  const shared = [
    { start: other.start, least: Math.min(one.sweep - turnTo(one.start, other.start), other.sweep) },
    { start: one.start, least: Math.min(other.sweep - turnTo(other.start, one.start), one.sweep) },
  ].filter(({ least }) => least > slack);
  const [longest] = shared;
  if (longest === undefined) return [];
  const at = {
    x: a.center.x + a.radius * Math.cos(longest.start),
    y: a.center.y + a.radius * Math.sin(longest.start),
  };
  return [{ at, kind: "overlap" }];
}

/** Counter-clockwise turn from one angle to another, 0 up to a whole turn. */
function turnTo(from: number, to: number): number {
  const turn = (to - from) % (2 * Math.PI);
  return turn < 0 ? turn + 2 * Math.PI : turn;
}

function isOnArc({ center, radius, arc }: Round, point: CutPoint, tolerance: number): boolean {
  if (arc === null) return true;
  const slack = tolerance / radius;
  const turn = turnTo(arc.start - slack, Math.atan2(point.y - center.y, point.x - center.x));
  return turn <= arc.sweep + 2 * slack;
}
