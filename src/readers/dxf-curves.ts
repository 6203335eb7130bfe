/**
 * SPLINE and ELLIPSE: read as the circle, arc or line that they are within a stated tolerance. What is none of these is a
 * free curve: it is measured by its chords, and told.
 */

import type { FindingList } from "./dxf-findings.js";
import { fitCircle } from "./dxf-fit.js";
import { type CutPoint, distance } from "./dxf-measures.js";
import type { DxfEntity, DxfVertex } from "./dxf-model.js";
import { type EntityValues, facingOf } from "./dxf-values.js";

/** A curve that runs this near to a circle, an arc or a line is one: 0.025 mm, a thousandth of an inch (common practice). */
export const ROUND_MM = 0.025;

/** Control points of one spline; a curve of more is refused. */
const MOST_CONTROLS = 10_000;

/** Points at which the curves of a file are measured in all, and chords of those that are kept as chords. */
const [MOST_MEASURED, MOST_CHORDS] = [3_000_000, 200_000];

/** Reads SPLINE and ELLIPSE; `tolerance` in the file's unit. A file of too many is refused there. */
export class CurveReader {
  private measured = 0;
  private chords = 0;

  constructor(
    private readonly tolerance: number,
    private readonly findings: FindingList,
  ) {}

  /** Null, with a finding, where a curve is not read. */
  read(values: EntityValues): DxfEntity | null {
    if (this.measured > MOST_MEASURED || this.chords > MOST_CHORDS) {
      this.findings.add("too-many-curves", "stop", "SPLINE and ELLIPSE make too many chords; the rest is not read");
      return null;
    }
    const points =
      values.type === "SPLINE" ? splinePoints(values, this.findings) : ellipsePoints(values, this.findings);
    if (points === null) return null;
    this.measured += points.length;
    const entity = shapeOf(points, values, this.tolerance, this.findings);
    if (entity?.kind === "polyline") this.chords += entity.vertices.length;
    return entity;
  }
}

/** Points along an ELLIPSE, null with a finding where it is not read. */
function ellipsePoints(values: EntityValues, findings: FindingList): readonly CutPoint[] | null {
  const [x, y] = [values.first(10), values.first(20)];
  const [majorX, majorY, ratio] = [values.first(11), values.first(21), values.first(40)];
  if (x === undefined || y === undefined || majorX === undefined || majorY === undefined || ratio === undefined) {
    findings.add("incomplete", "stop", "ELLIPSE without all its values is not read");
    return null;
  }
  const side = facingOf(values, findings);
  if (side === null) return null;
  const minor = side === "up" ? ratio : -ratio;
  const start = values.first(41) ?? 0;
  const end = values.first(42) ?? 2 * Math.PI;
  const sweep = end > start ? Math.min(end - start, 2 * Math.PI) : end - start + 2 * Math.PI;
  return Array.from({ length: 257 }, (_, index) => {
    const angle = start + (sweep * index) / 256;
    const [along, across] = [Math.cos(angle), minor * Math.sin(angle)];
    return { x: x + majorX * along - majorY * across, y: y + majorY * along + majorX * across };
  });
}

/** Points along a SPLINE by its control points, weights and knots (de Boor's algorithm, after the DXF reference). */
function splinePoints(values: EntityValues, findings: FindingList): readonly CutPoint[] | null {
  const spline = splineOf(values);
  if (typeof spline !== "string") return samplePoints(spline);
  findings.add("bad-spline", "stop", `SPLINE is not read: ${spline}`);
  return null;
}

interface Spline {
  readonly degree: number;
  readonly knots: readonly number[];
  /** x and y times weight, and weight, three a control point. */
  readonly controls: Float64Array;
}

function splineOf(values: EntityValues): Spline | string {
  const [xs, ys, weights, knots] = [values.all(10), values.all(20), values.all(41), values.all(40)];
  const degree = values.first(71) ?? 3;
  const count = xs.length;
  if (count === 0) return "it has no control points";
  if (count > MOST_CONTROLS) return `it has ${count} control points; at most ${MOST_CONTROLS} are read`;
  if (!Number.isInteger(degree) || degree < 1 || degree > 15) return `its degree is ${degree}; allowed is 1 to 15`;
  if (ys.length !== count || count <= degree) return `it has ${count} control points for degree ${degree}`;
  if (knots.length !== count + degree + 1) return `it has ${knots.length} knots, must have ${count + degree + 1}`;
  if (knots.some((knot, index) => knot < (knots[index - 1] ?? knot))) return "its knots do not ascend";
  if (!((knots[count] ?? 0) > (knots[degree] ?? 0))) return "its knots span nothing";
  if (weights.length !== 0 && weights.length !== count) return `it has ${weights.length} weights for ${count} points`;
  if (weights.some((weight) => !(weight > 0))) return "a weight is not above zero";
  const controls = new Float64Array(3 * count);
  xs.forEach((x, index) => {
    const weight = weights[index] ?? 1;
    controls.set([x * weight, (ys[index] ?? 0) * weight, weight], 3 * index);
  });
  return { degree, knots, controls };
}

