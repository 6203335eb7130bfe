/**
 * Room for callouts. A leader ends at its feature in an angle of 15 to 75 degrees, rather 30, 45 or 60 (drawing practice);
 * so rays are cast from the features, and a block of words is tried at ever longer leaders along each, in several wrappings.
 */

import { greatestOf } from "../units/extremes.js";
import { once } from "../units/once.js";
import type { Callout, PhraseOf, Target } from "./callouts.js";
import { type FreeGrid, gridOf, hasRoomFor, isGridFree } from "./free-grid.js";
import { arrowHead, at, group, line, stroke, text } from "./items.js";
import {
  addObstacle,
  countObstacles,
  cutObstacles,
  look,
  type Obstacles,
  obstaclesOf,
  type Ray,
  type Sight,
  tollTo,
} from "./obstacles.js";
import { crossesText } from "./occupied.js";
import { type Area, type Draft, isFree } from "./paper.js";
import { onPaper, type View } from "./plan-shapes.js";
import type { PaperPoint, SceneItem } from "./scene.js";
import { setWidth, textWidth } from "./text-metrics.js";

/** The same in degrees from the level, in each quarter: those of drawing practice, and what is taken where these find no room. */
const ANGLES = [45, 60, 30] as const;
const OTHER_ANGLES = [37, 52, 22, 68] as const;

const SHOULDER = 3;
const TEXT_GAP = 1;
const SHORTEST = 5;
/** Leaders are tried at these steps of length, longer ones at larger steps. */
const STEP = 1.5;
const GROWTH = 0.03;
const LEADING = 1.7;
const ARROW = 2.7;
const CLEARANCE = 1.3;
/** Between two callouts, in letter heights: more than between two lines of one, so that each is read as one. */
const APART = 1.6;

/** One way of breaking the words of a callout. `phrases`: of each line, with what each is of. */
interface Wrapping {
  readonly lines: readonly string[];
  readonly phrases: readonly (readonly Told[])[];
  readonly width: number;
  readonly height: number;
  readonly longest: number;
}

/** A phrase with what it is of. */
interface Told {
  readonly words: string;
  readonly of: PhraseOf;
}

/** A block and its leader; `cost` in millimetres of leader. */
interface Place {
  readonly cost: number;
  readonly tip: PaperPoint;
  readonly dx: number;
  readonly dy: number;
  readonly wrapping: Wrapping;
  readonly block: Block;
}

/** What the search goes over. */
interface Search {
  readonly draft: Draft;
  readonly obstacles: Obstacles;
  readonly grid: FreeGrid;
  readonly sight: Sight;
  readonly block: Block;
  readonly letter: number;
  readonly worst: number;
  readonly all: boolean;
  readonly tells: boolean;
  readonly placed: Placed[];
}

/** A callout that was placed, its leader from the feature to its words, and the paper of these. */
interface Placed {
  readonly item: SceneItem;
  readonly tip: PaperPoint;
  readonly elbow: PaperPoint;
  readonly foot: PaperPoint;
  readonly taken: Area;
}

/**
 * How callouts are set: letter heights, the first that serves for all is taken; no leader costs more than `worst` millimetres.
 * `all`: nobody asks for some of them, so that the search for the others is given up with the first that finds no room.
 */
export interface CalloutSetting {
  readonly letters: readonly number[];
  readonly worst: number;
  readonly all: boolean;
}

/** A drawing as the search sees it: the same for every try, as long as nothing more is drawn. */
export interface Ground {
  readonly draft: Draft;
  readonly obstacles: Obstacles;
  readonly grid: FreeGrid;
  /** Each phrase is a group that tells what it is of, for a drawing that is typed on. */
  readonly tells: boolean;
  /** A callout in letters of a height. */
  readonly worded: (letter: number) => (callout: Callout) => Worded;
}

/** What is drawn by now, to find room beside; `extensions`: whether leaders may cross extension lines. */
export function groundOf(draft: Draft, extensions: "at a toll" | "never" = "at a toll", tells = false): Ground {
  const obstacles = obstaclesOf(draft.items, extensions);
  const grid = gridOf(draft.area, obstacles);
  const worded = once((letter: number) => once((callout: Callout) => wordedOf(grid, callout, letter)));
  return { draft, obstacles, grid, tells, worded };
}

/**
 * Every callout for which there is a clear place, drawn, and the others. No leader crosses a text, a hole that is not its own,
 * a dimension line or another leader. The ground is left as it was.
 */
