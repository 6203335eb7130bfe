/** Grid lines with their bubbles, and the dimension chains between them. */
import { toLattice } from "../../geometry/index.js";
import type { GridLine } from "../../job/index.js";
import { formatDegrees, type Length, nanometres, toMillimetres } from "../../units/index.js";
import { putRuns, type Run } from "../dimension.js";
import { at, circle, group, line, stroke, strokeOf, text } from "../items.js";
import { copyDraft, type Draft, hasRoom, interrupt, isFree, put, putAll } from "../paper.js";
import type { PaperPoint, PathPart } from "../scene.js";
import { textWidth } from "../text-metrics.js";
import { isParallel, type LineSpan } from "./grid.js";
import { planLength } from "./lengths.js";
import { BUBBLE_GAP, bubbleLetter, bubbleRadius, CHAIN, STEM } from "./margins.js";
import { clipped, type PlanPage, paperOf } from "./page.js";

/** A bubble: where its line meets it, and which way it stands off from there. */
interface Bubble {
  readonly name: string;
  readonly foot: PaperPoint;
  readonly dx: number;
  readonly dy: number;
}

/** Lines and bubbles first, then chains and the words of slanting lines. False: some spacing found no room. */
export function putGrid(draft: Draft, page: PlanPage): boolean {
  const visible = page.arrangement.spans.filter((span) => isVisible(page, span));
  putAll(draft, [
    strokeOf(
      "centre",
      visible.flatMap((span) => spanParts(page, span)),
    ),
  ]);
  const slanting = putSlantingBubbles(draft, page, visible);
  const written = [
    putAxisChain(draft, page, "x"),
    putAxisChain(draft, page, "y"),
    ...parallelFamilies(visible).map((family) => putSlantingChain(draft, page, family)),
  ];
  for (const { span, center } of slanting) putSlantingWords(draft, page, span, center);
  return !written.includes(false);
}

