/** What stands at a placement, as contours on the plan: concrete, base plate, column, rods. Plan millimetres. */
import { type Contour, circle, extentOf, type Point, pointAt, polygon, rectangle } from "../../geometry/index.js";
import type { Base, ColumnShape, Input, Offset, PlanShape } from "../../job/model/job.js";
import { concreteOnPlan, contourOnPlan, type PlacedBase } from "../../plan/index.js";
import { greatestOf } from "../../units/extremes.js";
import { toMillimetres } from "../../units/index.js";

/** One placed base as it is drawn. `null`: its size is not given. */
export interface BaseFigure {
  readonly placed: PlacedBase;
  readonly concrete: Contour | null;
  readonly plate: Contour | null;
  readonly column: Contour | null;
  readonly rods: readonly { readonly tag: string; readonly center: Point; readonly radius: number }[];
  /** From the working point to the farthest ink. */
  readonly reach: number;
}

/** The figure of a base where it stands. */
export function figureOf(placed: PlacedBase): BaseFigure {
  const { base } = placed;
  const onPlan = (contour: Contour | null) => (contour === null ? null : contourOnPlan(placed, contour));
  const concrete = concreteOnPlan(placed);
  const plate = onPlan(plateContour(base));
  const rods = placed.rods.map(({ rod, plan }) => ({
    tag: rod.tag,
    center: plan,
    radius: toMillimetres(rod.group.rod.diameter) / 2,
  }));
  const column = onPlan(columnContour(base.column));
  return {
    placed,
    concrete,
    plate,
    column,
    rods,
    reach: reachOf(placed.workingPoint, [concrete, plate, column], rods),
  };
}

function reachOf(from: Point, contours: readonly (Contour | null)[], rods: BaseFigure["rods"]): number {
  const boxes = contours.filter((contour) => contour !== null).map(extentOf);
  const far = boxes.map(({ x0, y0, x1, y1 }) => Math.max(x1 - from.x, from.x - x0, y1 - from.y, from.y - y0));
  const rodReach = rods.map(
    ({ center, radius }) => Math.max(Math.abs(center.x - from.x), Math.abs(center.y - from.y)) + radius,
  );
  return greatestOf([...far, ...rodReach], 0);
}

/** The base plate in the base's own axes. */
export function plateContour({ basePlate }: Base): Contour | null {
  return shapeContour(basePlate.shape, basePlate.at);
}

/** The concrete in the base's own axes. */
export function concreteContour({ concrete }: Base): Contour | null {
  return shapeContour(concrete.shape, concrete.at);
}

function shapeContour(shape: Input<PlanShape>, at: Offset): Contour | null {
  if (shape.kind === "missing") return null;
  const center = pointAt(at.x, at.y);
  const { value } = shape;
  return value.kind === "circle" ? circle(center, value.diameter) : rectangle(center, value.x, value.y, value.corner);
}

/** The column's section in the base's own axes: an I, a rectangle or a circle. */
export function columnContour(column: Input<ColumnShape>): Contour | null {
  if (column.kind === "missing") return null;
  const { value } = column;
  const center = pointAt(value.at.x, value.at.y);
  switch (value.kind) {
    case "wide flange":
      return wideFlange(value, center);
    case "tube":
      return rectangle(center, value.x, value.y);
    case "pipe":
      return circle(center, value.diameter);
  }
}

/** Twelve corners, flanges across the depth. */
function wideFlange(shape: Extract<ColumnShape, { kind: "wide flange" }>, center: Point): Contour {
  const [d, b] = [toMillimetres(shape.depth) / 2, toMillimetres(shape.width) / 2];
  const [f, w] = [d - toMillimetres(shape.flange), toMillimetres(shape.web) / 2];
  const right: readonly (readonly [number, number])[] = [
    [w, -f],
    [b, -f],
    [b, -d],
  ];
  const half = [...right.map(([x, y]) => [x, -y] as const).reverse(), ...right.map(([x, y]) => [x, y] as const)];
  const corners = [...half.toReversed(), ...half.map(([x, y]) => [-x, y] as const)];
  return polygon(
    corners.map(([across, along]) =>
      shape.depthAlong === "x"
        ? { x: center.x + along, y: center.y + across }
        : { x: center.x + across, y: center.y + along },
    ),
  );
}