export function findCallouts(
  ground: Ground,
  view: View,
  callouts: readonly Callout[],
  { letters, worst, all }: CalloutSetting,
): { readonly placed: readonly SceneItem[]; readonly left: readonly Callout[] } {
  let best: Outcome = { placed: [], left: callouts };
  for (const letter of letters) {
    const inLetters = ground.worded(letter);
    if (all && callouts.some((callout) => inLetters(callout).wrappings.length === 0)) continue;
    const worded = callouts.map(inLetters);
    const outcome = placeAll(() => startSearch(ground, letter, worst, all), view, worded);
    if (outcome.left.length < best.left.length) best = outcome;
    if (best.left.length === 0) break;
  }
  return { placed: best.placed.map(({ item }) => item), left: best.left };
}

/** As they come; where one finds no room, again with that one before all others. */
function placeAll(start: () => Search, view: View, callouts: readonly Worded[]): Outcome {
  const first = placeInTurn(start(), view, callouts);
  const [lost] = first.left;
  if (lost === undefined || lost === callouts[0]?.callout) return first;
  const isLost = ({ callout }: Worded) => callout === lost;
  const again = placeInTurn(start(), view, [...callouts.filter(isLost), ...callouts.filter((each) => !isLost(each))]);
  return again.left.length < first.left.length ? again : first;
}

/** A callout in the wrappings of one letter height for which there is paper somewhere. */
interface Worded {
  readonly callout: Callout;
  readonly wrappings: readonly Wrapping[];
}

function wordedOf(grid: FreeGrid, callout: Callout, letter: number): Worded {
  return {
    callout,
    wrappings: wrappingsOf(callout, letter).filter(({ width, height }) =>
      hasRoomFor(grid, width + 2 * CLEARANCE, height + 2 * CLEARANCE),
    ),
  };
}

interface Outcome {
  readonly placed: readonly Placed[];
  readonly left: readonly Callout[];
}

function startSearch({ draft, obstacles, grid, tells }: Ground, letter: number, worst: number, all: boolean): Search {
  const block = { x: 0, y: 0, width: 0, height: 0, level: 0, elbow: 0, foot: 0 };
  const sight = { blocked: 0, at: [], tolls: [], isSeen: false };
  return { draft, obstacles, grid, sight, block, letter, worst, all, tells, placed: [] };
}

function placeInTurn(search: Search, view: View, callouts: readonly Worded[]): Outcome {
  const before = countObstacles(search.obstacles);
  const left: Callout[] = [];
  for (const each of callouts)
    if ((search.all && left.length > 0) || !placeOne(search, view, each)) left.push(each.callout);
  cutObstacles(search.obstacles, before);
  return { placed: search.placed, left };
}

function placeOne(search: Search, view: View, { callout, wrappings }: Worded): boolean {
  const targets = callout.targets.map(({ center, radius }) => ({
    center: onPaper(view, center),
    radius: radius * view.scale,
  }));
  const found = wrappings.length === 0 ? null : findPlace(search, targets, wrappings);
  if (found === null) return false;
  const made = drawPlace(found, search.letter, search.tells ? callout.about.tag : null);
  addObstacle(search.obstacles, made.item);
  search.placed.push(made);
  return true;
}

/** As it is given, and with each phrase on its own line. */
function wrappingsOf({ lines, about }: Callout, letter: number): readonly Wrapping[] {
  const told = lines.map((phrases, i) =>
    phrases.map((words, k): Told => ({ words, of: about.lines[i]?.[k] ?? "nothing" })),
  );
  const whole = wrappingOf(told, letter);
  const isWhole = lines.every(({ length }) => length === 1);
  return isWhole ? [whole] : [whole, wrappingOf(each(told.flat()), letter)];
}

function each<T>(items: readonly T[]): readonly (readonly T[])[] {
  return items.map((item) => [item]);
}

function wrappingOf(phrases: Wrapping["phrases"], letter: number): Wrapping {
  const lines = phrases.map((line) => line.map(({ words }) => words).join(" "));
  const widths = lines.map((words) => textWidth(words, letter));
  const width = greatestOf(widths);
  const height = letter + (lines.length - 1) * letter * LEADING;
  return { lines, phrases, width, height, longest: widths.indexOf(width) };
}

function findPlace(search: Search, targets: readonly Target[], wrappings: readonly Wrapping[]): Place | null {
  let best: Place | null = null;
  for (const [angles, penalty] of [
    [ANGLES, 0],
    [OTHER_ANGLES, 8],
  ] as const) {
    for (const target of targets)
      for (const angle of angles) best = alongQuarters(search, target, angle, penalty, wrappings, best);
    if (best !== null) return best;
  }
  return best;
}