function isVisible(page: PlanPage, span: LineSpan): boolean {
  return spanParts(page, span).length > 0;
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

/** A line of the building's own axes that this sheet shows, at its place on paper; `beyond` past the match line. */
interface Stop {
  readonly line: GridLine;
  readonly value: Length;
  readonly paper: number;
  readonly beyond: boolean;
}

/** Farthest that the first line beyond a match line is drawn, on paper. */
const FARTHEST = 70;

function stopsOf(page: PlanPage, axis: Axis): readonly Stop[] {
  const { spans } = page.arrangement;
  const { window } = page.tile;
  const all = spans
    .filter((span) => span.line.kind === axis)
    .flatMap((span): readonly Stop[] => {
      if (span.line.kind !== "x" && span.line.kind !== "y") return [];
      const value = span.line.at;
      const place = toMillimetres(value);
      const paper = paperOf(page, { x: place, y: place })[axis];
      return [{ line: span.line, value, paper, beyond: !isVisible(page, span) }];
    })
    .toSorted((a, b) => a.value - b.value);
  const shown = all.filter(({ beyond }) => !beyond);
  const edge = axis === "x" ? window.x1 : window.y0;
  const next =
    axis === "x"
      ? all.find(({ value, beyond }) => beyond && toMillimetres(value) > edge)
      : all.findLast(({ value, beyond }) => beyond && toMillimetres(value) < edge);
  const end = axis === "x" ? page.window.x1 : page.window.y0;
  const isNear = next !== undefined && shown.length > 0 && Math.abs(next.paper - end) <= FARTHEST;
  return isNear ? (axis === "x" ? [...shown, next] : [next, ...shown]) : shown;
}

/** Bubbles, spacings and overall of the x lines above the plan, of the y lines at its left. False: one found no room. */
function putAxisChain(draft: Draft, page: PlanPage, axis: Axis): boolean {
  const stops = stopsOf(page, axis);
  const [first, last] = [stops[0], stops.at(-1)];
  if (first === undefined || last === undefined) return true;
  const edge = axis === "x" ? page.window.y1 : page.window.x0;
  const out = axis === "x" ? 1 : -1;
  const place = (stop: Stop, level: number) =>
    axis === "x" ? at(stop.paper, edge + out * level) : at(edge + out * level, stop.paper);
  const overall = stops.length > 2 ? CHAIN.next : 0;
  const bubbles = CHAIN.first + (stops.length > 1 ? overall + CHAIN.bubble : 0);
  const feet = stops.map((stop) =>
    stroke("centre", line(place(stop, stop.beyond ? CHAIN.first - 4 : 0), place(stop, bubbles))),
  );
  putAll(draft, feet);
  const staggered = staggers(page, stops);
  stops.forEach((stop, i) => {
    const more = staggered[i] === true ? 2 * bubbleRadius(stop.line.name, page.lettering) + BUBBLE_GAP : 0;
    if (more > 0) put(draft, stroke("centre", line(place(stop, bubbles), place(stop, bubbles + more))));
    const foot = place(stop, bubbles + more);
    putBubble(draft, page, { name: stop.line.name, foot, dx: axis === "x" ? 0 : -1, dy: axis === "x" ? 1 : 0 });
  });
  const chain = stops
    .slice(1)
    .map((stop, i) => runBetween(page, stops[i] ?? stop, stop, (each) => place(each, CHAIN.first)));
  const whole =
    stops.length > 2 ? [runBetween(page, first, last, (each) => place(each, CHAIN.first + CHAIN.next))] : [];
  return putChain(draft, page, [...chain, ...whole]);
}

function runBetween(page: PlanPage, a: Stop, b: Stop, place: (stop: Stop) => PaperPoint): Run {
  const value = nanometres(b.value - a.value);
  return { p: place(a), q: place(b), value, ...plain(value, page) };
}

/** How every run of a plan is written. */
function plain(value: Length, page: PlanPage): Pick<Run, "prefix" | "words" | "outside" | "short"> {
  return { prefix: "", words: planLength(value, page.request.job.unit), outside: [], short: "dots" };
}

/** In the body letter where it fits, in the small one where it does not, run by run at the last. False: one is left out. */
function putChain(draft: Draft, page: PlanPage, runs: readonly Run[]): boolean {
  const { unit } = page.request.job;
  const attempt = (some: readonly Run[], letter: number) => {
    const trial = copyDraft(draft);
    if (!putRuns(trial, some, unit, letter)) return false;
    putAll(draft, trial.items.slice(draft.items.length));
    return true;
  };
  const { body, small } = page.lettering;
  if ([body, small].some((letter) => attempt(runs, letter))) return true;
  return runs.map((run) => attempt([run], small)).every((written) => written);
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

/** Square spacings of parallel lines, between their ends; those whose ends this sheet shows. False: one found no room. */
function putSlantingChain(draft: Draft, page: PlanPage, family: readonly Straight[]): boolean {
  const shown = family.filter(({ to }) => isIn(page, to));
  const runs = shown.slice(1).map((span, i): Run => {
    const before = shown[i] ?? span;
    const value = nanometres(toLattice(Math.hypot(span.to.x - before.to.x, span.to.y - before.to.y)));
    return { p: paperOf(page, before.to), q: paperOf(page, span.to), value, ...plain(value, page) };
  });
  return putChain(draft, page, runs);
}

/** A slanting line and the middle of its bubble. */
interface SlantingBubble {
  readonly span: LineSpan;
  readonly center: PaperPoint;
}

/** Bubbles of skewed and radial lines and arcs past their own ends, farther out where another one stands. */
function putSlantingBubbles(draft: Draft, page: PlanPage, visible: readonly LineSpan[]): readonly SlantingBubble[] {
  return visible
    .filter(({ line: { kind } }) => kind !== "x" && kind !== "y")
    .map((span) => {
      const { foot, dx, dy } = slantingEnd(page, span);
      const radius = bubbleRadius(span.line.name, page.lettering);
      const along = (t: number) => at(foot.x + dx * t, foot.y + dy * t);
      const steps = [0, 1, 2, 3].map((step) => STEM + step * (2 * radius + BUBBLE_GAP));
      const isClear = (t: number) => isFree(draft, boxAround(along(t + radius), radius + 0.6), "hard");
      const stem = steps.find(isClear) ?? STEM;
      put(draft, stroke("centre", line(foot, along(stem))));
      putBubble(draft, page, { name: span.line.name, foot: along(stem), dx, dy });
      return { span, center: along(stem + radius) };
    });
}

function boxAround({ x, y }: PaperPoint, r: number): readonly PaperPoint[] {
  return [at(x - r, y - r), at(x + r, y - r), at(x + r, y + r), at(x - r, y + r)];
}

/** Where a slanting line leaves towards its bubble: its own end, or the edge of the window. */
function slantingEnd(page: PlanPage, span: LineSpan): Omit<Bubble, "name"> {
  if (span.kind === "straight") {
    const inside = clipped(span.from, span.to, page.tile.window) ?? [span.from, span.to];
    const length = Math.hypot(span.to.x - span.from.x, span.to.y - span.from.y);
    const [dx, dy] = [(span.to.x - span.from.x) / length, (span.to.y - span.from.y) / length];
    return { foot: paperOf(page, inside[1]), dx, dy };
  }
  const last = arcSteps(span).findLast((point) => isIn(page, point)) ?? span.center;
  const [rx, ry] = [(last.x - span.center.x) / span.radius, (last.y - span.center.y) / span.radius];
  return { foot: paperOf(page, last), dx: -ry, dy: rx };
}

function putSlantingWords(draft: Draft, page: PlanPage, span: LineSpan, center: PaperPoint): void {
  const { small } = page.lettering;
  const words = slantingWords(span.line, page);
  const radius = bubbleRadius(span.line.name, page.lettering);
  const width = textWidth(words, small);
  for (const [x, y] of [
    [radius + 1, -small / 2],
    [-radius - 1 - width, -small / 2],
    [-width / 2, radius + 1.2],
    [-width / 2, -radius - 1.2 - small],
  ] as const) {
    const label = text("label", words, at(center.x + x, center.y + y), small);
    if (!hasRoom(draft, label)) continue;
    put(draft, label);
    return;
  }
}

function slantingWords(gridLine: GridLine, page: PlanPage): string {
  switch (gridLine.kind) {
    case "skewed":
    case "radial":
      return formatDegrees(gridLine.degrees);
    case "arc":
      return `R ${planLength(gridLine.radius, page.request.job.unit)}`;
    case "x":
    case "y":
      return "";
  }
}
