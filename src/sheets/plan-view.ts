/** The plate in plan: view from the top, with its dimensions, tags and callouts. */

import type { Extent } from "../geometry/vocabulary.js";
import type { Base } from "../job/model/job.js";
import { boltCircleOf } from "../patterns/index.js";
import type { Hole, Plate } from "../template/model.js";
import { greatestOf, leastOf } from "../units/extremes.js";
import { type Length, nanometres, type Unit } from "../units/index.js";
import type { Callout } from "./callouts.js";
import { putCornerNumbers } from "./corners.js";
import { extension, lineSpacing, putAligned, putRuns, type Run } from "./dimension.js";
import { at, circle, group, stroke, text } from "./items.js";
import { putCallouts } from "./leaders.js";
import { crossesText } from "./occupied.js";
import { type Draft, hasRoom, put } from "./paper.js";
import {
  axisItems,
  CROSS_REACH,
  holeItems,
  holeRadius,
  type Neighbour,
  neighbourItem,
  onPaper,
  outlineItem,
  scribeItems,
  type View,
} from "./plan-shapes.js";
import type { PaperPoint } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";
import { putTags, type Tagging } from "./tags.js";

/** `full`: a chain through every hole line. `ends`: first and last hole line; the hole table carries the rest. */
export type ChainMode = "full" | "ends" | "overall";

/**
 * What a sheet must be to be taken. good: tags at their holes, short leaders. fair: the same with longer leaders and smaller
 * lettering. anything: what finds no room is left to the tables and the notes.
 */
export type Demand = "good" | "fair" | "anything";

/** What the view from above is drawn from. */
export interface PlanInput {
  readonly plate: Plate;
  readonly base: Base;
  readonly unit: Unit;
  readonly plateExtent: Extent;
  /** Everything that is drawn: plate, neighbours, working point. */
  readonly drawn: Extent;
  readonly neighbours: readonly Neighbour[];
  readonly lettering: Lettering;
  readonly mode: ChainMode;
  /** Tags at every hole, for a hole table; otherwise at the rods. */
  readonly tagAll: boolean;
  readonly demand: Demand;
  readonly callouts: readonly Callout[];
}

/** What found no room beside the plan and has to be said in the notes; or the part for which the attempt is given up. */
export type PlanResult =
  | { readonly kind: "drawn"; readonly unplaced: readonly string[] }
  | { readonly kind: "failed"; readonly part: PlanPart };

/** Chains, diagonal and tags depend on lettering and scale alone, callouts on the room around the plan too. */
export type PlanPart = "chains" | "diagonal" | "tags" | "callouts";

/** Draws the view from above, or says what found no room. */
export function putPlan(draft: Draft, view: View, input: PlanInput): PlanResult {
  const { plate, unit, lettering, demand } = input;
  const strict = demand !== "anything";
  putShapes(draft, view, input);
  for (const axis of ["x", "y"] as const) if (!putChains(draft, view, input, axis) && strict) return failed("chains");
  const rods = plate.holes.filter(({ role }) => role === "rod");
  if (!putDiagonal(draft, view, rods, unit, lettering) && strict) return failed("diagonal");
  putWorkingPoint(draft, view, lettering);
  if (!putAllTags(draft, view, input, input.tagAll ? plate.holes : rods) && strict) return failed("tags");
  if (!putCornerNumbers(draft, view, input.base, lettering.small) && strict) return failed("tags");
  putScribed(draft, view, plate);
  return putAllCallouts(draft, view, input);
}

/** All tags of one height: in a ring along a bolt circle of many, outward on a few holes, else all to the same side. */
function putAllTags(draft: Draft, view: View, input: PlanInput, holes: readonly Hole[]): boolean {
  const { plate, lettering, demand } = input;
  const reaches = demand === "good" ? [2.2] : [2.2, 6.5, 13];
  return reaches.some((reach) =>
    tagSides(input.base, holes).some((side) =>
      [lettering.body, lettering.small].some((letter) =>
        putTags(draft, view, holes, { letter, side, reach, among: plate.holes }),
      ),
    ),
  );
}

