/** Grid lines with their bubbles, and the dimensions that locate every one of them. */
import { toLattice } from "../../geometry/index.js";
import type { GridLine } from "../../job/index.js";
import { type Length, nanometres, toMillimetres } from "../../units/index.js";
import { at, circle, group, line, stroke, strokeOf, text } from "../items.js";
import { countCrossings, crossesText } from "../occupied.js";
import { type Draft, hasRoom, interrupt, isFree, put, putAll } from "../paper.js";
import type { PaperPoint, PathPart } from "../scene.js";
import { textWidth } from "../text-metrics.js";
import { turnText } from "./angles.js";
import { clipped } from "./clip.js";
import { isParallel, isSlanting, type LineSpan } from "./grid.js";
import { planLength } from "./lengths.js";
import { type Locating, putBroken, putLocatingChain, putSpareChain } from "./locating.js";
import { BUBBLE_GAP, bubbleLetter, bubbleRadius, chainLevels, STEM } from "./margins.js";
import { type PlanPage, paperOf } from "./page.js";
import { putSkewedLocations } from "./skewed-lines.js";
import { shows } from "./tiles.js";

/** A bubble: where its line meets it, and which way it stands off from there. */
interface Bubble {
  readonly name: string;
  readonly foot: PaperPoint;
  readonly dx: number;
  readonly dy: number;
}

/** Lines and bubbles first, then chains and the words of slanting lines. False: some line is located by the table alone. */
export function putGrid(draft: Draft, page: PlanPage): boolean {
  const visible = page.arrangement.spans.filter((span) => isVisible(page, span));
  putAll(draft, [
    strokeOf(
      "centre",
      visible.flatMap((span) => spanParts(page, span)),
    ),
  ]);
  const stops = { x: stopsOf(page, "x"), y: stopsOf(page, "y") };
  putAxisBubbles(draft, page, "x", stops.x);
  putAxisBubbles(draft, page, "y", stops.y);
  const slanting = putSlantingBubbles(draft, page, visible);
  const written = [
    putSkewedLocations(draft, page, visible),
    putAxisChain(draft, page, "x", stops.x),
    putAxisChain(draft, page, "y", stops.y),
  ];
  for (const { span, center } of slanting) written.push(putSlantingWords(draft, page, span, center));
  return !written.includes(false);
}

function isVisible(page: PlanPage, span: LineSpan): boolean {
  return shows(page.arrangement, page.tile, span) && spanParts(page, span).length > 0;
}

/** What of a line lies inside the window, on paper. */
function spanParts(page: PlanPage, span: LineSpan): readonly PathPart[] {
  if (span.kind === "arc") return arcParts(page, span);
  const inside = clipped(span.from, span.to, page.tile.window);
  return inside === null ? [] : [line(paperOf(page, inside[0]), paperOf(page, inside[1]))];
}

/** An arc in pieces of at most 4 degrees, those that lie inside the window, joined again where they meet. */
function arcParts(page: PlanPage, span: Extract<LineSpan, { kind: "arc" }>): readonly PathPart[] {
  const points = arcSteps(span);
  const runs: PaperPoint[][] = [];
  let open: PaperPoint[] | null = null;
  for (const point of points) {
    if (!isIn(page, point)) open = null;
    else if (open === null) {
      open = [paperOf(page, point)];
      runs.push(open);
    } else open.push(paperOf(page, point));
  }
  return runs.flatMap((run) => run.slice(1).map((to, i) => line(run[i] ?? to, to)));
}

function isIn(page: PlanPage, { x, y }: { readonly x: number; readonly y: number }): boolean {
  const { x0, y0, x1, y1 } = page.tile.window;
  return x >= x0 && x <= x1 && y >= y0 && y <= y1;
}

function arcSteps({ center, radius, start, sweep }: Extract<LineSpan, { kind: "arc" }>) {
  const count = Math.max(4, Math.ceil(sweep / 2));
  return Array.from({ length: count + 1 }, (_, i) => {
    const angle = ((start + (sweep * i) / count) * Math.PI) / 180;
    return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
  });
}

type Axis = "x" | "y";

/** A line of the building's own axes that this sheet shows, at its place on paper. */
interface Stop {
  readonly line: GridLine;
  readonly value: Length;
  readonly paper: number;
}

function stopsOf(page: PlanPage, axis: Axis): readonly Stop[] {
  return axisLines(page, axis)
    .filter(({ span }) => isVisible(page, span))
    .map(({ span, value }) => {
      const place = toMillimetres(value);
      return { line: span.line, value, paper: paperOf(page, { x: place, y: place })[axis] };
    });
}

