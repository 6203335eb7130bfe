/** Where skewed lines are: distances along a line of the building's own axes, from one of the lines that cross it. */
import { type Point, toLattice } from "../../geometry/index.js";
import { toMillimetres } from "../../units/index.js";
import { extension } from "../dimension.js";
import type { Draft } from "../paper.js";
import type { PaperPoint } from "../scene.js";
import type { LineSpan } from "./grid.js";
import { type Locating, putBroken, putLocatingChain } from "./locating.js";
import { chainLevels } from "./margins.js";
import { type PlanPage, paperOf } from "./page.js";
import { outsideBases } from "./symbols.js";

type Axis = "x" | "y";
type Straight = Extract<LineSpan, { kind: "straight" }>;

/** A place on a measuring line where another line crosses it; `value`: millimetres along it. */
interface Crossing {
  readonly name: string;
  readonly value: number;
  readonly isReference: boolean;
}

/** A line along which others are measured, and where they cross it in the window. */
interface Measuring {
  readonly line: Straight;
  /** Axis along which is measured: x for a line that runs plan east. */
  readonly along: Axis;
  readonly at: number;
  readonly crossings: readonly Crossing[];
}

/** All skewed lines of the sheet. False: one is located by nothing drawn. */
export function putSkewedLocations(draft: Draft, page: PlanPage, visible: readonly LineSpan[]): boolean {
  let left = visible.filter((span): span is Straight => span.kind === "straight" && span.line.kind === "skewed");
  let isWhole = true;
  while (left.length > 0) {
    const best = bestMeasuring(page, visible, left);
    if (best === null) return false;
    isWhole = putMeasured(draft, page, best) && isWhole;
    const done = new Set(best.crossings.map(({ name }) => name));
    left = left.filter(({ line }) => !done.has(line.name));
  }
  return isWhole;
}

/** The line that crosses the most of them, among the more level ones the lowest; those of steep lines run plan east. */
function bestMeasuring(page: PlanPage, visible: readonly LineSpan[], left: readonly Straight[]): Measuring | null {
  const all = visible.flatMap((span) => measuringOf(page, span, left));
  const suits = ({ along, crossings }: Measuring) => crossings.length + (isSteepFor(left, along) ? 0.5 : 0);
  return all.toSorted((a, b) => suits(b) - suits(a) || a.at - b.at)[0] ?? null;
}

function isSteepFor(left: readonly Straight[], along: Axis): boolean {
  const [first] = left;
  if (first === undefined) return false;
  const isSteep = Math.abs(first.to.y - first.from.y) >= Math.abs(first.to.x - first.from.x);
  return isSteep === (along === "x");
}

function measuringOf(page: PlanPage, span: LineSpan, left: readonly Straight[]): readonly Measuring[] {
  if (span.kind !== "straight" || (span.line.kind !== "x" && span.line.kind !== "y")) return [];
  const along = span.line.kind === "y" ? "x" : "y";
  const across = span.line.kind;
  const place = toMillimetres(span.line.at);
  const crossings = left.flatMap((line): readonly Crossing[] => {
    const value = crossingAt(line, across, place);
    if (value === null || !isShownAt(page, line, across, place, value)) return [];
    return [{ name: line.line.name, value, isReference: false }];
  });
  return crossings.length === 0 ? [] : [{ line: span, along, at: place, crossings }];
}

/** Where a slanting line meets the line at this place of the axis, along the other axis; null: hardly ever. */
function crossingAt({ from, to }: Straight, across: Axis, place: number): number | null {
  const along = across === "x" ? "y" : "x";
  const step = to[across] - from[across];
  if (Math.abs(step) < 1e-3) return null;
  return from[along] + ((place - from[across]) / step) * (to[along] - from[along]);
}

/** In the window, and on the slanting line as drawn. */
function isShownAt(
  { tile: { window } }: PlanPage,
  line: Straight,
  across: Axis,
  place: number,
  value: number,
): boolean {
  const point = across === "y" ? { x: value, y: place } : { x: place, y: value };
  const isIn = point.x >= window.x0 && point.x <= window.x1 && point.y >= window.y0 && point.y <= window.y1;
  const [low, high] = [line.from[across], line.to[across]].toSorted((a, b) => a - b);
  return isIn && place >= (low ?? 0) - 1e-6 && place <= (high ?? 0) + 1e-6;
}

