/** A detail of one type: rods dimensioned from the working point, axes, base plate, edge of concrete. Its own axes. */

import {
  type Contour,
  circle as circleContour,
  type Extent,
  extentOf,
  growExtent,
  joinExtents,
  toLattice,
} from "../../geometry/index.js";
import type { Base, Offset } from "../../job/model/job.js";
import { boltCircleOf } from "../../patterns/index.js";
import type { PlacedRod } from "../../rods/model.js";
import type { Hole } from "../../template/model.js";
import { greatestOf, leastOf } from "../../units/extremes.js";
import { formatLength, type Length, nanometres, toMillimetres, type Unit } from "../../units/index.js";
import { extension, lineSpacing, putRuns, type Run } from "../dimension.js";
import { at, circle, group, line, rectangle, stroke, text } from "../items.js";
import { type Area, copyDraft, type Draft, put, putAll, startDraft, withGaps } from "../paper.js";
import { AXIS_REACH, axisItems, contourParts, onPaper, type View } from "../plan-shapes.js";
import type { PaperPoint, PathPart, SceneItem } from "../scene.js";
import type { Lettering, Scale } from "../sheet-sizes.js";
import { putTags } from "../tags.js";
import { shorten, textWidth } from "../text-metrics.js";
import { scaleWords } from "../title-block.js";
import { blockAbout } from "./blocks.js";
import { columnContour, concreteContour, plateContour } from "./figures.js";
import { detailLength } from "./lengths.js";

/** What a detail is drawn from. `count`: placements of the type. */
export interface DetailInput {
  readonly base: Base;
  readonly rods: readonly PlacedRod[];
  readonly count: number;
  readonly held: boolean;
  readonly unit: Unit;
  /** The word for a distance from rod to rod. */
  readonly gauge: string;
}

/** More lines than this along one axis are left to the coordinate table, but for the first and the last. */
const MOST_LINES = 7;

/** A detail as drawn; `listed`: some rods are left to the coordinate table. */
export interface DrawnDetail {
  readonly item: SceneItem;
  readonly listed: boolean;
}

function distinct(values: readonly number[]): readonly number[] {
  return [...new Set(values)].toSorted((a, b) => a - b);
}

/** Paper that a detail takes at a scale, with its dimensions, axes and titles. */
export function detailNeed(
  input: DetailInput,
  { factor }: Scale,
  lettering: Lettering,
): { readonly x: number; readonly y: number } {
  const { x0, y0, x1, y1 } = drawnExtent(input);
  const { left, below, right, above } = besides(input, lettering);
  return {
    x: greatestOf(titleWidths(input, lettering), (x1 - x0) * factor + left + right) + 2,
    y: (y1 - y0) * factor + titleHeight(input, lettering) + below + above + 2,
  };
}

/** The shortest stretch between lines of rods or working point along either axis, millimetres; infinite where there is none. */
export function shortestRun({ rods }: DetailInput): number {
  return leastOf(
    (["x", "y"] as const).flatMap((axis) => {
      const lines = distinct([0, ...rods.map(({ center }) => center[axis])]);
      return lines.slice(1).map((value, i) => value - (lines[i] ?? value));
    }),
  );
}

/** Mark and quantity, a line for each group of rods, the scale. */
function titleHeight(input: DetailInput, { body, small }: Lettering): number {
  const lines = 1 + rodWords(input).length + shapeWords(input).length;
  return body + lines * (small + LINE_GAP) + 4 + underFrame(input);
}

/** Clear of the lower side of the frame around the title of a held type. */
function underFrame({ held }: DetailInput): number {
  return held ? 1.6 : 0;
}

const LINE_GAP = 1.8;

/** Draws a detail into its cell of the sheet. */
export function drawDetail(input: DetailInput, cell: Area, scale: Scale, lettering: Lettering): DrawnDetail {
  const drawn = drawnExtent(input);
  const titles = titleHeight(input, lettering);
  const view = placeView(cell, input, scale, titles, lettering);
  const draft = startDraft(cell);
  const foot = onPaper(view, { x: 0, y: drawn.y0 }).y - besides(input, lettering).below;
  putTitles(draft, input, { ...cell, y0: foot - titles }, scale, lettering);
  const plan: Draft = { ...draft, area: { ...cell, y0: foot }, items: [] };
  putShapes(plan, view, input, drawn, lettering);
  const whole = (["x", "y"] as const).map((axis) => putChains(plan, view, input, drawn, axis, lettering));
  putRodTags(plan, view, input, lettering);
  putWorkingPoint(plan, view, lettering);
  const items = [...draft.items, group("detail-view", withGaps(plan.items, plan.gaps), { scale: scale.factor })];
  return { item: group("detail", items, { mark: input.base.mark }), listed: whole.includes(false) };
}

