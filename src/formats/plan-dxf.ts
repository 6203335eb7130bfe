/**
 * The anchor-rod plan for other programs: AutoCAD 2000 at true scale in the job's unit, plan coordinates, x plan east and y
 * plan north. Grid lines with bubbles, concrete, base plates, columns, every rod as CIRCLE, marks as TEXT, axis ticks,
 * control points, north, title and status, HELD at what may not be set. Unlike a cut file it holds text; nothing is cut from it.
 */
import type Drawing from "dxf-writer";
import { turnOf, wholeTurn } from "../geometry/index.js";
import type { Contour, Extent, Point } from "../geometry/vocabulary.js";
import { type Plan, siteToPlan } from "../plan/index.js";
import { type BaseFigure, figureOf } from "../sheets/plan/figures.js";
import { gridExtent, type LineSpan, lineSpans } from "../sheets/plan/grid.js";
import { usualSpacing } from "../sheets/plan/tiles.js";
import { NM_PER_MM, NM_PER_UNIT, roundSymmetric, type Unit } from "../units/length.js";
import { CUT_DECIMALS, formatFixed, formatTicks } from "./cut-file.js";
import { asPrinted, putOnLayer, vertexValues, writeDxf } from "./dxf-drawing.js";

/** Layers of a plan with their AutoCAD colour indices; all of them are in every file. */
export const PLAN_LAYERS = {
  grid: { name: "GRID", color: 8 },
  gridText: { name: "GRID-TEXT", color: 7 },
  concrete: { name: "CONCRETE", color: 9 },
  plate: { name: "BASE-PLATE", color: 4 },
  column: { name: "COLUMN", color: 5 },
  rods: { name: "RODS", color: 1 },
  axes: { name: "AXES", color: 3 },
  marks: { name: "MARKS", color: 2 },
  control: { name: "CONTROL", color: 6 },
  held: { name: "HELD", color: 1 },
  title: { name: "TITLE", color: 7 },
  north: { name: "NORTH", color: 3 },
} as const;

type LayerKey = keyof typeof PLAN_LAYERS;

/** One thing to draw, in plan millimetres. Arcs run counter-clockwise, in degrees. */
type PlanItem = { readonly layer: LayerKey } & (
  | { readonly kind: "line"; readonly from: Point; readonly to: Point }
  | { readonly kind: "circle"; readonly center: Point; readonly radius: number }
  | {
      readonly kind: "arc";
      readonly center: Point;
      readonly radius: number;
      readonly start: number;
      readonly end: number;
    }
  | { readonly kind: "contour"; readonly contour: Contour }
  | {
      readonly kind: "text";
      readonly at: Point;
      readonly height: number;
      readonly words: string;
      readonly align: "left" | "center";
    }
);

/** What a plan says of itself, and which marks may not be set. */
export interface PlanDxfWords {
  /** Job, title, revision and so on, a line each. */
  readonly title: readonly string[];
  readonly held: ReadonlySet<string>;
  /** Bearing of plan north from true north, degrees clockwise; null: true north is not given. */
  readonly trueNorth: number | null;
}

/** The whole plan. Same plan, same bytes. */
export function writePlanDxf(plan: Plan, unit: Unit, words: PlanDxfWords): Uint8Array {
  const items = planItems(plan, words);
  const grid = tickMaker(unit);
  const extent = items.map(extentOfItem).reduce(join, items.length > 0 ? NOTHING : { x0: 0, y0: 0, x1: 0, y1: 0 });
  const head = {
    unit,
    decimals: grid.decimals,
    extent: {
      x0: grid.ticks(extent.x0),
      y0: grid.ticks(extent.y0),
      x1: grid.ticks(extent.x1),
      y1: grid.ticks(extent.y1),
    },
    layers: Object.values(PLAN_LAYERS),
  };
  return writeDxf(head, (drawing) => {
    for (const item of items) drawItem(drawing, item, grid);
  });
}

/** From plan millimetres to ticks of the file. */
interface TickMaker {
  readonly decimals: number;
  ticks(mm: number): number;
  printed(mm: number): number;
}

