/**
 * Dimension chains round the plan. Each direction has a near side (x below the plan, y at its left) and a far one (above, at the
 * right). A rod line is carried to the far side where its extension line would pass a hole that is not its own on the near one.
 */
import { extentOf } from "../geometry/index.js";
import type { Extent } from "../geometry/vocabulary.js";
import type { Hole, Plate } from "../template/model.js";
import { greatestOf, leastOf } from "../units/extremes.js";
import { type Length, nanometres, type Unit } from "../units/index.js";
import { extension, lineSpacing, putRuns, type Run } from "./dimension.js";
import { brokenAt } from "./hole-gaps.js";
import { at, group } from "./items.js";
import { type Axis, type ChainMode, chainLines, type HoleLine, type Located, lineOf } from "./located.js";
import { type Draft, put } from "./paper.js";
import { AXIS_REACH, axisLabelReach, CROSS_REACH, holeRadius, holeSpan, onPaper, type View } from "./plan-shapes.js";
import { isPart } from "./request.js";
import type { PaperPoint } from "./scene.js";
import type { Lettering } from "./sheet-sizes.js";
import { dimensionWords, referenceWords } from "./taped.js";

/** What chains are drawn from. */
export interface ChainInput extends Pick<Located, "base" | "piece"> {
  readonly plate: Plate;
  readonly unit: Unit;
  readonly plateExtent: Extent;
  /** Everything that is drawn: chains stand outside it. */
  readonly drawn: Extent;
  readonly lettering: Lettering;
  readonly mode: ChainMode;
  /** A hole table says what stands in no chain. */
  readonly tagAll: boolean;
}

type Side = "near" | "far";

/** A hole line, an edge or the working point: its coordinate, and the feature from which its extension line comes. */
interface Stop {
  readonly at: Length;
  readonly feature: PaperPoint;
}

/** One dimension line. `overall` is the plate's own size, `closed` one that runs from edge to edge beside it. */
interface Level {
  readonly kind: "open" | "closed" | "overall";
  readonly stops: readonly Stop[];
}

/** Dimension lines of one direction from the plate outward, by side; `whole` false where a line asked for is in none. */
interface AxisChains {
  readonly near: readonly Level[];
  readonly far: readonly Level[];
  readonly whole: boolean;
}

/** Paper that the dimension lines take beside what is drawn, the axes' arrows and names counted in. */
export interface Margins {
  readonly left: number;
  readonly right: number;
  readonly below: number;
  readonly above: number;
}

/** Room for the chains as `putChains` draws them at this scale. */
export function chainMargins(input: ChainInput, scale: number): Margins {
  const view = { origin: at(0, 0), scale };
  const [x, y] = [planAxis(view, input, "x"), planAxis(view, input, "y")];
  const letter = input.lettering.body;
  const { next } = lineSpacing(letter);
  const depth = (axis: Axis, side: Side, levels: readonly Level[]) =>
    levels.length === 0 ? 0 : firstLine(axis, side, letter) + (levels.length - 1) * next + letter;
  return {
    left: Math.max(depth("y", "near", y.near), firstLine("y", "near", letter) + letter) + 3,
    right: Math.max(depth("y", "far", y.far), axisLabelReach("x", letter)) + 3,
    below: Math.max(depth("x", "near", x.near), AXIS_REACH) + 2,
    above: Math.max(depth("x", "far", x.far), axisLabelReach("y", letter)) + 2,
  };
}

/** From what is drawn to the first dimension line; on the far side past the axis' name. */
function firstLine(axis: Axis, side: Side, letter: number): number {
  const { first } = lineSpacing(letter);
  return side === "near" ? first : Math.max(first, axisLabelReach(axis === "x" ? "y" : "x", letter) + 1.5);
}

/**
 * Draws the chains of both directions. False when a figure finds no room, or a line that the mode asks for is left out: of two
 * ends alone, where no hole table says it.
 */
