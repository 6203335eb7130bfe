/**
 * A rod from its side with its dimensions, as a figure of a given width: to scale, or broken with break lines. A dimension
 * whose end points lie apart otherwise than at the scale says so in its data (`broken`).
 */
import type { RodDetail } from "../../rods/detail/model.js";
import { formatLength, type Length, type Unit } from "../../units/index.js";
import { extension, lineSpacing, putRuns, type Run } from "../dimension.js";
import { at, group, line, strokeOf, text } from "../items.js";
import { type Draft, hasRoom, put, startDraft } from "../paper.js";
import type { SceneItem } from "../scene.js";
import type { Lettering } from "../sheet-sizes.js";
import type { Piece } from "../table.js";
import { textWidth } from "../text-metrics.js";
import { scaleWords } from "../title-block.js";
import { halfAt, type PlacedRod, rodLines, spotOf } from "./draw-rod.js";
import { fitRod } from "./fit-rod.js";
import { calloutsOf, heightUnder, itemsUnder, rightOfUnder, type UnderRod } from "./rod-callouts.js";
import { type Measured, onPaper, type RodShape, shapeOf } from "./shape.js";

/** How a figure is set. */
export interface FigureOptions {
  readonly unit: Unit;
  readonly width: number;
  readonly lettering: Lettering;
  /** Words with leaders; left out of a small picture. */
  readonly callouts: boolean;
}

/** Paper at the ends for figures that stand outside; at a hook, for its reach. */
const [LEFT, LEFT_OF_HOOK, RIGHT] = [11, 20, 13];
/** Paper across the axis that plates and hooks may take, mm; in a small picture less. */
const ACROSS = { half: 14, hook: 26 } as const;
const SMALL_ACROSS = { half: 9, hook: 18 } as const;
/** Line of the top of concrete beyond the rod. */
const OVER = 3;

/** A figure, and whether its words stay in its width. */
export interface RodFigure extends Piece {
  readonly isWithin: boolean;
}

/** The figure of a rod. */
export function rodFigure(detail: RodDetail, options: FigureOptions): RodFigure {
  const { width, unit, lettering } = options;
  const shape = shapeOf(detail);
  const left = shape.hook === null ? LEFT : LEFT_OF_HOOK;
  const across = options.callouts ? ACROSS : SMALL_ACROSS;
  const fit = fitRod(shape, { along: width - left - RIGHT, ...across }, unit);
  const spare = (width - left - RIGHT - fit.length) / 2;
  const rodAt = (x: number, y: number): PlacedRod => ({ shape, fit, x: x + left + spare, y });
  const caption = wordsOfScale(shape, scaleWords(fit.scale), fit.breaks.length > 0);
  const underAt = (rod: PlacedRod, x: number): UnderRod => ({
    callouts: options.callouts ? calloutsOf(detail, rod, unit, concreteBox(rod, lettering.small), lettering.small) : [],
    taken: concreteBox(rod, lettering.small),
    caption: { x: Math.max(x, rightOfHook(rod)), words: caption },
    letter: lettering.small,
  });
  const under = underAt(rodAt(0, 0), 0);
  const sizes = heights(rodAt(0, 0), under);
  const height = sizes.above + sizes.below;
  const draw = (x: number, top: number) => {
    const rod = rodAt(x, top - sizes.above);
    const draft = startDraft({ x0: x, y0: top - height, x1: x + width, y1: top });
    put(draft, ...rodLines(rod, detail.tackWelds.length > 0), ...concreteItems(rod, lettering.small));
    putMeasures(draft, rod, options);
    put(draft, ...itemsUnder(underAt(rod, x), rod.y - sizes.callouts));
    return group("rod-view", draft.items, { scale: fit.scale.factor, broken: fit.breaks.length });
  };
  return { height, draw, isWithin: rightOfUnder(under) <= width };
}

function wordsOfScale({ isKnown }: RodShape, scale: string, isBroken: boolean): string {
  if (!isKnown) return "NOT TO SCALE";
  return isBroken ? `BROKEN; PARTS ${scale}` : `SCALE ${scale}`;
}

/** mm from the axis: up to the head, down to the foot, down to the callouts. */
function heights(rod: PlacedRod, under: UnderRod) {
  const { letter } = under;
  const half = widest(rod);
  const rows = measureRows(rod.shape).length;
  const above = half + firstLine(letter) + (rows - 1) * nextLine(letter) + letter + 2.2;
  const callouts = half + OVER;
  const hook = rod.shape.hook === null ? 0 : onPaper(rod.shape.hook.reach, rod.fit.scale.factor) + 3;
  return { above, callouts, below: Math.max(callouts + heightUnder(under) + 1, hook) };
}

function firstLine(letter: number): number {
  return lineSpacing(letter).first;
}

/** Room for the figure over each line, and its name under it. */
function nextLine(letter: number): number {
  return Math.max(lineSpacing(letter).next, 2 * letter + 3.3);
}

function widest({ shape, fit }: PlacedRod): number {
  return onPaper(
    shape.parts.reduce((most, part) => Math.max(most, part.half), shape.radius),
    fit.scale.factor,
  );
}

/** The rows of dimensions over the rod, from it outward. */
function measureRows({ threadLengths, depths, overall }: RodShape): readonly (readonly Measured[])[] {
  return [threadLengths, depths, [overall]].filter((row) => row.length > 0);
}

