/** Distances that rules hold, doubled and in whole nanometres so that nothing is halved. */
import type { Contour, Extent, Path, Point } from "../../geometry/index.js";
import {
  arcOf,
  circle,
  extentOf,
  meetsAngle,
  millimetresBetween,
  onCircle,
  pointAt,
  pointInNanometres,
  polygon,
  rectangle,
  toLattice,
  twiceDepthInside,
  twiceDistanceBetweenPoints,
  twiceToLattice,
} from "../../geometry/index.js";
import type { ColumnShape, Offset, PlanShape } from "../../job/model/job.js";
import type { Plate } from "../../template/model.js";
import { greatestOf, leastOf } from "../../units/extremes.js";
import { NM_PER_MM, roundSymmetric } from "../../units/index.js";

/** Twice the distance from a point to a contour beside it; negative inside. */
export function twiceOutside(at: Point, contour: Contour): number {
  return -twiceDepthInside(at, contour) || 0;
}

/** A plate's or pier's contour, `at` its own centre. */
export function planContour(shape: PlanShape, at: Offset): Contour {
  return shape.kind === "circle"
    ? circle(pointAt(at.x, at.y), shape.diameter)
    : rectangle(pointAt(at.x, at.y), shape.x, shape.y, shape.corner);
}

/** A plate's outline, a round one whole: the notch of its key leaves the arcs beside it a nanometre off in figures. */
export function wholeOutline({ region, keyed }: Pick<Plate, "region" | "keyed">): Contour {
  return keyed?.bare.kind === "circle" ? keyed.bare : region.outer;
}

/** A column's outline in plan; fillets of a rolled shape are not drawn. */
export function columnContour(column: ColumnShape): Contour {
  switch (column.kind) {
    case "pipe":
      return circle(pointAt(column.at.x, column.at.y), column.diameter);
    case "tube":
      return rectangle(pointAt(column.at.x, column.at.y), column.x, column.y);
    case "wide flange":
      return polygon(flangePoints(column).map(([x, y]) => pointInNanometres(column.at.x + x, column.at.y + y)));
  }
}

type WideFlange = Extract<ColumnShape, { readonly kind: "wide flange" }>;

/** The twelve corners about the column's own centre, in nanometres. */
function flangePoints({ depth, width, flange, web, depthAlong }: WideFlange): readonly (readonly [number, number])[] {
  const [d, w, t] = [depth / 2, width / 2, web / 2];
  const inner = d - flange;
  const quarter = [
    [w, d],
    [w, inner],
    [t, inner],
  ] as const;
  const right = [...quarter, ...[...quarter].reverse().map(([x, y]) => [x, -y] as const)];
  const all = [...right, ...[...right].reverse().map(([x, y]) => [-x, y] as const)];
  return depthAlong === "y" ? all : all.map(([x, y]) => [y, x] as const);
}

/** Box around a contour in doubled nanometres; exact for a circle. */
export function twiceExtent(contour: Contour): Extent {
  const { x0, y0, x1, y1 } = extentOf(contour);
  return { x0: twiceToLattice(x0), y0: twiceToLattice(y0), x1: twiceToLattice(x1), y1: twiceToLattice(y1) };
}

/** A point of a contour, and twice how far it lies from somewhere. */
export interface FarPoint {
  readonly at: Point;
  readonly twice: number;
}

/** The point of a contour that lies farthest from `from`; exact for a circle. */
export function farthestOf(contour: Contour, from: Point): FarPoint {
  if (contour.kind === "circle") return farthestOnCircle(contour, from);
  const start: FarPoint = { at: from, twice: -1 };
  return contour.segments
    .flatMap((segment) => farPoints(segment, from))
    .reduce((far, each) => {
      return each.twice > far.twice ? each : far;
    }, start);
}

function farthestOnCircle({ center, diameter }: Extract<Contour, { kind: "circle" }>, from: Point): FarPoint {
  const away = Math.atan2(center.y - from.y, center.x - from.x);
  const at = onCircle(center, diameter / 2 / NM_PER_MM, away);
  return { at, twice: twiceDistanceBetweenPoints(from, center) + diameter };
}

function farPoints(segment: Path["segments"][number], from: Point): readonly FarPoint[] {
  const end: FarPoint = { at: segment.from, twice: twiceDistanceBetweenPoints(from, segment.from) };
  if (segment.bulge === 0) return [end];
  const arc = arcOf(segment);
  const away = Math.atan2(arc.center.y - from.y, arc.center.x - from.x);
  if (!meetsAngle(arc, away)) return [end];
  const twice = twiceToLattice(millimetresBetween(from, arc.center) + arc.radius);
  return [end, { at: onCircle(arc.center, arc.radius, away), twice }];
}

/**
 * Twice what a round plate bears on a round form, on two opposite sides: across the line of centres, where an offset takes
 * least from both.
 */
export function twiceRoundBearing(
  plate: { readonly center: Point; readonly diameter: number },
  at: Offset,
  form: number,
): number {
  const offset = twiceDistanceBetweenPoints(plate.center, pointAt(at.x, at.y));
  return roundSymmetric(legOf(plate.diameter, offset)) - form;
}

/** The other leg of a right triangle, 0 where there is none: sqrt(hypotenuse2 - leg2). */
function legOf(hypotenuse: number, leg: number): number {
  return Math.sqrt(Math.max(0, (hypotenuse - leg) * (hypotenuse + leg)));
}

/**
 * Twice what a cornered plate bears past the chords of a round form. At a corner the form's chords on the plate's own two
 * edge lines (parallel to x and y) end short of it: the lesser of the two lengths beyond them is what bears there. The best
 * corner of each quarter counts, and the least quarter. null where a quarter has no corner.
 */
export function twiceChordBearing({ segments }: Path, at: Offset, form: number): number | null {
  const corners = segments.map(({ from }) => {
    const [x, y] = [2 * (toLattice(from.x) - at.x), 2 * (toLattice(from.y) - at.y)];
    return { x, y, past: Math.min(pastChord(x, y, form), pastChord(y, x, form)) };
  });
  const quarters = [
    [1, 1],
    [-1, 1],
    [-1, -1],
    [1, -1],
  ].map(([sx = 1, sy = 1]) => corners.filter(({ x, y }) => sx * x >= 0 && sy * y >= 0).map(({ past }) => past));
  return quarters.some((pasts) => pasts.length === 0) ? null : leastOf(quarters.map((pasts) => greatestOf(pasts)));
}

/** How far `along` reaches past the end of the form's chord at `across`; all doubled. */
function pastChord(along: number, across: number, form: number): number {
  return roundSymmetric(Math.abs(along) - legOf(form, Math.min(Math.abs(across), form)));
}