export function putChains(draft: Draft, view: View, input: ChainInput): boolean {
  const planned = (["x", "y"] as const).map((axis) => ({ axis, ...planAxis(view, input, axis) }));
  if ((input.mode === "full" || !input.tagAll) && planned.some(({ whole }) => !whole)) return false;
  return planned.every(({ axis, near, far }) =>
    (["near", "far"] as const).every((side) => putSide(draft, view, input, axis, side, side === "near" ? near : far)),
  );
}

function putSide(
  draft: Draft,
  view: View,
  input: ChainInput,
  axis: Axis,
  side: Side,
  levels: readonly Level[],
): boolean {
  const letter = input.lettering.body;
  const outward = outwardOf(view, input, axis, side);
  const runs = levels.flatMap((level, i) => runsOf(level, i, input, outward));
  const longest = new Map<number, { stop: Stop; level: number }>();
  levels.forEach(({ stops }, level) => {
    for (const stop of stops) longest.set(stop.at, { stop, level });
  });
  const lines = [...longest.values()].map(({ stop, level }) => {
    const foreign = input.plate.holes.filter((hole) => lineOf(hole, axis) !== stop.at);
    return extension(stop.feature, outward(stop, level), (from, to) => brokenAt(view, foreign, from, to, CLEAR));
  });
  put(draft, group("extensions", lines));
  return putRuns(draft, runs, input.unit, letter);
}

/** An extension line keeps this far from the edge of a hole that is not its own. */
const CLEAR = 2.05;

type Outward = (stop: Stop, level: number) => PaperPoint;

function outwardOf(view: View, { drawn, lettering }: ChainInput, axis: Axis, side: Side): Outward {
  const letter = lettering.body;
  const [low, high] = [onPaper(view, { x: drawn.x0, y: drawn.y0 }), onPaper(view, { x: drawn.x1, y: drawn.y1 })];
  const away = (level: number) => firstLine(axis, side, letter) + level * lineSpacing(letter).next;
  const line = (level: number) =>
    side === "near" ? (axis === "x" ? low.y : low.x) - away(level) : (axis === "x" ? high.y : high.x) + away(level);
  return ({ feature }, level) => (axis === "x" ? at(feature.x, line(level)) : at(line(level), feature.y));
}

/** The runs of a dimension line. Of one that the overall size closes, the last figure is for reference. */
function runsOf({ kind, stops }: Level, level: number, input: ChainInput, outward: Outward): readonly Run[] {
  const { unit } = input;
  return stops.slice(1).map((to, i): Run => {
    const from = stops[i] ?? to;
    const [first, last] = [i === 0, i === stops.length - 2];
    const value = nanometres(to.at - from.at);
    const reference = last && kind === "closed";
    const prefix = kind === "overall" && isRound(input.plate) ? "Ø" : "";
    return {
      p: outward(from, level),
      q: outward(to, level),
      value,
      prefix: "",
      words: reference ? referenceWords(value, unit) : `${prefix}${dimensionWords(value, unit)}`,
      outside: [...(first ? (["p"] as const) : []), ...(last ? (["q"] as const) : [])],
      short: stops.length === 2 ? "arrows outside" : "dots",
    };
  });
}

/** From the plate outward: working point, rod lines, edges from the working point, overall size. */
function planAxis(view: View, input: ChainInput, axis: Axis): AxisChains {
  const wanted = chainLines({ ...input, job: { unit: input.unit } }, input.mode, axis);
  const sides = sidesOf(view, input, wanted, axis);
  const linesOn = (side: Side) => wanted.filter((_, i) => sides[i] === side);
  const [near, far] = [linesOn("near"), linesOn("far")];
  const point =
    isEven(wanted) || isRound(input.plate) || isPart(input.piece) ? [] : pointLevel(view, input, axis, near);
  return {
    near: [
      ...point,
      ...chainOf(view, input, axis, "near", near),
      ...edgeLevel(view, input, axis, near.length + far.length > 0),
      ...overallLevel(view, input, axis),
    ],
    far: chainOf(view, input, axis, "far", far),
    whole: near.length + far.length === wanted.length,
  };
}

/** Of two ends alone, which the hole table repeats, both stand on one side or neither does. */
function sidesOf(view: View, input: ChainInput, lines: readonly HoleLine[], axis: Axis): readonly (Side | null)[] {
  const sides = lines.map((line) => sideOf(view, input, line, axis));
  return input.mode === "full" || new Set(sides).size === 1 ? sides : lines.map(() => null);
}