/** Room for a second row of figures between the dimension lines. */
function spacing(lettering: Lettering): ReturnType<typeof lineSpacing> {
  const { first, next } = lineSpacing(lettering.small);
  return { first, next };
}

/** Paper beside the drawn shapes: dimension lines at the left and below, axes at the right and above. */
function besides(input: DetailInput, lettering: Lettering) {
  const { first, next } = spacing(lettering);
  const rows = (axis: Axis) => (edgeLines(input, axis) === null ? 1 : 2) * next + first + lettering.small + 2;
  return {
    left: rows("y"),
    below: rows("x"),
    right: AXIS_REACH + lettering.body * 2 + 4,
    above: AXIS_REACH + lettering.body + 3,
  };
}

function roomIn(
  cell: Area,
  titles: number,
  input: DetailInput,
  lettering: Lettering,
): { readonly x: number; readonly y: number } {
  const { left, below, right, above } = besides(input, lettering);
  return { x: cell.x1 - cell.x0 - left - right, y: cell.y1 - cell.y0 - titles - below - above };
}

function placeView(cell: Area, input: DetailInput, { factor }: Scale, titles: number, lettering: Lettering): View {
  const drawn = drawnExtent(input);
  const { left, above } = besides(input, lettering);
  const room = roomIn(cell, titles, input, lettering);
  const [w, h] = [(drawn.x1 - drawn.x0) * factor, (drawn.y1 - drawn.y0) * factor];
  const x = cell.x0 + left + Math.max(0, room.x - w) / 2;
  const y = cell.y1 - above - Math.max(0, room.y - h) / 2 - h;
  return { scale: factor, origin: at(x - drawn.x0 * factor, y - drawn.y0 * factor) };
}

function drawnExtent(input: DetailInput): Extent {
  const { base, rods } = input;
  const shapes = [concreteContour(base), plateContour(base), columnContour(base.column)].filter(
    (each) => each !== null,
  );
  const circles = rods.map(({ center, group: { rod } }) => circleContour(center, rod.diameter));
  const boxes = [...shapes, ...circles].map(extentOf);
  const working: Extent = { x0: 0, y0: 0, x1: 0, y1: 0 };
  return growExtent(boxes.reduce(joinExtents, working), shapes.length === 0 ? 20 : 0);
}

function putTitles(draft: Draft, input: DetailInput, cell: Area, scale: Scale, lettering: Lettering): void {
  const { held } = input;
  const { body, small } = lettering;
  const room = cell.x1 - cell.x0 - 6;
  const x = (cell.x0 + cell.x1) / 2;
  const title = titleWords(input);
  const lines = [...rodWords(input), ...shapeWords(input), `SCALE ${scaleWords(scale)}`];
  const y = cell.y0 + lines.length * (small + LINE_GAP) + 2 + underFrame(input);
  const under = y - underFrame(input);
  const frame = Math.min(room, textWidth(title, body, true)) / 2 + 1.4;
  put(
    draft,
    text(held ? "held" : "heading", shorten(title, room, body, true), at(x, y), body, { anchor: "middle", bold: true }),
    ...(held ? [stroke("held", ...rectangle(x - frame, y - 1.4, x + frame, y + body + 1.4))] : []),
    ...lines.map((words, i) =>
      text("label", shorten(words, room, small), at(x, under - (i + 1) * (small + LINE_GAP)), small, {
        anchor: "middle",
      }),
    ),
  );
}

function titleWidths(input: DetailInput, { body, small }: Lettering): readonly number[] {
  return [
    textWidth(titleWords(input), body, true) + 8,
    ...[...rodWords(input), ...shapeWords(input)].map((words) => textWidth(words, small) + 8),
  ];
}

function titleWords({ base, count, held }: DetailInput): string {
  return `${base.mark}, QTY ${count}, TEMPLATE ${base.template.mark}${held ? ", HELD" : ""}`;
}

/** `4 RODS 1-1/4, PROJ 9, EMBED 24`, a line for each group. */
function rodWords({ base, rods, unit }: DetailInput): readonly string[] {
  return base.groups.map(({ letter, rod, pattern }) => {
    const count = rods.filter(({ group: { letter: own } }) => own === letter).length;
    const circle = boltCircleOf(pattern);
    const ring = circle === null ? "" : ` ON Ø${formatLength(circle.diameter, unit)} B.C.`;
    const figure = (word: string, input: typeof rod.projection) =>
      input.kind === "given" ? `, ${word} ${formatLength(input.value, unit)}` : "";
    return `${count} ${count === 1 ? "ROD" : "RODS"} ${rod.size}${ring}${figure("PROJ", rod.projection)}${figure("EMBED", rod.embedment)}`;
  });
}