/** The four rays of an angle, one in each quarter. */
function alongQuarters(
  search: Search,
  target: Target,
  angle: number,
  penalty: number,
  wrappings: readonly Wrapping[],
  best: Place | null,
): Place | null {
  const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
  const { x0, x1, y0, y1 } = search.draft.area;
  const across = Math.sqrt((x1 - x0) ** 2 + (y1 - y0) ** 2);
  const { x, y } = target.center;
  let found = best;
  for (const sx of [1, -1])
    for (const sy of [1, -1]) {
      const limit = Math.min(search.worst, found?.cost ?? Infinity) - penalty;
      const reach = Math.min(target.radius + limit, across);
      const ray = { x, y, dx: sx * cos, dy: sy * sin, from: target.radius, reach };
      found = alongRay(search, ray, penalty, wrappings, found);
    }
  return found;
}

/**
 * The cheapest leader along this ray, where it costs less than the best so far. Room for the words is asked first, which is
 * cheap; what lies between them and the feature is looked for once, where there is any.
 */
function alongRay(
  search: Search,
  ray: Ray,
  penalty: number,
  wrappings: readonly Wrapping[],
  best: Place | null,
): Place | null {
  const { sight } = search;
  const extra = penalty + crowding(search, ray);
  if (SHORTEST + extra >= limitOf(search, best)) return best;
  let found = best;
  sight.blocked = ray.reach;
  sight.isSeen = false;
  const end = farthest(search, ray, wrappings);
  const shifts = wrappings.map((wrapping) => shiftOf(ray, wrapping, search.letter));
  for (
    let length = ray.from + SHORTEST;
    length < sight.blocked && length <= end;
    length += STEP + (length - ray.from) * GROWTH
  ) {
    const cost = length - ray.from + extra;
    if (cost >= limitOf(search, found)) return found;
    for (let i = 0; i < shifts.length; i++) {
      const shift = shifts[i];
      if (
        shift !== undefined &&
        isShiftFree(search.grid, ray, length, shift) &&
        cost + i * WRAPPED < limitOf(search, found)
      )
        found = placeAt(search, ray, length, wrappings[i], cost + i * WRAPPED, found);
      if (length >= sight.blocked) return found;
    }
  }
  return found;
}

/** Lower left and upper right corner of a block with its clearance, from the end of its leader. */
type Shift = Area;

function shiftOf({ dx }: Ray, { width, height, longest }: Wrapping, letter: number): Shift {
  const line = dx > 0 ? 0 : longest;
  const x = dx > 0 ? SHOULDER + TEXT_GAP : -SHOULDER - TEXT_GAP - width;
  const y = letter / 2 + line * letter * LEADING - height;
  return { x0: x - CLEARANCE, y0: y - CLEARANCE, x1: x + width + CLEARANCE, y1: y + height + CLEARANCE };
}

function isShiftFree(grid: FreeGrid, { x, y, dx, dy }: Ray, length: number, shift: Shift): boolean {
  const [ex, ey] = [x + dx * length, y + dy * length];
  return isGridFree(grid, ex + shift.x0, ey + shift.y0, ex + shift.x1, ey + shift.y1);
}

/** A leader of this length, where it is clear and costs less than the best so far. */
function placeAt(
  search: Search,
  ray: Ray,
  length: number,
  wrapping: Wrapping | undefined,
  cost: number,
  best: Place | null,
): Place | null {
  const { sight, block, obstacles } = search;
  if (wrapping === undefined) return best;
  setBlock(block, ray, length, wrapping, search.letter);
  if (!isClear(search)) return best;
  if (!sight.isSeen) look(obstacles, ray, sight);
  sight.isSeen = true;
  if (length >= sight.blocked) return best;
  const whole = cost + tollTo(sight, length);
  if (whole >= limitOf(search, best)) return best;
  const place = { ...placeOf(ray, wrapping, block), cost: whole };
  return isClearOfAll(search, place) ? place : best;
}

/** The longest leader along this ray, and a hair, whose words still lie in the area: beyond it they only go farther out. */
function farthest({ draft, letter }: Search, { x, y, dx, dy }: Ray, wrappings: readonly Wrapping[]): number {
  const { x0, x1, y0, y1 } = draft.area;
  let end = 0;
  for (const { width, height, longest } of wrappings) {
    const aside = SHOULDER + TEXT_GAP + width + CLEARANCE;
    const top = letter / 2 + (dx > 0 ? 0 : longest * letter * LEADING);
    const level = dx > 0 ? (x1 - x - aside) / dx : (x0 - x + aside) / dx;
    const upright = dy > 0 ? (y1 - y - top - CLEARANCE) / dy : (y0 - y - top + height + CLEARANCE) / dy;
    end = Math.max(end, Math.min(level, upright));
  }
  return end + 1e-6;
}

function limitOf({ worst }: Search, best: Place | null): number {
  return best === null ? worst : Math.min(worst, best.cost);
}

function placeOf({ x, y, dx, dy, from }: Ray, wrapping: Wrapping, block: Block): Omit<Place, "cost"> {
  return { tip: at(x + dx * from, y + dy * from), dx, dy, wrapping, block: { ...block } };
}