/** Where the line's extension passes no hole of another line, nor the name of the axis; else the near side, broken off at those, if they stand well apart. */
function sideOf(view: View, input: ChainInput, line: HoleLine, axis: Axis): Side | null {
  const passed = (side: Side) => passedBy(view, input, line, axis, side);
  const near = passed("near");
  if (near.length === 0) return "near";
  const far = passed("far");
  const isNamed = Math.abs(line.at) * 1e-6 * view.scale < input.lettering.body / 2 + NAME_CLEAR;
  if (far.length === 0 && !isNamed) return "far";
  const apart = (hole: Hole) => {
    const aside = Math.abs(lineOf(hole, axis) - line.at) * 1e-6 * view.scale;
    return hole.role === "opening" || aside >= Math.max(LEAST_APART, holeRadius(view, hole) + 0.5);
  };
  return near.every(apart) ? "near" : far.every(apart) && !isNamed ? "far" : null;
}

/** A line on the far side keeps this far from the name of the axis, which stands there. */
const NAME_CLEAR = 1.5;

/** Lines nearer than this are not told apart where one is broken off at the hole of the other; nor is one that runs into it. */
const LEAST_APART = 3.5;

function passedBy(view: View, { plate }: ChainInput, line: HoleLine, axis: Axis, side: Side): readonly Hole[] {
  const across = axis === "x" ? "y" : "x";
  const own = side === "near" ? line.low : line.high;
  const sign = side === "near" ? -1 : 1;
  return plate.holes.filter((hole) => {
    if (lineOf(hole, axis) === line.at) return false;
    const span = holeSpan(hole);
    const aside = Math.abs(hole.center[axis] - own.center[axis]) - span[axis];
    const beyond = (hole.center[across] - own.center[across]) * sign + span[across];
    return aside * view.scale < CLEAR && beyond * view.scale > -CLEAR;
  });
}

function chainOf(view: View, input: ChainInput, axis: Axis, side: Side, lines: readonly HoleLine[]): readonly Level[] {
  if (lines.length === 0) return [];
  const edges = edgeStops(view, input, axis, side);
  const holes = lines.map((line) => holeStop(view, line, axis, side));
  if (isRound(input.plate)) {
    const point = isEven(lines) ? undefined : pointStop(view, input, axis, side);
    const open = distinct([point, ...holes]);
    return open.length > 1 ? [{ kind: "open", stops: open }] : [];
  }
  return [edgeToEdge(edges, distinct([edges[0], ...holes, edges[1]]))];
}

/** Closed where it runs from edge to edge: beyond a rod that stands outside the plate no figure follows from the overall size. */
function edgeToEdge([low, high]: readonly [Stop, Stop], stops: readonly Stop[]): Level {
  return { kind: stops[0]?.at === low.at && stops.at(-1)?.at === high.at ? "closed" : "open", stops };
}

/** True where the working point is seen to lie in the middle of the lines, or on one of them. */
function isEven(lines: readonly HoleLine[]): boolean {
  const places = new Set(lines.map((line) => line.at));
  return places.has(0) || lines.every((line) => places.has(-line.at));
}

/** The working point between its neighbours, or from the nearest; in a round plate it stands in the chain itself. */
function pointLevel(view: View, input: ChainInput, axis: Axis, lines: readonly HoleLine[]): readonly Level[] {
  const before = lines.filter((line) => line.at < 0).at(-1);
  const after = lines.find((line) => line.at > 0);
  const stopOf = (line: HoleLine | undefined) => (line === undefined ? undefined : holeStop(view, line, axis, "near"));
  const stops = distinct([stopOf(before), pointStop(view, input, axis, "near"), stopOf(after)]);
  return stops.length > 1 ? [{ kind: "open", stops }] : [];
}