/** All lines of an axis of the whole grid, in order. */
function axisLines(page: PlanPage, axis: Axis): readonly { readonly span: LineSpan; readonly value: Length }[] {
  return page.arrangement.spans
    .flatMap((span) => (span.line.kind === axis && "at" in span.line ? [{ span, value: span.line.at }] : []))
    .toSorted((a, b) => a.value - b.value);
}

/** Where things stand outside the window: `level` outwards from its upper edge for x lines, from its left one for y lines. */
function outside(page: PlanPage, axis: Axis): (along: number, level: number) => PaperPoint {
  const { window } = page;
  return (along, level) => (axis === "x" ? at(along, window.y1 + level) : at(window.x0 - level, along));
}

/** Level of the bubbles: past spacings, overall, and the overall of all parts. */
function bubbleLevel(page: PlanPage, stops: readonly Stop[]): number {
  const { first, next, bubble } = chainLevels(page.lettering);
  if (stops.length < 2 && page.arrangement.tiles.length === 1) return first;
  const rows = (stops.length > 2 ? 1 : 0) + (page.arrangement.tiles.length > 1 ? 1 : 0);
  return first + rows * next + bubble;
}

/** Bubbles of the x lines above the plan, of the y lines at its left. */
function putAxisBubbles(draft: Draft, page: PlanPage, axis: Axis, stops: readonly Stop[]): void {
  const place = outside(page, axis);
  const level = bubbleLevel(page, stops);
  const staggered = staggers(page, stops);
  stops.forEach(({ line: { name }, paper }, i) => {
    const more = staggered[i] === true ? 2 * bubbleRadius(name, page.lettering) + BUBBLE_GAP : 0;
    const foot = place(paper, level + more);
    put(draft, stroke("centre", line(place(paper, 0), foot)));
    putBubble(draft, page, { name, foot, dx: axis === "x" ? 0 : -1, dy: axis === "x" ? 1 : 0 });
  });
}

/** Spacings, overall, and what leads to lines beyond this sheet. False: one found no room. */
function putAxisChain(draft: Draft, page: PlanPage, axis: Axis, stops: readonly Stop[]): boolean {
  const [first, last] = [stops[0], stops.at(-1)];
  if (first === undefined || last === undefined) return true;
  const levels = chainLevels(page.lettering);
  const place = outside(page, axis);
  const between = (a: Stop, b: Stop, level: number): Locating => ({
    p: place(a.paper, level),
    q: place(b.paper, level),
    value: b.value - a.value,
    from: a.line.name,
    to: b.line.name,
  });
  const chain = stops.slice(1).map((stop, i) => between(stops[i] ?? stop, stop, levels.first));
  const whole = stops.length > 2 ? [between(first, last, levels.first + levels.next)] : [];
  return [
    putLocatingChain(draft, page, [...chain, ...whole]),
    putToNext(draft, page, axis, last, levels.first),
    putWholeOverall(draft, page, axis, stops, levels.first + levels.next * (stops.length > 2 ? 2 : 1)),
  ].every((written) => written);
}

/** To the next line, where no sheet shows both. */
function putToNext(draft: Draft, page: PlanPage, axis: Axis, last: Stop, level: number): boolean {
  const all = axisLines(page, axis);
  const next = all.find(({ value }) => value > last.value);
  const own = all.find(({ span }) => span.line === last.line);
  const { tiles } = page.arrangement;
  if (next === undefined || own === undefined) return true;
  const { arrangement } = page;
  const isTogether = tiles.some((tile) => shows(arrangement, tile, next.span) && shows(arrangement, tile, own.span));
  const isFirst = tiles.find((tile) => shows(arrangement, tile, own.span)) === page.tile;
  if (isTogether || !isFirst) return true;
  return putBroken(draft, page, {
    ...brokenEnds(page, axis, last.paper, level),
    value: next.value - last.value,
    from: last.line.name,
    to: next.span.line.name,
    after: ` TO ${next.span.line.name}`,
  });
}

/** To the edge of the window, and a little farther. */
function brokenEnds(page: PlanPage, axis: Axis, from: number, level: number): Pick<Locating, "p" | "q"> {
  const { window } = page;
  const place = outside(page, axis);
  const edge = Math.max(axis === "x" ? window.x1 : window.y1, from + 8);
  return { p: place(from, level), q: place(edge, level) };
}

