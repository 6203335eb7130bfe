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
import type { Base } from "../../job/model/job.js";
import { boltCircleOf } from "../../patterns/index.js";
import type { PlacedRod } from "../../rods/model.js";
import type { Hole } from "../../template/model.js";
import { formatLength, type Length, nanometres, toMillimetres, type Unit } from "../../units/index.js";
import { extension, lineSpacing, putRuns, type Run } from "../dimension.js";
import { at, circle, group, line, stroke, text } from "../items.js";
import { type Area, copyDraft, type Draft, hasRoom, put, putAll, startDraft, withGaps } from "../paper.js";
import { AXIS_REACH, axisItems, contourParts, onPaper, type View } from "../plan-shapes.js";
import type { PaperPoint, PathPart, SceneItem } from "../scene.js";
import type { Lettering, Scale } from "../sheet-sizes.js";
import { putTags } from "../tags.js";
import { shorten, textWidth } from "../text-metrics.js";
import { scaleWords } from "../title-block.js";
import { columnContour, concreteContour, plateContour } from "./figures.js";
import { detailLength } from "./lengths.js";
import { detailScales } from "./sizes.js";

/** What a detail is drawn from. `count`: placements of the type. */
export interface DetailInput {
  readonly base: Base;
  readonly rods: readonly PlacedRod[];
  readonly count: number;
  readonly held: boolean;
  readonly unit: Unit;
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

/** The largest scale at which a detail stands in a cell of this size; the smallest of all where none is small enough. */
export function detailScale(input: DetailInput, cell: Area, lettering: Lettering): Scale {
  const drawn = drawnExtent(input);
  const room = roomIn(cell, titleHeight(lettering), lettering);
  const fits = detailScales(input.unit).filter(
    ({ factor }) => (drawn.x1 - drawn.x0) * factor <= room.x && (drawn.y1 - drawn.y0) * factor <= room.y,
  );
  const scale = fits[0] ?? detailScales(input.unit).at(-1);
  if (scale === undefined) throw new RangeError("no scales for details");
  return scale;
}

function titleHeight({ body, small }: Lettering): number {
  return body + 2 * small + 9;
}

/** Draws a detail into its cell of the sheet. */
export function drawDetail(input: DetailInput, cell: Area, scale: Scale, lettering: Lettering): DrawnDetail {
  const drawn = drawnExtent(input);
  const titles = titleHeight(lettering);
  const view = placeView(cell, drawn, scale, titles, lettering);
  const draft = startDraft(cell);
  const foot = onPaper(view, { x: 0, y: drawn.y0 }).y - besides(lettering).below;
  putTitles(draft, input, { ...cell, y0: foot - titles }, scale, lettering);
  const plan: Draft = { ...draft, area: { ...cell, y0: foot }, items: [] };
  putShapes(plan, view, input, drawn, lettering);
  const whole = (["x", "y"] as const).map((axis) => putChains(plan, view, input, drawn, axis, lettering));
  putRodTags(plan, view, input, lettering);
  putNames(plan, view, input, lettering);
  const items = [...draft.items, group("detail-view", withGaps(plan.items, plan.gaps), { scale: scale.factor })];
  return { item: group("detail", items, { mark: input.base.mark }), listed: whole.includes(false) };
}

/** Room for a second row of figures between the dimension lines. */
function spacing(lettering: Lettering): ReturnType<typeof lineSpacing> {
  const { first, next } = lineSpacing(lettering.small);
  return { first, next: next + 3 };
}

/** Paper beside the drawn shapes: dimension lines at the left and below, axes at the right and above. */
function besides(lettering: Lettering) {
  const { first, next } = spacing(lettering);
  const lines = first + next + lettering.small + 3;
  return {
    left: lines,
    below: lines,
    right: AXIS_REACH + lettering.body * 2 + 4,
    above: AXIS_REACH + lettering.body + 3,
  };
}

function roomIn(cell: Area, titles: number, lettering: Lettering): { readonly x: number; readonly y: number } {
  const { left, below, right, above } = besides(lettering);
  return { x: cell.x1 - cell.x0 - left - right, y: cell.y1 - cell.y0 - titles - below - above };
}

function placeView(cell: Area, drawn: Extent, { factor }: Scale, titles: number, lettering: Lettering): View {
  const { left, above } = besides(lettering);
  const room = roomIn(cell, titles, lettering);
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
  const { base, count, held, unit } = input;
  const { body, small } = lettering;
  const room = cell.x1 - cell.x0 - 6;
  const x = (cell.x0 + cell.x1) / 2;
  const y = cell.y0 + 2 * small + 6.5;
  const title = `${base.mark}, QTY ${count}, TEMPLATE ${base.template.mark}${held ? ", HELD" : ""}`;
  put(
    draft,
    text(held ? "held" : "heading", shorten(title, room, body, true), at(x, y), body, { anchor: "middle", bold: true }),
    text("label", shorten(rodWords(input, unit), room, small), at(x, y - small - 1.8), small, { anchor: "middle" }),
    text("label", `SCALE ${scaleWords(scale)}`, at(x, y - 2 * small - 3.6), small, { anchor: "middle" }),
  );
}

/** `4 RODS 1-1/4, PROJ 9, EMBED 24`, a part for each group. */
function rodWords({ base, rods }: DetailInput, unit: Unit): string {
  return base.groups
    .map(({ letter, rod, pattern }) => {
      const count = rods.filter(({ group: { letter: own } }) => own === letter).length;
      const circle = boltCircleOf(pattern);
      const ring = circle === null ? "" : ` ON Ø${formatLength(circle.diameter, unit)}`;
      const figure = (word: string, input: typeof rod.projection) =>
        input.kind === "given" ? `, ${word} ${formatLength(input.value, unit)}` : "";
      return `${count} ${count === 1 ? "ROD" : "RODS"} ${rod.size}${ring}${figure("PROJ", rod.projection)}${figure("EMBED", rod.embedment)}`;
    })
    .join("; ");
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
  if (edges !== null) put([edges[0], 0, edges[1]], first + next);
  if (rods.length <= MOST_LINES && put([0, ...rods], first)) return true;
  const ends = [rods[0] ?? 0, rods.at(-1) ?? 0];
  if (!put([0, ...ends], first)) put(ends, first);
  return false;
}

function edgeLines({ base }: DetailInput, axis: Axis): readonly [number, number] | null {
  const concrete = concreteContour(base);
  if (concrete === null) return null;
  const box = extentOf(concrete);
  return axis === "x" ? [box.x0, box.x1] : [box.y0, box.y1];
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
    return { ...ends, value: length, prefix: "", words: detailLength(length, unit), outside, short: "dots" };
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

/** What the phantom lines are, along their upper edges; and the working point. */
function putNames(draft: Draft, view: View, { base, unit }: DetailInput, lettering: Lettering): void {
  const { small } = lettering;
  const names = [
    { words: `CONCRETE ${sizeWords(base.concrete.shape, unit)}`, contour: concreteContour(base) },
    { words: `BASE PL ${sizeWords(base.basePlate.shape, unit)}`, contour: plateContour(base) },
  ];
  for (const { words, contour } of names) {
    if (contour === null) continue;
    const box = extentOf(contour);
    const [a, b] = [onPaper(view, { x: box.x0, y: box.y0 }), onPaper(view, { x: box.x1, y: box.y1 })];
    putFirst(draft, words, small, [
      at(b.x - textWidth(words, small), b.y + 1),
      at(a.x, b.y + 1),
      at(a.x, a.y - small - 1),
      at(a.x + 1.2, b.y - small - 1),
      at(b.x - textWidth(words, small) - 1.2, b.y - small - 1),
      at(a.x + 1.2, a.y + 1.2),
      at(b.x - textWidth(words, small) - 1.2, a.y + 1.2),
    ]);
  }
  const { x, y } = view.origin;
  putFirst(draft, "W.P.", small, [
    at(x - 8, y - small - 1),
    at(x + 1, y - small - 1),
    at(x + 1, y + 1),
    at(x - 8, y + 1),
  ]);
}

function putFirst(draft: Draft, words: string, letter: number, places: readonly PaperPoint[]): void {
  for (const place of places) {
    const label = text("label", words, place, letter);
    if (!hasRoom(draft, label)) continue;
    put(draft, label);
    return;
  }
}

function sizeWords(shape: Base["concrete"]["shape"], unit: Unit): string {
  if (shape.kind === "missing") return "";
  const { value } = shape;
  if (value.kind === "circle") return `Ø${formatLength(value.diameter, unit)}`;
  return `${formatLength(value.x, unit)} × ${formatLength(value.y, unit)}`;
}
