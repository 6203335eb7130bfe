/** Bases as the plan shows them: concrete, column section, rods at their places, ticks of the type's own axes. */
import type { Contour, Extent, Point } from "../../geometry/index.js";
import { turnOf } from "../../geometry/index.js";
import type { Breaks } from "../dimension.js";
import { arrowHead, at, circle, line, strokeOf } from "../items.js";
import { type Draft, putAll } from "../paper.js";
import type { View } from "../plan-shapes.js";
import { contourParts, onPaper } from "../plan-shapes.js";
import type { PaperPoint, PathPart, SceneItem } from "../scene.js";
import { clipped } from "./clip.js";
import type { BaseFigure } from "./figures.js";
import { type PlanPage, paperOf } from "./page.js";

/** Bases that would reach less than this from their working point on paper are drawn larger than true. */
const LEAST_REACH = 3;
/** A rod is drawn no smaller than this on paper. */
const LEAST_ROD = 0.3;
/** A base plate is drawn beside concrete where both can be told apart. */
const PLATE_FROM = 9;
/** A column is drawn in wide lines from this reach of its base on. */
const WIDE_FROM = 5;

/** Radius that a base's symbol takes around its working point on paper, ticks left out. */
export function symbolReach(page: PlanPage, figure: BaseFigure): number {
  return Math.max(LEAST_REACH, figure.reach * page.view.scale);
}

/** True where some base is drawn larger than true. */
export function isEnlarged(page: PlanPage): boolean {
  return page.tile.figures.some(({ reach }) => reach * page.view.scale < LEAST_REACH);
}

/** Clear paper beside a symbol where an extension line is broken off for it. */
const BESIDE_SYMBOL = 1;

/** Leaves an extension line out where a base stands: through column and rods it would seem to measure from them. */
export function outsideBases(page: PlanPage): Breaks {
  const boxes = page.tile.figures.map((figure): Extent => {
    const { x, y } = paperOf(page, figure.placed.workingPoint);
    const half = symbolReach(page, figure) + BESIDE_SYMBOL;
    return { x0: x - half, y0: y - half, x1: x + half, y1: y + half };
  });
  return (from, to) =>
    boxes.reduce(
      (stretches: ReturnType<Breaks>, box) => stretches.flatMap(([p, q]) => outsideBox(p, q, box)),
      [[from, to]],
    );
}

function outsideBox(p: PaperPoint, q: PaperPoint, box: Extent): ReturnType<Breaks> {
  const inside = clipped(p, q, box);
  if (inside === null) return [[p, q]];
  const [enter, leave] = inside;
  return [...(enter === p ? [] : [[p, enter] as const]), ...(leave === q ? [] : [[leave, q] as const])];
}

/** All bases of the sheet, a stroke for each kind of line. */
export function putSymbols(draft: Draft, page: PlanPage): void {
  const drawn = page.tile.figures.map((figure) => symbolOf(page, figure));
  const all = (pick: (symbol: Symbols) => readonly PathPart[]) => drawn.flatMap(pick);
  const strokes = [
    strokeOf(
      "fine",
      all(({ concrete }) => concrete),
    ),
    strokeOf(
      "base-plate",
      all(({ plate }) => plate),
    ),
    strokeOf(
      "hole",
      all(({ column, isLarge }) => (isLarge ? column : [])),
    ),
    strokeOf(
      "fine",
      all(({ column, isLarge }) => (isLarge ? [] : column)),
    ),
    strokeOf(
      "fine",
      all(({ rods }) => rods),
    ),
    strokeOf(
      "fine",
      all(({ ticks }) => ticks),
    ),
  ];
  putAll(draft, [...strokes.filter(({ parts }) => parts.length > 0), ...drawn.map(({ arrow }) => arrow)]);
}

interface Symbols {
  readonly concrete: readonly PathPart[];
  readonly plate: readonly PathPart[];
  readonly column: readonly PathPart[];
  /** The column is large enough for a wide line. */
  readonly isLarge: boolean;
  readonly rods: readonly PathPart[];
  readonly ticks: readonly PathPart[];
  readonly arrow: SceneItem;
}

function symbolOf(page: PlanPage, figure: BaseFigure): Symbols {
  const view = figureView(page, figure);
  const parts = (contour: Contour | null) => (contour === null ? [] : contourParts(view, contour));
  const { x, y } = paperOf(page, figure.placed.workingPoint);
  const reach = symbolReach(page, figure);
  const turn = turnOf(figure.placed.placement.turn);
  const outline = figure.concrete ?? figure.plate;
  return {
    concrete: parts(outline),
    plate: figure.concrete !== null && figure.reach * view.scale >= PLATE_FROM ? parts(figure.plate) : [],
    column: parts(figure.column),
    isLarge: figure.reach * view.scale >= WIDE_FROM,
    rods: figure.rods.flatMap(({ center, radius }) => rodParts(view, center, radius, figure)),
    ...ticksAt(at(x, y), reach, turn, outline === null),
  };
}

/** The sheet's view, or one enlarged about the working point. */
function figureView(page: PlanPage, { reach, placed }: BaseFigure): View {
  const { view } = page;
  const factor = reach > 0 ? Math.max(1, LEAST_REACH / (reach * view.scale)) : 1;
  const { x, y } = onPaper(view, placed.workingPoint);
  const scale = view.scale * factor;
  return { scale, origin: at(x - placed.workingPoint.x * scale, y - placed.workingPoint.y * scale) };
}

/** A circle at its true place, with its cross where there is room for it. */
function rodParts(view: View, center: Point, radius: number, { rods }: BaseFigure): readonly PathPart[] {
  const place = onPaper(view, center);
  const r = Math.max(LEAST_ROD, radius * view.scale);
  const reach = r + 0.5;
  const isCrowded = rods.length > 12 || r < 0.45;
  return [circle(place, r), ...(isCrowded ? [] : crossParts(place, reach))];
}

function crossParts({ x, y }: PaperPoint, reach: number): readonly PathPart[] {
  return [line(at(x - reach, y), at(x + reach, y)), line(at(x, y - reach), at(x, y + reach))];
}

const ARROW = 1.8;
const TICK = 3.2;

/** An arrow along the type's own +x, a plain tick along its +y; both from the symbol's edge outwards. */
function ticksAt(
  center: PaperPoint,
  reach: number,
  { cos, sin }: { readonly cos: number; readonly sin: number },
  withPoint: boolean,
): Pick<Symbols, "ticks" | "arrow"> {
  const along = (t: number) => at(center.x + cos * t, center.y + sin * t);
  const across = (t: number) => at(center.x - sin * t, center.y + cos * t);
  const start = reach * 1.02;
  const tip = along(start + TICK + ARROW);
  return {
    ticks: [
      line(along(start), along(start + TICK)),
      line(across(start), across(start + TICK)),
      ...(withPoint ? crossParts(center, 1.2) : []),
    ],
    arrow: arrowHead(tip, cos, sin, ARROW * 1.1),
  };
}