/** A narrower block is as bad as this much more leader. */
const WRAPPED = 12;
/** Leaders whose tips stand this near to each other share a corner, which is as bad as this much more leader. */
const CORNER = 14;
const SHARED_CORNER = 24;

function crowding({ placed }: Search, { x, y, dx, dy, from }: Ray): number {
  const [tx, ty] = [x + dx * from, y + dy * from];
  for (const { tip } of placed) if ((tip.x - tx) ** 2 + (tip.y - ty) ** 2 < CORNER ** 2) return SHARED_CORNER;
  return 0;
}

/** Where the words stand, their lower left corner, and the leader's elbow and foot; written over while a ray is tried. */
interface Block {
  x: number;
  y: number;
  width: number;
  height: number;
  level: number;
  elbow: number;
  foot: number;
}

/** The shoulder meets the first line at its beginning, or the longest one at its end. */
function setBlock(block: Block, { x, y, dx, dy }: Ray, length: number, wrapping: Wrapping, letter: number): void {
  const side = dx > 0 ? 1 : -1;
  const line = side > 0 ? 0 : wrapping.longest;
  block.elbow = x + dx * length;
  block.level = y + dy * length;
  block.foot = block.elbow + side * SHOULDER;
  block.width = wrapping.width;
  block.height = wrapping.height;
  block.x = side > 0 ? block.foot + TEXT_GAP : block.foot - TEXT_GAP - wrapping.width;
  block.y = block.level + letter / 2 + line * letter * LEADING - wrapping.height;
}

function isClear({ grid, placed, letter, block: { x, y, width, height, level, elbow, foot } }: Search): boolean {
  const c = CLEARANCE;
  if (!isGridFree(grid, x - c, y - c, x + width + c, y + height + c)) return false;
  if (!isGridFree(grid, Math.min(elbow, foot), level - 0.4, Math.max(elbow, foot), level + 0.4)) return false;
  const d = APART * letter;
  return placed.every(({ taken: t }) => x - d > t.x1 || x + width + d < t.x0 || y - d > t.y1 || y + height + d < t.y0);
}

/** The same against everything on the paper, also what the draft does not hold as its own; and the callouts placed before. */
function isClearOfAll(
  { draft, placed }: Search,
  { tip, block: { x, y, width, height, level, elbow } }: Place,
): boolean {
  const c = CLEARANCE;
  const own = { x0: x - c, y0: y - c, x1: x + width + c, y1: y + height + c };
  const corners = [at(own.x0, own.y0), at(own.x1, own.y0), at(own.x1, own.y1), at(own.x0, own.y1)];
  if (!isFree(draft, corners) || crossesText(draft.taken, tip, at(elbow, level))) return false;
  return placed.every(
    (other) =>
      !runsThrough(tip, at(elbow, level), other.taken) &&
      !runsThrough(other.tip, other.elbow, own) &&
      !runsThrough(other.elbow, other.foot, own),
  );
}

function runsThrough(from: PaperPoint, to: PaperPoint, { x0, y0, x1, y1 }: Area): boolean {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const [a, b] = [(x0 - from.x) / dx, (x1 - from.x) / dx];
  const [c, d] = [(y0 - from.y) / dy, (y1 - from.y) / dy];
  return Math.max(0, Math.min(a, b), Math.min(c, d)) < Math.min(1, Math.max(a, b), Math.max(c, d));
}

/** `tag` null: the callout tells nobody what it is of. */
function drawPlace({ tip, dx, dy, block, wrapping }: Place, letter: number, tag: string | null): Placed {
  const { x, y, width, height, level } = block;
  const elbow = at(block.elbow, level);
  const foot = at(block.foot, level);
  const baseline = (i: number) => at(x, y + height - letter - i * letter * LEADING);
  const words =
    tag === null
      ? wrapping.lines.map((line, i) => text("note", line, baseline(i), letter))
      : wrapping.phrases.flatMap((phrases, i) => toldLine(phrases, baseline(i), letter, tag));
  const item = group("callout", [
    stroke("leader", line(foot, elbow), line(elbow, tip)),
    arrowHead(tip, -dx, -dy, ARROW),
    ...words,
  ]);
  return { item, tip, elbow, foot, taken: { x0: x, y0: y, x1: x + width, y1: y + height } };
}

/** A line of words, each phrase a group of its own that says what it is of. */
function toldLine(phrases: readonly Told[], start: PaperPoint, letter: number, tag: string): readonly SceneItem[] {
  let { x } = start;
  return phrases.map(({ words, of }) => {
    const item = group("callout-part", [text("note", words, at(x, start.y), letter)], { of, tag });
    x += setWidth(`${words} `, letter, false);
    return item;
  });
}