/** Points along each knot span, 16 a span and 64 at least, ends included. */
function samplePoints(spline: Spline): readonly CutPoint[] {
  const { degree, knots, controls } = spline;
  const spans: (readonly [number, number, number])[] = [];
  for (let index = degree; 3 * index < controls.length; index++) {
    const [from, to] = [knots[index] ?? 0, knots[index + 1] ?? 0];
    if (to > from) spans.push([index, from, to]);
  }
  const steps = Math.max(16, Math.ceil(64 / spans.length));
  const points: CutPoint[] = [];
  for (const [span, from, to] of spans) {
    if (points.length === 0) points.push(pointAt(spline, span, from));
    for (let step = 1; step <= steps; step++) points.push(pointAt(spline, span, from + ((to - from) * step) / steps));
  }
  return points;
}

/** The control points that bear on a span, blended level by level; worked in place, since a file may ask for millions. */
function pointAt({ degree, knots, controls }: Spline, span: number, at: number): CutPoint {
  const work = controls.slice(3 * (span - degree), 3 * (span + 1));
  for (let level = 1; level <= degree; level++) {
    for (let index = degree; index >= level; index--) {
      const low = knots[span - degree + index] ?? 0;
      const high = knots[index + 1 + span - level] ?? 0;
      const share = high === low ? 0 : (at - low) / (high - low);
      for (let axis = 3 * index; axis < 3 * index + 3; axis++)
        work[axis] = (work[axis - 3] ?? 0) * (1 - share) + (work[axis] ?? 0) * share;
    }
  }
  const [x, y, weight] = [work[3 * degree] ?? 0, work[3 * degree + 1] ?? 0, work[3 * degree + 2] ?? 1];
  return { x: x / weight, y: y / weight };
}

/** The circle, arc or line that runs through the points; else their chords. */
function shapeOf(
  points: readonly CutPoint[],
  { type, layer }: EntityValues,
  tolerance: number,
  findings: FindingList,
): DxfEntity | null {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined || !points.every(({ x, y }) => Number.isFinite(x + y))) {
    findings.add("bad-spline", "stop", `${type} is not read: its points are not finite`);
    return null;
  }
  const isClosed = distance(first, last) <= tolerance;
  const at = [first.x, first.y] as const;
  const round = roundShape(points, isClosed, layer, tolerance);
  if (round !== null) {
    const what = round.kind === "circle" ? "a circle" : round.kind === "line" ? "a line" : "an arc";
    const message = `${type} is ${what} within ${ROUND_MM} mm and read as one; some controls do not read ${type}`;
    findings.add("round-curve", "advise", message, at);
    return round;
  }
  findings.add("free-curve", "stop", `${type} is no circle, arc or line within ${ROUND_MM} mm; measured by chords`, at);
  const vertices = (isClosed ? points.slice(0, -1) : points).map(({ x, y }) => ({ x, y, bulge: 0 }));
  return { kind: "polyline", layer, closed: isClosed, vertices };
}

function roundShape(
  points: readonly CutPoint[],
  isClosed: boolean,
  layer: string,
  tolerance: number,
): DxfEntity | null {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return null;
  if (!isClosed && isStraight(points, first, last, tolerance)) {
    return { kind: "line", layer, from: { ...first, bulge: 0 }, to: { ...last, bulge: 0 } };
  }
  const circle = fitCircle(points);
  if (circle === null || circle.deviation > tolerance) return null;
  const sweep = sweepOf(points, circle.center);
  if (sweep === null) return null;
  const { center, radius } = circle;
  if (isClosed) {
    const isWhole = Math.abs(Math.abs(sweep) - 2 * Math.PI) < 1e-6 + (2 * tolerance) / radius;
    return isWhole ? { kind: "circle", layer, x: center.x, y: center.y, radius } : null;
  }
  return { kind: "polyline", layer, closed: false, vertices: twoArcs(first, last, center, radius, sweep) };
}

function isStraight(points: readonly CutPoint[], from: CutPoint, to: CutPoint, tolerance: number): boolean {
  const length = distance(from, to);
  let reached = -tolerance;
  return points.every(({ x, y }) => {
    const [dx, dy] = [x - from.x, y - from.y];
    const along = (dx * (to.x - from.x) + dy * (to.y - from.y)) / length;
    const across = (dx * (to.y - from.y) - dy * (to.x - from.x)) / length;
    const isOn = Math.abs(across) <= tolerance && along >= reached - tolerance && along <= length + tolerance;
    reached = Math.max(reached, along);
    return isOn;
  });
}

/** Angle swept about a centre, counter-clockwise positive; null where the points turn back. */
function sweepOf(points: readonly CutPoint[], center: CutPoint): number | null {
  let [sweep, sign] = [0, 0];
  for (let index = 1; index < points.length; index++) {
    const [a, b] = [points[index - 1], points[index]];
    if (a === undefined || b === undefined) continue;
    const [ax, ay, bx, by] = [a.x - center.x, a.y - center.y, b.x - center.x, b.y - center.y];
    const step = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    if (step === 0) continue;
    if (sign !== 0 && Math.sign(step) !== sign) return null;
    sign = Math.sign(step);
    sweep += step;
  }
  return Math.abs(sweep) > 2 * Math.PI + 0.01 ? null : sweep;
}

/** The arc in two halves, so that its bulges stay below that of a half circle; its ends are the curve's own. */
function twoArcs(from: CutPoint, to: CutPoint, center: CutPoint, radius: number, sweep: number): readonly DxfVertex[] {
  const half = Math.atan2(from.y - center.y, from.x - center.x) + sweep / 2;
  const bulge = Math.tan(sweep / 8);
  const middle = { x: center.x + radius * Math.cos(half), y: center.y + radius * Math.sin(half), bulge };
  return [{ ...from, bulge }, middle, { ...to, bulge: 0 }];
}