const FEW_TAGS = 9;

function tagSides({ groups }: Base, holes: readonly Hole[]): readonly Tagging["side"][] {
  const isRound = groups.every(({ pattern }) => boltCircleOf(pattern) !== null);
  if (isRound) return holes.length > FEW_TAGS + 3 ? ["radial"] : ["outward", "radial"];
  return holes.length <= FEW_TAGS ? ["outward"] : ["same"];
}

function putAllCallouts(draft: Draft, view: View, { callouts, lettering, demand, drawn }: PlanInput): PlanResult {
  const size = Math.max(drawn.x1 - drawn.x0, drawn.y1 - drawn.y0) * view.scale;
  const short = Math.max(LONGEST_LEADER * lettering.body, 0.5 * size);
  const worst = { good: short, fair: 2.5 * short, anything: Infinity }[demand];
  const letters = demand === "good" ? [lettering.body] : [lettering.body, lettering.small];
  const left = putCallouts(draft, view, callouts, { letters, worst });
  if (left.length > 0 && demand !== "anything") return failed("callouts");
  return { kind: "drawn", unplaced: left.map(({ lines }) => lines.flat().join(" ")) };
}

function failed(part: PlanPart): PlanResult {
  return { kind: "failed", part };
}

/** Longest leader on a good sheet, in letter heights; on a large plan, half its side. */
const LONGEST_LEADER = 22;

/** Scribed words as they stand on the plate, except where they would lie under a text of the sheet. */
function putScribed(draft: Draft, view: View, plate: Plate): void {
  const clear = scribeItems(view, plate).filter(
    ({ parts }) => !parts.some((part) => part.kind === "line" && crossesText(draft.taken, part.from, part.to)),
  );
  if (clear.length > 0) put(draft, group("scribed", clear));
}

function putShapes(draft: Draft, view: View, input: PlanInput): void {
  const { plate, base, neighbours, drawn, lettering } = input;
  const diameters = base.groups.flatMap(({ pattern }) => boltCircleOf(pattern)?.diameter ?? []);
  const circles = diameters.map((diameter) => circle(view.origin, (diameter / 2e6) * view.scale));
  put(
    draft,
    group(
      "neighbours",
      neighbours.map((neighbour) => neighbourItem(view, neighbour)),
    ),
    group("plate", [outlineItem(view, plate), ...holeItems(view, plate)]),
    group("axes", [
      ...axisItems(view, drawn, lettering),
      ...(circles.length > 0 ? [stroke("centre", ...circles)] : []),
    ]),
  );
}

function putWorkingPoint(draft: Draft, view: View, lettering: Lettering): void {
  const { x, y } = view.origin;
  for (const away of [1.2, 3, 5, 8])
    for (const [sx, sy] of [
      [-1, -1],
      [1, -1],
      [-1, 1],
      [1, 1],
    ] as const) {
      const place = at(x + sx * away, sy > 0 ? y + away : y - away - lettering.small);
      const item = text("label", "W.P.", place, lettering.small, { anchor: sx > 0 ? "start" : "end" });
      if (!hasRoom(draft, item, 0.4)) continue;
      put(draft, item);
      return;
    }
}

/** A hole line or an edge: its coordinate, and the feature from which its extension line comes. */
interface Stop {
  readonly at: Length;
  readonly feature: PaperPoint;
}

type Axis = "x" | "y";