/** Where the plate does not lie evenly about the working point, or no rod line shows that it does, its edges are located from it. */
function edgeLevel(view: View, input: ChainInput, axis: Axis, hasChain: boolean): readonly Level[] {
  if (isPart(input.piece)) return [];
  const [low, high] = edgeStops(view, input, axis, "near");
  if (Math.abs(low.at + high.at) <= 1 && (hasChain || isRound(input.plate) || input.mode === "overall")) return [];
  const point = pointStop(view, input, axis, "near");
  const stops = low.at > 0 ? [point, low] : high.at < 0 ? [high, point] : distinct([low, point, high]);
  return [edgeToEdge([low, high], stops)];
}

/** The size of a round plate is said once. */
function overallLevel(view: View, input: ChainInput, axis: Axis): readonly Level[] {
  if (axis === "y" && isRound(input.plate)) return [];
  return [{ kind: "overall", stops: edgeStops(view, input, axis, "near") }];
}

/** From the end of the axis; on the far side from its name. */
function pointStop(view: View, { drawn, lettering }: ChainInput, axis: Axis, side: Side): Stop {
  const [low, high] = [onPaper(view, { x: drawn.x0, y: drawn.y0 }), onPaper(view, { x: drawn.x1, y: drawn.y1 })];
  const name = axisLabelReach(axis === "x" ? "y" : "x", lettering.body) - 1;
  const along =
    side === "near" ? (axis === "x" ? low.y : low.x) - AXIS_TAIL_END : (axis === "x" ? high.y : high.x) + name;
  return { at: nanometres(0), feature: axis === "x" ? at(view.origin.x, along) : at(along, view.origin.y) };
}

/** Where the extension line of the working point takes over from its axis. */
const AXIS_TAIL_END = 2.6;

function distinct(stops: readonly (Stop | undefined)[]): readonly Stop[] {
  const byPlace = new Map<number, Stop>();
  for (const stop of stops) if (stop !== undefined && !byPlace.has(stop.at)) byPlace.set(stop.at, stop);
  return [...byPlace.values()].sort((a, b) => a.at - b.at);
}

function holeStop(view: View, line: HoleLine, axis: Axis, side: Side): Stop {
  const hole = side === "near" ? line.low : line.high;
  const center = onPaper(view, hole.center);
  const reach = (holeRadius(view, hole) + CROSS_REACH - 1) * (side === "near" ? -1 : 1);
  const feature = axis === "x" ? at(center.x, center.y + reach) : at(center.x + reach, center.y);
  return { at: nanometres(line.at), feature };
}

/** Lower and upper edge of the outline, each from the point of it that is nearest to the dimension line. */
function edgeStops(view: View, input: ChainInput, axis: Axis, side: Side): readonly [Stop, Stop] {
  const { plate } = input;
  const e = plateSides(input);
  const stop = (value: number): Stop => {
    const along = touching(plate, axis, value, side);
    const feature = onPaper(view, axis === "x" ? { x: value, y: along } : { x: along, y: value });
    return { at: nanometres(Math.round(value * 1e6)), feature };
  };
  return axis === "x" ? [stop(e.x0), stop(e.x1)] : [stop(e.y0), stop(e.y1)];
}

/** Where the outline touches the line `axis = value`: the lowest such coordinate across it, or the highest. */
function touching(plate: Plate, axis: Axis, value: number, side: Side): number {
  const across = axis === "x" ? "y" : "x";
  const outer = plate.keyed?.bare.kind === "circle" ? plate.keyed.bare : plate.region.outer;
  if (outer.kind === "circle") return outer.center[across];
  const near = outer.segments.map(({ from }) => from).filter((point) => Math.abs(point[axis] - value) < 1e-3);
  const points = near.length > 0 ? near : outer.segments.map(({ from }) => from);
  return (side === "near" ? leastOf : greatestOf)(points.map((point) => point[across]));
}

/** A round plate's own diameter: a notch in its rim leaves arcs that are rounded. */
function plateSides({ plate, plateExtent }: ChainInput): Extent {
  const outer = plate.keyed?.bare ?? plate.region.outer;
  return outer.kind === "circle" ? extentOf(outer) : plateExtent;
}

/** True for a round plate, with or without a notch in its rim. */
function isRound({ keyed, region }: Plate): boolean {
  return (keyed?.bare ?? region.outer).kind === "circle";
}