/** Once for the whole grid: on the sheet of its first line, where no sheet shows all lines of the axis. */
function putWholeOverall(draft: Draft, page: PlanPage, axis: Axis, stops: readonly Stop[], level: number): boolean {
  const all = axisLines(page, axis);
  const [first, last] = [all[0], all.at(-1)];
  const own = stops[0];
  if (first === undefined || last === undefined || own === undefined || first === last) return true;
  const { tiles } = page.arrangement;
  const { arrangement } = page;
  const isWhole = tiles.some((tile) => shows(arrangement, tile, first.span) && shows(arrangement, tile, last.span));
  const isHere = tiles.find((tile) => shows(arrangement, tile, first.span)) === page.tile;
  if (isWhole || !isHere || own.line !== first.span.line) return true;
  return putBroken(draft, page, {
    ...brokenEnds(page, axis, own.paper, level),
    value: last.value - first.value,
    from: first.span.line.name,
    to: last.span.line.name,
    after: ` OVERALL, ${first.span.line.name} TO ${last.span.line.name}`,
  });
}

/** True for every second bubble of a row in which neighbours would touch. */
function staggers(page: PlanPage, stops: readonly Stop[]): readonly boolean[] {
  let before = false;
  return stops.map((stop, i) => {
    const previous = stops[i - 1];
    if (previous === undefined) return false;
    const need = bubbleRadius(stop.line.name, page.lettering) + bubbleRadius(previous.line.name, page.lettering) + 0.8;
    before = !before && stop.paper - previous.paper < need;
    return before;
  });
}

/** A bubble at the end of its line; lines of its neighbours are interrupted for its name. */
function putBubble(draft: Draft, page: PlanPage, { name, foot, dx, dy }: Bubble): void {
  const letter = bubbleLetter(name, page.lettering);
  const radius = bubbleRadius(name, page.lettering);
  const center = at(foot.x + dx * radius, foot.y + dy * radius);
  const words = text("heading", name, at(center.x, center.y - letter / 2), letter, { anchor: "middle", bold: true });
  interrupt(draft, words);
  put(draft, group("grid-bubble", [stroke("fine", circle(center, radius)), words], { name }));
}

type Straight = Extract<LineSpan, { kind: "straight" }>;

/** Families of at least two parallel skewed lines, each in order across. */
function parallelFamilies(visible: readonly LineSpan[]): readonly (readonly Straight[])[] {
  const families: Straight[][] = [];
  for (const span of visible) {
    if (span.kind !== "straight" || span.line.kind !== "skewed") continue;
    const { degrees } = span.line;
    const known = families.find(([first]) => first?.line.kind === "skewed" && isParallel(first.line.degrees, degrees));
    if (known === undefined) families.push([span]);
    else known.push(span);
  }
  return families.filter(({ length }) => length > 1).map((family) => family.toSorted(across));
}

function across(a: Straight, b: Straight): number {
  return a.to.x - b.to.x || a.to.y - b.to.y;
}

/** Square spacings of parallel skewed lines, where there is room when all else stands: other distances locate the lines. */
export function putSquareSpacings(draft: Draft, page: PlanPage): void {
  const visible = page.arrangement.spans.filter((span) => isVisible(page, span));
  for (const family of parallelFamilies(visible)) putSlantingChain(draft, page, family);
}

/** Between their ends, those that this sheet shows. */
function putSlantingChain(draft: Draft, page: PlanPage, family: readonly Straight[]): void {
  const shown = family.filter(({ to }) => isIn(page, to));
  const runs = shown.slice(1).map((span, i): Locating => {
    const before = shown[i] ?? span;
    const value = nanometres(toLattice(Math.hypot(span.to.x - before.to.x, span.to.y - before.to.y)));
    const ends = { from: before.line.name, to: span.line.name };
    return { p: paperOf(page, before.to), q: paperOf(page, span.to), value, ...ends, along: "square" };
  });
  const clear = runs.every(({ p, q }) => !crossesText(draft.taken, p, q));
  if (clear && runs.length > 0) putSpareChain(draft, page, runs);
}

/** A slanting line and the middle of its bubble. */
interface SlantingBubble {
  readonly span: LineSpan;
  readonly center: PaperPoint;
}

/** Bubbles of skewed and radial lines and arcs past their own ends, at the other end or farther out where something stands. */
function putSlantingBubbles(draft: Draft, page: PlanPage, visible: readonly LineSpan[]): readonly SlantingBubble[] {
  return visible.filter(({ line: own }) => isSlanting(own)).map((span) => putSlantingBubble(draft, page, span));
}