/** Chains of one direction: x below the plan, y at its left. Lines from the plate outward: working point, chain, overall. */
function putChains(draft: Draft, view: View, input: PlanInput, axis: Axis): boolean {
  const { letter, levels, outward } = chainFrame(view, input, axis);
  const runs: Run[] = [];
  const extensions = new Map<string, { stop: Stop; level: number }>();
  levels.forEach((stops, level) => {
    for (const stop of stops) extensions.set(`${stop.at}`, { stop, level });
    stops.slice(1).forEach((to, i) => {
      const from = stops[i];
      if (from === undefined) return;
      const outside = [...(i === 0 ? (["p"] as const) : []), ...(i === stops.length - 2 ? (["q"] as const) : [])];
      runs.push({
        p: outward(from, level),
        q: outward(to, level),
        value: nanometres(to.at - from.at),
        prefix: level === levels.length - 1 && isRound(input.plate) ? "Ø" : "",
        outside,
        short: stops.length === 2 ? "arrows outside" : "dots",
      });
    });
  });
  const lines = [...extensions.values()].map(({ stop, level }) => extension(stop.feature, outward(stop, level)));
  put(draft, group("extensions", lines));
  return putRuns(draft, runs, input.unit, letter);
}

interface ChainFrame {
  readonly letter: number;
  readonly levels: readonly (readonly Stop[])[];
  readonly outward: (stop: Stop, level: number) => PaperPoint;
}

function chainFrame(view: View, input: PlanInput, axis: Axis): ChainFrame {
  const letter = input.lettering.body;
  const { first, next } = lineSpacing(letter);
  const low = onPaper(view, { x: input.drawn.x0, y: input.drawn.y0 });
  const outward = (stop: Stop, level: number) =>
    axis === "x" ? at(stop.feature.x, low.y - first - level * next) : at(low.x - first - level * next, stop.feature.y);
  return { letter, levels: chainLevels(view, input, axis), outward };
}

/** How many dimension lines stand beside the plan, in each direction. */
export function countLevels(input: PlanInput): { readonly x: number; readonly y: number } {
  const view = { origin: at(0, 0), scale: 1 };
  return { x: chainLevels(view, input, "x").length, y: chainLevels(view, input, "y").length };
}

function chainLevels(view: View, input: PlanInput, axis: Axis): readonly (readonly Stop[])[] {
  const edges = edgeStops(view, input, axis);
  const all = holeStops(view, input, axis);
  const [first, last] = [all[0], all.at(-1)];
  const overall = [edges];
  if (first === undefined || last === undefined || input.mode === "overall") return overall;
  const many = input.mode === "ends" && all.length > 2;
  const lines = many ? [first, last] : all;
  const round = isRound(input.plate);
  const chain = distinct(round ? lines : [edges[0], ...lines, edges[1]]);
  const chains = chain.length > 1 && !sameStops(chain, edges) ? [chain] : [];
  return [...workingPointLevel(view, input, axis, lines), ...chains, ...overall];
}

/** Where the pattern does not lie evenly about the working point, the working point is located in it. */
function workingPointLevel(
  view: View,
  input: PlanInput,
  axis: Axis,
  lines: readonly Stop[],
): readonly (readonly Stop[])[] {
  const [first, last] = [lines[0], lines.at(-1)];
  if (first === undefined || last === undefined) return [];
  if (first.at + last.at === 0 || lines.some((stop) => stop.at === 0)) return [];
  const low = onPaper(view, { x: input.drawn.x0, y: input.drawn.y0 });
  const feature = axis === "x" ? at(view.origin.x, low.y - 2.6) : at(low.x - 2.6, view.origin.y);
  const zero: Stop = { at: nanometres(0), feature };
  return [distinct([first, zero, ...(last.at > 0 ? [last] : [])])];
}

function distinct(stops: readonly (Stop | undefined)[]): readonly Stop[] {
  const byPlace = new Map<number, Stop>();
  for (const stop of stops) if (stop !== undefined && !byPlace.has(stop.at)) byPlace.set(stop.at, stop);
  return [...byPlace.values()].sort((a, b) => a.at - b.at);
}

function sameStops(a: readonly Stop[], b: readonly Stop[]): boolean {
  return a.length === b.length && a.every((stop, i) => stop.at === b[i]?.at);
}