function tickMaker(unit: Unit): TickMaker {
  const decimals = CUT_DECIMALS[unit];
  const perMm = (10 ** decimals * NM_PER_MM) / NM_PER_UNIT[unit];
  const ticks = (mm: number) => roundSymmetric(mm * perMm);
  return { decimals, ticks, printed: (mm) => asPrinted(formatTicks(ticks(mm), decimals)) };
}

function planItems(plan: Plan, words: PlanDxfWords): readonly PlanItem[] {
  const figures = plan.bases.map(figureOf);
  const letter = letterFor(figures);
  const box = gridExtent(plan);
  const out = letter * 12;
  const room = { x0: box.x0 - out, y0: box.y0 - out / 2, x1: box.x1 + out / 2, y1: box.y1 + out };
  return [
    ...lineSpans(plan, room, out / 2).flatMap((span) => spanItems(span, letter)),
    ...figures.flatMap((figure) => figureItems(figure, letter)),
    ...figures
      .filter(({ placed }) => words.held.has(placed.placement.mark))
      .flatMap((figure) => heldItems(figure, letter)),
    ...controlItems(plan, letter),
    ...titleItems(words.title, { x: room.x0, y: room.y0 - letter * 4 }, letter),
    ...northItems("PLAN NORTH", 0, { x: room.x1 + letter * 8, y: room.y1 - letter * 4 }, letter),
    ...(words.trueNorth === null
      ? []
      : northItems("TRUE NORTH", words.trueNorth, { x: room.x1 + letter * 20, y: room.y1 - letter * 4 }, letter)),
  ];
}

/** Words are 240 mm high (2.5 mm at 1:96), less where bases stand close. */
function letterFor(figures: readonly BaseFigure[]): number {
  const apart = usualSpacing(figures.map(({ placed }) => placed.workingPoint));
  return Math.min(240, Math.max(20, apart / 12));
}

function spanItems(span: LineSpan, letter: number): readonly PlanItem[] {
  const layer = "grid";
  if (span.kind === "straight") {
    const { from, to, line } = span;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length];
    return [{ kind: "line", layer, from, to }, ...bubbleItems(line.name, to, dx, dy, letter)];
  }
  const { center, radius, start, sweep, line } = span;
  const end = ((start + sweep) * Math.PI) / 180;
  const tip = { x: center.x + radius * Math.cos(end), y: center.y + radius * Math.sin(end) };
  const arc: PlanItem = { kind: "arc", layer, center, radius, start, end: start + sweep };
  return [arc, ...bubbleItems(line.name, tip, -Math.sin(end), Math.cos(end), letter)];
}

/** A circle at the end of a line, its name in the middle. */
function bubbleItems(name: string, end: Point, dx: number, dy: number, letter: number): readonly PlanItem[] {
  const radius = letter * Math.max(1.4, name.length * 0.55 + 0.5);
  const center = { x: end.x + dx * radius, y: end.y + dy * radius };
  const at = { x: center.x, y: center.y - letter / 2 };
  return [
    { kind: "circle", layer: "grid", center, radius },
    { kind: "text", layer: "gridText", at, height: letter, words: name, align: "center" },
  ];
}

function figureItems(figure: BaseFigure, letter: number): readonly PlanItem[] {
  const { placed, concrete, plate, column, rods, reach } = figure;
  const shape = (layer: LayerKey, contour: Contour | null): readonly PlanItem[] =>
    contour === null ? [] : [{ kind: "contour", layer, contour }];
  const { x, y } = placed.workingPoint;
  const away = Math.max(reach, letter / 2) + letter / 2;
  const words = placed.name;
  return [
    ...shape("concrete", concrete),
    ...shape("plate", plate),
    ...shape("column", column),
    ...rods.map(({ center, radius }): PlanItem => ({ kind: "circle", layer: "rods", center, radius })),
    ...axisItems(placed.workingPoint, placed.placement.turn, away, letter),
    { kind: "text", layer: "marks", at: { x: x + away, y: y + away }, height: letter, words, align: "left" },
  ];
}