function putMeasures(draft: Draft, rod: PlacedRod, options: FigureOptions): void {
  const { small } = options.lettering;
  const rows = measureRows(rod.shape).map((row, i) => ({
    row,
    y: rod.y + widest(rod) + firstLine(small) + i * nextLine(small),
  }));
  const levels = new Map<number, number>();
  for (const { row, y } of rows)
    for (const { span } of row) for (const station of span) levels.set(station, Math.max(y, levels.get(station) ?? y));
  for (const [station, y] of levels) {
    const foot = spotOf(rod, station, halfAt(rod, station));
    put(draft, extension(foot, at(foot.x, y)));
  }
  for (const { row, y } of rows) for (const each of row) putMeasure(draft, rod, each, y, options);
  putReach(draft, rod, options);
}

function putMeasure(draft: Draft, rod: PlacedRod, measured: Measured, y: number, options: FigureOptions): void {
  const { small } = options.lettering;
  const [p, q] = [at(spotOf(rod, measured.span[0]).x, y), at(spotOf(rod, measured.span[1]).x, y)];
  const isTrue = rod.fit.isWhole(measured.span) && measured.value === measured.span[1] - measured.span[0];
  putRun(draft, { p, q, value: measured.value, isTrue }, options);
  const names = [measured.name, measured.short].map((words) =>
    text("label", words, at((p.x + q.x) / 2, y - small - 1), small, { anchor: "middle" }),
  );
  const name = names.find((each) => textWidth(each.text, small) <= q.x - p.x - 2 && hasRoom(draft, each, 0.3));
  if (name !== undefined) put(draft, name);
}

interface DrawnRun extends Pick<Run, "p" | "q"> {
  readonly value: Length | null;
  readonly isTrue: boolean;
}

function putRun(draft: Draft, { p, q, value, isTrue }: DrawnRun, { unit, lettering: { small } }: FigureOptions): void {
  const words = value === null ? "NOT GIVEN" : formatLength(value, unit);
  const run: Run = {
    p,
    q,
    value: (value ?? 0) as Length,
    prefix: "",
    words,
    outside: ["p", "q"],
    short: "arrows outside",
  };
  if (!putRuns(draft, [run], unit, small)) return;
  const drawn = draft.items.pop();
  if (drawn?.kind !== "group") throw new TypeError("a dimension is a group");
  if (value === null) draft.items.push({ ...drawn, name: "dimension-not-given", data: {} });
  else draft.items.push(isTrue ? drawn : { ...drawn, data: { ...drawn.data, broken: 1 } });
}

/** Reach of a hook, from the axis to the end of its leg, at its left. */
function putReach(draft: Draft, rod: PlacedRod, options: FigureOptions): void {
  const { shape, fit, x, y } = rod;
  if (shape.hook === null) return;
  const foot = y - onPaper(shape.hook.reach, fit.scale.factor);
  const left = x - 9;
  put(draft, extension(at(x, y), at(left, y)), extension(at(x, foot), at(left, foot)));
  const value = shape.hook.reach as Length;
  putRun(draft, { p: at(left, foot), q: at(left, y), value, isTrue: true }, options);
}

/** Where the label of the top of concrete stands, from left to right; leaders keep out of it. */
function concreteBox(rod: PlacedRod, letter: number): readonly [number, number] {
  const { concrete } = rod.shape;
  if (concrete === null) return [0, 0];
  const { x } = spotOf(rod, concrete);
  const width = textWidth(CONCRETE, letter, true) + 2.5;
  return x - width > rightOfHook(rod) ? [x - width, x + 1.5] : [x - 1.5, x + width];
}

/** Where paper under the rod is free of the leg of its hook. */
function rightOfHook({ shape, fit, x }: PlacedRod): number {
  return shape.hook === null ? Number.NEGATIVE_INFINITY : x + onPaper(2 * shape.shank, fit.scale.factor) + 1;
}

const CONCRETE = "T.O.C.";

/** Line of the top of concrete, hatched on the side of the concrete, and its name under it. */
function concreteItems(rod: PlacedRod, letter: number): readonly SceneItem[] {
  const { concrete } = rod.shape;
  if (concrete === null) return [];
  const reach = widest(rod) + OVER;
  const { x, y } = spotOf(rod, concrete);
  const inner = onPaper(rod.shape.radius, rod.fit.scale.factor);
  const isLeft = concreteBox(rod, letter)[0] < x - 2;
  const foot = y - reach - letter * 1.375;
  const hatches = [1, -1].flatMap((side) =>
    Array.from({ length: Math.floor((reach - inner - 0.5) / 1.4) }, (_, i) => {
      const off = y + side * (inner + 1.2 + 1.4 * i);
      return line(at(x, off), at(x - 1.4, off - 1.2));
    }),
  );
  return [
    group("top-of-concrete", [
      strokeOf("outline", [line(at(x, y + reach), at(x, y + inner)), line(at(x, y - inner), at(x, y - reach))]),
      strokeOf("fine", hatches),
      text("label", CONCRETE, at(isLeft ? x - 1 : x + 1, foot), letter, {
        anchor: isLeft ? "end" : "start",
        bold: true,
      }),
    ]),
  ];
}