function putShapes(draft: Draft, view: View, input: DetailInput, drawn: Extent, lettering: Lettering): void {
  const { base } = input;
  const shape = (role: "concrete" | "base-plate" | "fine", contour: Contour | null) =>
    contour === null ? [] : [stroke(role, ...contourParts(view, contour))];
  put(
    draft,
    ...shape("concrete", concreteContour(base)),
    ...shape("base-plate", plateContour(base)),
    ...shape("fine", columnContour(base.column)),
    ...boltCircles(view, base),
    ...rodItems(view, input),
    ...axisItems(view, drawn, lettering),
  );
}

/** Centre lines of the rods that stand on a circle about the working point. */
function boltCircles(view: View, { groups }: Base): readonly SceneItem[] {
  const circles = groups.flatMap(({ pattern }) => boltCircleOf(pattern)?.diameter ?? []);
  return [...new Set(circles)].map((diameter) =>
    stroke("centre", circle(view.origin, (toMillimetres(diameter) / 2) * view.scale)),
  );
}

/** The rods as if they were holes of their own diameter. */
function rodHoles({ rods }: DetailInput): readonly Hole[] {
  return rods.map(({ tag, center, group: { rod } }) => ({
    tag,
    role: "rod",
    center,
    shape: { kind: "circle", diameter: rod.diameter },
    rod: { size: rod.size, diameter: rod.diameter },
    made: "cut",
    contour: circleContour(center, rod.diameter),
  }));
}

function rodItems(view: View, input: DetailInput): readonly SceneItem[] {
  const holes = rodHoles(input);
  const circles = holes.flatMap(({ contour }) => contourParts(view, contour));
  const reach = 1.5;
  const crosses = holes.flatMap(({ center, shape }): readonly PathPart[] => {
    const { x, y } = onPaper(view, center);
    const r = (shape.kind === "circle" ? toMillimetres(shape.diameter) / 2 : 0) * view.scale + reach;
    return [line(at(x - r, y), at(x + r, y)), line(at(x, y - r), at(x, y + r))];
  });
  return circles.length > 0 ? [stroke("hole", ...circles), stroke("fine", ...crosses)] : [];
}

type Axis = "x" | "y";

/** From the working point to every rod line, and outside that to the edges of the concrete. False: some lines are left out. */
function putChains(
  draft: Draft,
  view: View,
  input: DetailInput,
  drawn: Extent,
  axis: Axis,
  lettering: Lettering,
): boolean {
  const rods = distinct(input.rods.map(({ center }) => center[axis]));
  const edges = edgeLines(input, axis);
  const { first, next } = spacing(lettering);
  const put = (values: readonly number[], level: number) =>
    putChain(draft, view, distinct(values), drawn, axis, level, input.unit, lettering);
  const isRound = input.base.groups.every(({ pattern }) => boltCircleOf(pattern) !== null);
  if (isRound) {
    if (edges !== null) put([edges[0], 0, edges[1]], first);
    return false;
  }
  if (edges !== null) put([edges[0], 0, edges[1]], first + next * (hasGauge(rods) ? 2 : 1));
  if (hasGauge(rods)) putGauges(draft, view, input, rods, drawn, axis, first + next, lettering);
  if (rods.length <= MOST_LINES && put([0, ...rods], first)) return true;
  const ends = [rods[0] ?? 0, rods.at(-1) ?? 0];
  if (!put([0, ...ends], first)) put(ends, first);
  return false;
}

/** Where the working point stands between rods: no distance from it is one from rod to rod. */
function hasGauge(rods: readonly number[]): boolean {
  const [low = 0, high = 0] = [rods[0], rods.at(-1)];
  return low < 0 && high > 0 && !rods.includes(0);
}

/** From rod to rod, with the word where it has room; from the first to the last where not all of them have. */
function putGauges(
  draft: Draft,
  view: View,
  input: DetailInput,
  rods: readonly number[],
  drawn: Extent,
  axis: Axis,
  level: number,
  lettering: Lettering,
): void {
  const ends = [rods[0] ?? 0, rods.at(-1) ?? 0];
  const ways = rods.length <= MOST_LINES ? [rods, ends] : [ends];
  for (const values of ways)
    for (const word of values.length === 2 && hasRoomForWord(view, input, values, lettering)
      ? [`${input.gauge} `, ""]
      : [""])
      if (putChain(draft, view, values, drawn, axis, level, input.unit, lettering, word)) return;
}