/** The nearest line of the axis, else the nearest skewed one; it may stand on another sheet. */
function referenceOf(page: PlanPage, { along, at: place, crossings }: Measuring): Crossing | null {
  const values = crossings.map(({ value }) => value);
  const own = new Set(crossings.map(({ name }) => name));
  const all = page.arrangement.spans.flatMap((span): readonly (Crossing & { readonly rank: number })[] => {
    const { line } = span;
    const isAxis = line.kind === along;
    const isOther = span.kind === "straight" && line.kind === "skewed" && !own.has(line.name);
    const value = isAxis ? toMillimetres(line.at) : isOther ? crossingAt(span, along === "x" ? "y" : "x", place) : null;
    if (value === null) return [];
    const away = values.reduce((least, each) => Math.min(least, Math.abs(each - value)), Number.POSITIVE_INFINITY);
    return [{ name: line.name, value, isReference: true, rank: away + (isAxis ? 0 : BEHIND) }];
  });
  return all.toSorted((a, b) => a.rank - b.rank)[0] ?? null;
}

/** Skewed lines come after those of the axis, millimetres. */
const BEHIND = 1e9;

function putMeasured(draft: Draft, page: PlanPage, measuring: Measuring): boolean {
  const { along, crossings } = measuring;
  const reference = referenceOf(page, measuring);
  const isHere = reference !== null && isInWindow(page, along, reference.value);
  const stops = [...crossings, ...(isHere ? [reference] : [])].toSorted((a, b) => a.value - b.value);
  const distinct = stops.filter((stop, i) => i === 0 || stop.value - (stops[i - 1]?.value ?? 0) > 1e-6);
  const breaks = outsideBases(page);
  return levelsOf(page, measuring).some((level) => {
    const place = placing(page, measuring, level);
    const runs = distinct.slice(1).map((stop, i) => runBetween(measuring, distinct[i] ?? stop, stop, place));
    const lines = distinct.map(({ value }) => extension(place(value).on, place(value).off, breaks));
    const written = runs.length === 0 || putLocatingChain(draft, page, runs, lines);
    const first = distinct[0];
    if (isHere || reference === null || first === undefined) return written;
    return putFromReference(draft, page, measuring, reference, distinct, place) && written;
  });
}

function isInWindow({ tile: { window } }: PlanPage, along: Axis, value: number): boolean {
  return along === "x" ? value >= window.x0 && value <= window.x1 : value >= window.y0 && value <= window.y1;
}

type Placing = (value: number) => { readonly on: PaperPoint; readonly off: PaperPoint };

/** A point of the measuring line, and the same on the dimension line. */
function placing(page: PlanPage, { along, at }: Measuring, level: number): Placing {
  return (value) => {
    const point: Point = along === "x" ? { x: value, y: at } : { x: at, y: value };
    const on = paperOf(page, point);
    return { on, off: along === "x" ? { x: on.x, y: level } : { x: level, y: on.y } };
  };
}

/** Close beside the measuring line where it is inside the plan, else outside the window; then the other way. */
function levelsOf(page: PlanPage, measuring: Measuring): readonly number[] {
  const { first } = chainLevels(page.lettering);
  const { window } = page;
  const { on } = placing(page, measuring, 0)(0);
  const [edge, near] = measuring.along === "x" ? [window.y0 - first, on.y - NEAR] : [window.x1 + first, on.x + NEAR];
  const isAtEdge = Math.abs(edge - near) < 2.5 * NEAR;
  return isAtEdge ? [edge] : [near];
}

const NEAR = 15;

function runBetween({ line }: Measuring, a: Crossing, b: Crossing, place: Placing): Locating {
  const value = toLattice(b.value - a.value);
  return { p: place(a.value).off, q: place(b.value).off, value, from: a.name, to: b.name, along: line.line.name };
}

/** From the nearest crossing to the edge of the window, where the reference stands on another sheet. */
function putFromReference(
  draft: Draft,
  page: PlanPage,
  { along, line }: Measuring,
  reference: Crossing,
  stops: readonly Crossing[],
  place: Placing,
): boolean {
  const { window } = page;
  const isBelow = reference.value < (stops[0]?.value ?? 0);
  const nearest = isBelow ? stops[0] : stops.at(-1);
  if (nearest === undefined) return false;
  const { off } = place(nearest.value);
  const edge =
    along === "x"
      ? { x: isBelow ? Math.min(window.x0, off.x - 12) : Math.max(window.x1, off.x + 12), y: off.y }
      : { x: off.x, y: isBelow ? Math.min(window.y0, off.y - 12) : Math.max(window.y1, off.y + 12) };
  return putBroken(draft, page, {
    p: off,
    q: edge,
    value: toLattice(Math.abs(nearest.value - reference.value)),
    from: reference.name,
    to: nearest.name,
    along: line.line.name,
    after: ` FROM ${reference.name}`,
  });
}