/** Rod lines of one direction, each from its outermost hole: lowest for x, leftmost for y. */
function holeStops(view: View, { plate, base }: PlanInput, axis: Axis): readonly Stop[] {
  const across = axis === "x" ? "y" : "x";
  const byLine = new Map<number, Hole>();
  for (const hole of plate.holes.filter(({ role }) => role === "rod")) {
    const key = Math.round(hole.center[axis] * 1e6);
    const known = byLine.get(key);
    if (known === undefined || hole.center[across] < known.center[across]) byLine.set(key, hole);
  }
  const round = base.groups.every(({ pattern }) => boltCircleOf(pattern) !== null);
  if (round && byLine.size > 4) return [];
  return [...byLine]
    .sort(([a], [b]) => a - b)
    .map(([key, hole]) => {
      const center = onPaper(view, hole.center);
      const reach = holeRadius(view, hole) + CROSS_REACH - 1;
      return {
        at: nanometres(key),
        feature: axis === "x" ? at(center.x, center.y - reach) : at(center.x - reach, center.y),
      };
    });
}

/** Left and right (or lower and upper) edge of the outline, from the point of it that is nearest to the dimension line. */
function edgeStops(view: View, { plate, plateExtent: e }: PlanInput, axis: Axis): readonly [Stop, Stop] {
  const stop = (value: number): Stop => {
    const along = touching(plate, axis, value);
    const feature = onPaper(view, axis === "x" ? { x: value, y: along } : { x: along, y: value });
    return { at: nanometres(value * 1e6), feature };
  };
  return axis === "x" ? [stop(e.x0), stop(e.x1)] : [stop(e.y0), stop(e.y1)];
}

/** Where the outline touches the line `axis = value`: the lowest such coordinate across it. */
function touching(plate: Plate, axis: Axis, value: number): number {
  const across = axis === "x" ? "y" : "x";
  const { outer } = plate.region;
  if (outer.kind === "circle") return outer.center[across];
  const near = outer.segments.map(({ from }) => from).filter((point) => Math.abs(point[axis] - value) < 1e-3);
  const points = near.length > 0 ? near : outer.segments.map(({ from }) => from);
  return leastOf(points.map((point) => point[across]));
}

/** The longest slanting rod-to-rod distance, drawn between the two centres; it also stands in the tape table. */
function putDiagonal(draft: Draft, view: View, rods: readonly Hole[], unit: Unit, lettering: Lettering): boolean {
  const pairs = longestPairs(rods).filter(([a, b]) => a.center.x !== b.center.x && a.center.y !== b.center.y);
  return (
    pairs.length === 0 ||
    pairs.some(([a, b]) => {
      const value = nanometres(Math.hypot(a.center.x - b.center.x, a.center.y - b.center.y) * 1e6);
      const ends = { p: onPaper(view, a.center), q: onPaper(view, b.center) };
      return putAligned(draft, { ...ends, value, prefix: "", outside: [], short: "dots" }, unit, [
        lettering.body,
        lettering.small,
      ]);
    })
  );
}

/** Pairs of rods that lie farthest apart, in the order of their tags. */
export function longestPairs(rods: readonly Hole[]): readonly (readonly [Hole, Hole])[] {
  const pairs = rods.flatMap((a, i) => rods.slice(i + 1).map((b) => [a, b] as const));
  const square = ([a, b]: readonly [Hole, Hole]) => (a.center.x - b.center.x) ** 2 + (a.center.y - b.center.y) ** 2;
  const longest = greatestOf(pairs.map(square), 0);
  return pairs.filter((pair) => square(pair) >= longest * (1 - 1e-9));
}

/** True for a round plate, with or without a notch in its rim as its key. */
function isRound({ keyed, region }: Plate): boolean {
  return (keyed?.bare ?? region.outer).kind === "circle";
}