/** HELD below the mark, in a frame. */
function heldItems(figure: BaseFigure, letter: number): readonly PlanItem[] {
  const { x, y } = figure.placed.workingPoint;
  const away = Math.max(figure.reach, letter / 2) + letter / 2;
  const at = { x: x + away, y: y + away - letter * 1.8 };
  const [x0, y0, x1, y1] = [at.x - letter * 0.3, at.y - letter * 0.3, at.x + letter * 3.6, at.y + letter * 1.3];
  const corners = [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
  const sides = corners.map(
    (from, i): PlanItem => ({
      kind: "line",
      layer: "held",
      from,
      to: corners[(i + 1) % corners.length] ?? from,
    }),
  );
  return [{ kind: "text", layer: "held", at, height: letter, words: "HELD", align: "left" }, ...sides];
}

/** Lines of words under each other, from here down. */
function titleItems(lines: readonly string[], from: Point, letter: number): readonly PlanItem[] {
  return lines.map((words, i) => ({
    kind: "text",
    layer: "title",
    at: { x: from.x, y: from.y - i * letter * 1.8 },
    height: letter,
    words,
    align: "left",
  }));
}

/** An arrow, its name under it; `turn`: degrees counter-clockwise from the top. */
function northItems(words: string, turn: number, center: Point, letter: number): readonly PlanItem[] {
  const { cos, sin } = turnOf(wholeTurn(90 + turn));
  const at = (along: number, across: number): Point => ({
    x: center.x + along * cos - across * sin,
    y: center.y + along * sin + across * cos,
  });
  const line = (a: Point, b: Point): PlanItem => ({ kind: "line", layer: "north", from: a, to: b });
  const tip = at(letter * 3, 0);
  const under = { x: center.x, y: center.y - letter * 5 };
  return [
    line(at(-letter * 3, 0), tip),
    line(tip, at(letter * 1.8, letter * 0.5)),
    line(tip, at(letter * 1.8, -letter * 0.5)),
    { kind: "circle", layer: "north", center, radius: letter * 1.8 },
    { kind: "text", layer: "north", at: under, height: letter, words, align: "center" },
  ];
}

/** An arrow along the type's own +x, a plain tick along its +y. */
function axisItems(from: Point, turn: number, away: number, letter: number): readonly PlanItem[] {
  const { cos, sin } = turnOf(turn);
  const at = (along: number, across: number): Point => ({
    x: from.x + along * cos - across * sin,
    y: from.y + along * sin + across * cos,
  });
  const tip = away + letter * 1.5;
  const line = (a: Point, b: Point): PlanItem => ({ kind: "line", layer: "axes", from: a, to: b });
  return [
    line(at(away, 0), at(tip, 0)),
    line(at(tip, 0), at(tip - letter / 2, letter / 5)),
    line(at(tip, 0), at(tip - letter / 2, -letter / 5)),
    line(at(0, away), at(0, away + letter)),
  ];
}

/** Control points whose place on the plan is known: a triangle about the point, its name. */
function controlItems({ control, transform }: Plan, letter: number): readonly PlanItem[] {
  return control.flatMap(({ name, plan, northing, easting }) => {
    const known =
      plan.kind === "given"
        ? { x: plan.value.x / NM_PER_MM, y: plan.value.y / NM_PER_MM }
        : transform === null
          ? null
          : siteToPlan(transform, { northing, easting });
    return known === null ? [] : controlItem(name, known, letter);
  });
}

function controlItem(name: string, { x, y }: Point, letter: number): readonly PlanItem[] {
  const corner = (degrees: number): Point => {
    const { cos, sin } = turnOf(degrees);
    return { x: x + letter * cos, y: y + letter * sin };
  };
  const [a, b, c] = [corner(90), corner(210), corner(330)];
  const side = (from: Point, to: Point): PlanItem => ({ kind: "line", layer: "control", from, to });
  return [
    ...[side(a, b), side(b, c), side(c, a)],
    { kind: "circle", layer: "control", center: { x, y }, radius: letter / 10 },
    { kind: "text", layer: "control", at: { x: x + letter * 1.2, y }, height: letter, words: name, align: "left" },
  ];
}

function drawItem(drawing: Drawing, item: PlanItem, grid: TickMaker): void {
  const { printed } = grid;
  switch (item.kind) {
    case "line":
      drawing.drawLine(printed(item.from.x), printed(item.from.y), printed(item.to.x), printed(item.to.y));
      break;
    case "circle":
      drawing.drawCircle(printed(item.center.x), printed(item.center.y), printed(item.radius));
      break;
    case "arc":
      drawing.drawArc(
        printed(item.center.x),
        printed(item.center.y),
        printed(item.radius),
        asPrinted(formatFixed(wholeTurn(item.start), ANGLE_DECIMALS)),
        asPrinted(formatFixed(wholeTurn(item.end), ANGLE_DECIMALS)),
      );
      break;
    case "contour":
      drawContour(drawing, item.contour, grid);
      break;
    case "text":
      drawing.drawText(
        printed(item.at.x),
        printed(item.at.y),
        printed(item.height),
        0,
        escaped(item.words),
        item.align,
        "baseline",
      );
      break;
  }
  putOnLayer(drawing, PLAN_LAYERS[item.layer].name);
}

const ANGLE_DECIMALS = 9;

function drawContour(drawing: Drawing, contour: Contour, { printed }: TickMaker): void {
  if (contour.kind === "circle") {
    const { x, y } = contour.center;
    drawing.drawCircle(printed(x), printed(y), printed(contour.diameter / 2 / NM_PER_MM));
    return;
  }
  drawing.drawPolyline(
    contour.segments.map(({ from, bulge }) => vertexValues(printed(from.x), printed(from.y), bulge)),
    true,
  );
}

/** Letters outside printable ASCII, and the caret and backslash that begin codes, as \\U+XXXX (DXF reference, string codes). */
function escaped(words: string): string {
  return [...words.replace(/[\p{Cc}\s]+/gu, " ")].map(escapedLetter).join("");
}

function escapedLetter(letter: string): string {
  if (/[ -~]/.test(letter) && letter !== "\\" && letter !== "^") return letter;
  return Array.from({ length: letter.length }, (_, i) => {
    const code = letter.charCodeAt(i).toString(16).toUpperCase().padStart(4, "0");
    return `\\U+${code}`;
  }).join("");
}

const NOTHING: Extent = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };

function join(a: Extent, b: Extent): Extent {
  return { x0: Math.min(a.x0, b.x0), y0: Math.min(a.y0, b.y0), x1: Math.max(a.x1, b.x1), y1: Math.max(a.y1, b.y1) };
}

/** Box of an item; of a text its place and an estimate of its letters, a circle for an arc. */
function extentOfItem(item: PlanItem): Extent {
  const around = ({ x, y }: Point, r: number): Extent => ({ x0: x - r, y0: y - r, x1: x + r, y1: y + r });
  switch (item.kind) {
    case "line":
      return join(around(item.from, 0), around(item.to, 0));
    case "circle":
      return around(item.center, item.radius);
    case "arc":
      return arcExtent(item);
    case "contour":
      return item.contour.kind === "circle"
        ? around(item.contour.center, item.contour.diameter / 2 / NM_PER_MM)
        : item.contour.segments.map(({ from }) => around(from, 0)).reduce(join, NOTHING);
    case "text": {
      const width = item.words.length * item.height * 0.9;
      const left = item.align === "left" ? 0 : width / 2;
      const { x, y } = item.at;
      return { x0: x - left, y0: y, x1: x - left + width, y1: y + item.height };
    }
  }
}

/** Its ends, and the quarter points that it passes. */
function arcExtent({ center, radius, start, end }: Extract<PlanItem, { kind: "arc" }>): Extent {
  const quarters = Array.from({ length: 9 }, (_, i) => (Math.ceil(start / 90) + i) * 90).filter((each) => each < end);
  return [start, end, ...quarters]
    .map((degrees) => {
      const angle = (degrees * Math.PI) / 180;
      const [x, y] = [center.x + radius * Math.cos(angle), center.y + radius * Math.sin(angle)];
      return { x0: x, y0: y, x1: x, y1: y };
    })
    .reduce(join, NOTHING);
}
