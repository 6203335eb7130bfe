/** Distances that rules hold, doubled and in whole nanometres so that nothing is halved. */
import type { Contour, Extent, Path, Point } from "../../geometry/index.js";
import {
  arcOf,
  circle,
  extentOf,
  meetsAngle,
  millimetresBetween,
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
import { greatestOf, leastOf } from "../../units/extremes.js";
import { roundSymmetric } from "../../units/index.js";

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

/** Twice how far the farthest point of a contour lies from `at`. */
export function twiceFarthest(contour: Contour, at: Offset): number {
  const from = pointAt(at.x, at.y);
  if (contour.kind === "circle") return twiceDistanceBetweenPoints(from, contour.center) + contour.diameter;
  return greatestOf(contour.segments.map((segment) => twiceToLattice(farthestOn(segment, from))));
}

function farthestOn(segment: Path["segments"][number], from: Point): number {
  const ends = Math.max(millimetresBetween(from, segment.from), millimetresBetween(from, segment.to));
  if (segment.bulge === 0) return ends;
  const arc = arcOf(segment);
  const away = Math.atan2(arc.center.y - from.y, arc.center.x - from.x);
  return meetsAngle(arc, away) ? Math.max(ends, millimetresBetween(from, arc.center) + arc.radius) : ends;
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