function putSlantingBubble(draft: Draft, page: PlanPage, span: LineSpan): SlantingBubble {
  const radius = bubbleRadius(span.line.name, page.lettering);
  const ways = slantingEnds(page, span).flatMap(({ foot, dx, dy }) =>
    STEPS.map((step) => {
      const stem = STEM + step * (radius + BUBBLE_GAP);
      const along = (t: number) => at(foot.x + dx * t, foot.y + dy * t);
      return { start: foot, foot: along(stem), dx, dy, center: along(stem + radius) };
    }),
  );
  const isRoomy = ({ start, foot, center }: (typeof ways)[number], strokes: "all" | "hard") =>
    isFree(draft, boxAround(center, radius + 0.6), strokes) && countCrossings(draft.taken, start, foot).hard === 0;
  const way = ways.find((each) => isRoomy(each, "all")) ?? ways.find((each) => isRoomy(each, "hard")) ?? ways[0];
  if (way === undefined) throw new RangeError("a line without ends");
  put(draft, stroke("centre", line(way.start, way.foot)));
  putBubble(draft, page, { name: span.line.name, ...way });
  return { span, center: way.center };
}

const STEPS = [0, 1, 2, 3, 4, 6, 8];

function boxAround({ x, y }: PaperPoint, r: number): readonly PaperPoint[] {
  return [at(x - r, y - r), at(x + r, y - r), at(x + r, y + r), at(x - r, y + r)];
}

/** Where a slanting line leaves towards its bubble: its own ends, or the edges of the window; the end of the bubble first. */
function slantingEnds(page: PlanPage, span: LineSpan): readonly Omit<Bubble, "name">[] {
  if (span.kind === "straight") {
    const inside = clipped(span.from, span.to, page.tile.window) ?? [span.from, span.to];
    const length = Math.hypot(span.to.x - span.from.x, span.to.y - span.from.y);
    const [dx, dy] = [(span.to.x - span.from.x) / length, (span.to.y - span.from.y) / length];
    const ends = [
      { foot: paperOf(page, inside[1]), dx, dy },
      { foot: paperOf(page, inside[0]), dx: -dx, dy: -dy },
    ];
    return span.line.kind === "radial" ? ends.slice(0, 1) : ends;
  }
  const inside = arcSteps(span).filter((point) => isIn(page, point));
  return [inside.at(-1), inside[0]].map((point = span.center, i) => {
    const side = i === 0 ? 1 : -1;
    const [rx, ry] = [(point.x - span.center.x) / span.radius, (point.y - span.center.y) / span.radius];
    return { foot: paperOf(page, point), dx: -ry * side, dy: rx * side };
  });
}

/** Angle or radius beside the bubble, lines that may be are interrupted. False: no room. */
function putSlantingWords(draft: Draft, page: PlanPage, span: LineSpan, center: PaperPoint): boolean {
  const { small } = page.lettering;
  const words = slantingWords(span.line, page);
  const radius = bubbleRadius(span.line.name, page.lettering);
  const width = textWidth(words, small);
  const places = [1, 4, 8].flatMap((far): readonly (readonly [number, number])[] => [
    [radius + far, -small / 2],
    [-radius - far - width, -small / 2],
    [-width / 2, radius + far + 0.2],
    [-width / 2, -radius - far - 0.2 - small],
    [radius * 0.7 + far, radius * 0.7 + far / 2],
    [radius * 0.7 + far, -radius * 0.7 - far / 2 - small],
    [-radius * 0.7 - far - width, radius * 0.7 + far / 2],
    [-radius * 0.7 - far - width, -radius * 0.7 - far / 2 - small],
  ]);
  for (const strokes of ["all", "hard"] as const)
    for (const [x, y] of places) {
      const label = text("label", words, at(center.x + x, center.y + y), small);
      if (!hasRoom(draft, label, 0.5, strokes)) continue;
      if (strokes === "hard") interrupt(draft, label);
      put(draft, group("line-angle", [label], { name: span.line.name }));
      return true;
    }
  return false;
}

function slantingWords(gridLine: GridLine, page: PlanPage): string {
  switch (gridLine.kind) {
    case "skewed":
    case "radial":
      return turnText(gridLine.degrees);
    case "arc":
      return `R ${planLength(gridLine.radius, page.request.job.unit)}`;
    case "x":
    case "y":
      return "";
  }
}