function hasRoomForWord(
  view: View,
  { gauge, unit }: DetailInput,
  values: readonly number[],
  { small }: Lettering,
): boolean {
  const length = (values.at(-1) ?? 0) - (values[0] ?? 0);
  const words = `${gauge} ${detailLength(toLattice(length), unit)}`;
  return textWidth(words, small) + 2 < length * view.scale;
}

/** Concrete that is centred on the working point is not dimensioned from it: its size says all. Millimetres. */
const CENTERED = 1e-6;

function edgeLines({ base }: DetailInput, axis: Axis): readonly [number, number] | null {
  const concrete = concreteContour(base);
  if (concrete === null) return null;
  const box = extentOf(concrete);
  const [low, high] = axis === "x" ? [box.x0, box.x1] : [box.y0, box.y1];
  return Math.abs(low + high) <= CENTERED ? null : [low, high];
}

/** Nothing is drawn and false returned when a figure finds no room. */
function putChain(
  draft: Draft,
  view: View,
  values: readonly number[],
  drawn: Extent,
  axis: Axis,
  away: number,
  unit: Unit,
  lettering: Lettering,
  word = "",
): boolean {
  if (values.length < 2) return true;
  const low = onPaper(view, { x: drawn.x0, y: drawn.y0 });
  const place = (value: number, level: number): PaperPoint => {
    const on = onPaper(view, { x: value, y: value });
    return axis === "x" ? at(on.x, low.y - level) : at(low.x - level, on.y);
  };
  const runs = values.slice(1).map((value, i): Run => {
    const before = values[i] ?? value;
    const length: Length = nanometres(toLattice(value - before));
    const outside = [...(i === 0 ? (["p"] as const) : []), ...(i === values.length - 2 ? (["q"] as const) : [])];
    const ends = { p: place(before, away), q: place(value, away) };
    return {
      ...ends,
      value: length,
      prefix: "",
      words: `${word}${detailLength(length, unit)}`,
      outside,
      short: "dots",
    };
  });
  const trial = copyDraft(draft);
  put(trial, ...values.map((value) => extension(place(value, 0), place(value, away))));
  if (!putRuns(trial, runs, unit, lettering.small)) return false;
  putAll(draft, trial.items.slice(draft.items.length));
  return true;
}

function putRodTags(draft: Draft, view: View, input: DetailInput, lettering: Lettering): void {
  const holes = rodHoles(input);
  for (const reach of [2.2, 6.5, 13])
    if (putTags(draft, view, holes, { letter: lettering.small, side: "outward", reach })) return;
  const ends = holes.filter((_, i) => i === 0 || i === holes.length - 1);
  putTags(draft, view, ends, { letter: lettering.small, side: "outward", reach: 13 });
}

/** `CONCRETE 24 × 24, BASE PL 20 × 16`: what the dashed and the phantom line are. */
function shapeWords({ base, unit }: DetailInput): readonly string[] {
  const { concrete, basePlate } = base;
  const words = [
    ...(concrete.shape.kind === "missing" ? [] : [`CONCRETE ${sizeWords(concrete.shape, unit)}`]),
    ...(basePlate.shape.kind === "missing"
      ? []
      : [`BASE PL ${sizeWords(basePlate.shape, unit)}${offWords(basePlate.at, unit)}`]),
  ];
  return words.length === 0 ? [] : [words.join(", ")];
}

/** The working point by its name, at it, else with a leader. */
function putWorkingPoint(draft: Draft, view: View, { small }: Lettering): void {
  const block = { lines: ["W.P."], letter: small, boxed: false, plain: true };
  const items = blockAbout(draft, block, view.origin, 1, [0, 3, 6, 10, 15, 21, 28]);
  put(draft, group("working-point", items ?? []));
}

/** ` AT 0, 2`: the middle of a plate that is not centred on the working point. */
function offWords({ x, y }: Offset, unit: Unit): string {
  return x === 0 && y === 0 ? "" : ` AT ${formatLength(x, unit)}, ${formatLength(y, unit)}`;
}

function sizeWords(shape: Base["concrete"]["shape"], unit: Unit): string {
  if (shape.kind === "missing") return "";
  const { value } = shape;
  if (value.kind === "circle") return `Ø${formatLength(value.diameter, unit)}`;
  return `${formatLength(value.x, unit)} × ${formatLength(value.y, unit)}`;
}
