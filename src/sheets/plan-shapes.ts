/** What is drawn in plan beside its dimensions: outline, holes, centre lines, axes. */
import type { Contour, Extent, Point } from "../geometry/vocabulary.js";
import type { Hole, HoleShape, Plate } from "../template/model.js";
import { type Length, toMillimetres } from "../units/index.js";
import { arrowHead, at, circle, line, stroke, text } from "./items.js";
import type { PaperPoint, PathPart, SceneItem } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";
import { textWidth } from "./text-metrics.js";

/** Where the working point stands on paper, and paper over real. */
export interface View {
  readonly origin: PaperPoint;
  readonly scale: number;
}

/** A point in base axes (millimetres) on paper. */
export function onPaper(view: View, point: Point): PaperPoint {
  return at(view.origin.x + point.x * view.scale, view.origin.y + point.y * view.scale);
}

/** A contour as path parts on paper. */
export function contourParts(view: View, contour: Contour): readonly PathPart[] {
  if (contour.kind === "circle")
    return [circle(onPaper(view, contour.center), (toMillimetres(contour.diameter) / 2) * view.scale)];
  return contour.segments.map(({ from, to, bulge }) => {
    const ends = { from: onPaper(view, from), to: onPaper(view, to) };
    return bulge === 0 ? { kind: "line", ...ends } : { kind: "arc", ...ends, bulge };
  });
}

/** Paper radius that a hole takes around its centre: half its larger side. */
export function holeRadius(view: View, { shape }: Hole): number {
  const widest = shape.kind === "circle" || shape.width >= shape.height ? widthOf(shape) : shape.height;
  return (toMillimetres(widest) / 2) * view.scale;
}

/** Half the width and half the height of a hole, millimetres. */
export function holeSpan({ shape }: Hole): Point {
  if (shape.kind === "circle") return { x: toMillimetres(shape.diameter) / 2, y: toMillimetres(shape.diameter) / 2 };
  return { x: toMillimetres(shape.width) / 2, y: toMillimetres(shape.height) / 2 };
}

function widthOf(shape: HoleShape): Length {
  return shape.kind === "circle" ? shape.diameter : shape.width;
}

/** How far the centre lines of a hole reach past its edge. */
export const CROSS_REACH = 1.5;

/** The plate's outline in full lines. */
export function outlineItem(view: View, plate: Plate): SceneItem {
  return stroke("outline", ...contourParts(view, plate.region.outer));
}

/** Holes in full lines; those that a steel plate has only as a punch mark in a fine line. */
export function holeItems(view: View, plate: Plate): readonly SceneItem[] {
  const isMark = (hole: Hole) => hole.made === "drill" && plate.material !== "plywood";
  const cut = plate.holes.filter((hole) => !isMark(hole)).flatMap((hole) => contourParts(view, hole.contour));
  const drilled = plate.holes.filter(isMark).flatMap((hole) => contourParts(view, hole.contour));
  const crosses = plate.holes.filter((hole) => hole.role !== "opening").flatMap((hole) => cross(view, hole));
  return [
    ...(cut.length > 0 ? [stroke("hole", ...cut)] : []),
    ...(drilled.length > 0 ? [stroke("fine", ...drilled)] : []),
    ...(crosses.length > 0 ? [stroke("fine", ...crosses)] : []),
  ];
}

function cross(view: View, hole: Hole): readonly PathPart[] {
  const { x, y } = onPaper(view, hole.center);
  const reach = holeRadius(view, hole) + CROSS_REACH;
  return [line(at(x - reach, y), at(x + reach, y)), line(at(x, y - reach), at(x, y + reach))];
}

/** The type's own axes through the working point, past everything drawn, with arrows and their names. */
export function axisItems(view: View, drawn: Extent, lettering: Lettering): readonly SceneItem[] {
  const low = onPaper(view, { x: drawn.x0, y: drawn.y0 });
  const high = onPaper(view, { x: drawn.x1, y: drawn.y1 });
  const { x, y } = view.origin;
  const tip = { x: high.x + AXIS_REACH, y: high.y + AXIS_REACH };
  const letter = lettering.body;
  return [
    stroke("centre", line(at(low.x - AXIS_TAIL, y), at(high.x, y)), line(at(x, low.y - AXIS_TAIL), at(x, high.y))),
    stroke("fine", line(at(high.x, y), at(tip.x, y)), line(at(x, high.y), at(x, tip.y))),
    arrowHead(at(tip.x, y), 1, 0, 3.6),
    arrowHead(at(x, tip.y), 0, 1, 3.6),
    text("label", "+X", at(tip.x + 1.2, y - letter / 2), letter, { bold: true }),
    text("label", "+Y", at(x, tip.y + 1.4), letter, { anchor: "middle", bold: true }),
  ];
}

/** How far an axis' name reaches past what is drawn. */
export function axisLabelReach(axis: "x" | "y", letter: number): number {
  return AXIS_REACH + (axis === "x" ? 1.2 + textWidth("+X", letter, true) : 1.4 + letter);
}

/** How far the axes reach past what is drawn, at their arrows and at their other ends. */
export const AXIS_REACH = 8;
const AXIS_TAIL = 4;
