/** Dimensions of a plan that say where a line or a point is: what from, what to, and on which line they are measured. */
import { type Length, nanometres } from "../../units/index.js";
import { putRuns, type Run } from "../dimension.js";
import { arrowHead, at, circle, group, line, stroke, text } from "../items.js";
import { crossesText } from "../occupied.js";
import { copyDraft, type Draft, hasRoom, interrupt, put, putAll } from "../paper.js";
import type { PaperPoint, SceneItem } from "../scene.js";
import { textWidth } from "../text-metrics.js";
import { blockAbout } from "./blocks.js";
import { planLength } from "./lengths.js";
import type { PlanPage } from "./page.js";

/** A dimension between two named things, paper points of its ends. `after`: words behind the figure. */
export interface Locating {
  readonly p: PaperPoint;
  readonly q: PaperPoint;
  readonly value: number;
  readonly from: string;
  readonly to: string;
  readonly along?: string;
  readonly after?: string;
}

function runOf({ p, q, value, after = "" }: Locating, page: PlanPage): Run {
  const words = `${planLength(value, page.request.job.unit)}${after}`;
  const length: Length = nanometres(value);
  return { p, q, value: length, prefix: "", words, outside: [], short: "dots" };
}

function named(item: SceneItem, { from, to, along = "" }: Locating): SceneItem {
  return group("line-location", [item], { from, to, along });
}

/** All of a chain, with its extension lines, or nothing and false. */
function attempt(
  draft: Draft,
  page: PlanPage,
  runs: readonly Locating[],
  letter: number,
  more: readonly SceneItem[],
): boolean {
  const trial = copyDraft(draft);
  putAll(trial, more);
  const start = trial.items.length;
  const written = putRuns(
    trial,
    runs.map((run) => runOf(run, page)),
    page.request.job.unit,
    letter,
  );
  if (!written) return false;
  putAll(draft, more);
  runs.forEach((run, i) => {
    const item = trial.items[start + i];
    if (item !== undefined) put(draft, named(item, run));
  });
  return true;
}

/** One dimension in the body letter, else in the small one. False: no room for its figure. */
export function putLocating(draft: Draft, page: PlanPage, run: Locating, more: readonly SceneItem[] = []): boolean {
  const { body, small } = page.lettering;
  return [body, small].some((letter) => attempt(draft, page, [run], letter, more));
}

/** A chain in one letter where it fits, run by run at the last. False: one is left out. */
export function putLocatingChain(
  draft: Draft,
  page: PlanPage,
  runs: readonly Locating[],
  more: readonly SceneItem[] = [],
): boolean {
  const { body, small } = page.lettering;
  const isClear = runs.every((run) => isLineClear(draft, run));
  if (isClear && [body, small].some((letter) => attempt(draft, page, runs, letter, more))) return true;
  putAll(draft, more);
  const left = runs.filter((run) => !isLineClear(draft, run) || !attempt(draft, page, [run], small, []));
  return left.map((run) => putBeside(draft, page, run)).every((written) => written);
}

/** Half of an arrowhead's width, and a little. */
const HALF_ARROW = 0.8;

/** Line and arrows would lie on no text. */
function isLineClear({ taken }: Draft, { p, q }: Locating): boolean {
  const length = Math.hypot(q.x - p.x, q.y - p.y);
  const [nx, ny] = [-(q.y - p.y) / length, (q.x - p.x) / length];
  return [0, HALF_ARROW, -HALF_ARROW].every(
    (off) => !crossesText(taken, at(p.x + nx * off, p.y + ny * off), at(q.x + nx * off, q.y + ny * off)),
  );
}

/** A stretch too short for its figure, named at the end of a leader: `R1 TO R2: 5'-0"`. False: no room. */
function putBeside(draft: Draft, page: PlanPage, run: Locating): boolean {
  const { p, q, from, to } = run;
  if (!isLineClear(draft, run)) return false;
  const words = `${from} TO ${to}: ${runOf(run, page).words ?? ""}`;
  const block = { lines: [words], letter: page.lettering.small, boxed: false, plain: true };
  const middle = at((p.x + q.x) / 2, (p.y + q.y) / 2);
  const items = blockAbout(draft, block, middle, 1, [3, 8, 14, 20, 28, 36, 46]);
  if (items === null) return false;
  const extent = stroke("dimension", line(p, q), circle(p, 0.4), circle(q, 0.4));
  put(draft, named(group("dimension-note", [extent, ...items], { valueNm: run.value }), run));
  return true;
}

/** All of a chain in the small letter, or nothing. */
export function putSpareChain(draft: Draft, page: PlanPage, runs: readonly Locating[]): void {
  attempt(draft, page, runs, page.lettering.small, []);
}

const ARROW = 3;

/** From `p` towards what lies beyond the sheet, broken off at `q` or behind its words; axis-parallel. False: no room. */
export function putBroken(draft: Draft, page: PlanPage, run: Locating): boolean {
  const { body, small } = page.lettering;
  return [body, small].some((letter) => {
    const items = brokenItems(page, run, letter);
    if (!hasRoom(draft, items.label, 0.4, "hard")) return false;
    interrupt(draft, items.label);
    const { from, to, along = "" } = run;
    const broken = group("broken-dimension", [...items.strokes, items.label], { valueNm: run.value });
    put(draft, group("line-location", [broken], { from, to, along }));
    return true;
  });
}

/** Read from the bottom or the right of the sheet; the words stand clear of arrow and break. */
function brokenItems(page: PlanPage, run: Locating, letter: number) {
  const { p, q } = run;
  const words = runOf(run, page).words ?? "";
  const needed = textWidth(words, letter) + 2 * ARROW + 2;
  const given = Math.hypot(q.x - p.x, q.y - p.y);
  const length = Math.max(given, needed);
  const [dx, dy] = [(q.x - p.x) / given, (q.y - p.y) / given];
  const along = (t: number, off: number) => at(p.x + dx * t - dy * off, p.y + dy * t + dx * off);
  const zigzag = [0, 1.6, -1.6, 0].map((off, i) => along(length + (i < 2 ? 0 : 1.2), off));
  const path = [p, ...zigzag, along(length + 4, 0)];
  const strokes = [
    stroke("dimension", ...path.slice(1).map((to, i) => line(path[i] ?? to, to))),
    arrowHead(p, -dx, -dy, ARROW),
  ];
  const isLevel = Math.abs(dx) > Math.abs(dy);
  const middle = along(length / 2, 0);
  const off = 1.2 + letter * 0.2;
  const place = isLevel ? at(middle.x, middle.y + off) : at(middle.x - off, middle.y);
  return { strokes, label: text("dimension", words, place, letter, { anchor: "middle", turn: isLevel ? 0 : 90 }) };
}
