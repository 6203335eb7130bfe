/**
 * What a leader or a tag must keep clear of, as plain numbers: made once of what is drawn, asked many times without making
 * objects. Paper millimetres.
 */

import { marksOf, type TextItem, textBox } from "./occupied.js";
import type { PaperPoint, SceneItem, StrokeRole } from "./scene.js";

/** Flat lists; `add` appends, so that a trial is taken back by `cut`. */
export interface Obstacles {
  /** x0 y0 x1 y1 toll of each straight piece. */
  readonly segments: number[];
  /** x y radius toll of each circle's line. */
  readonly circles: number[];
  /** Of each text: x y of its lower left corner, unit vector along it, length, height. */
  readonly texts: number[];
  /** What crossing an extension line costs: Infinity where none may be crossed. */
  readonly extension: number;
}

const SEGMENT = 5;
const CIRCLE = 4;
const TEXT = 6;

/** What crossing a line is worth in millimetres of leader; a role that is not named is never crossed. */
const TOLLS: Readonly<Partial<Record<StrokeRole, number>>> = {
  concrete: 1,
  "base-plate": 1,
  centre: 1.5,
  outline: 2,
  fine: 5,
};

/** The same for an extension line, where it may be crossed. */
const EXTENSION_TOLL = 40;

/** Everything drawn, by what a leader pays for crossing it; `extensions`: whether it may cross extension lines at all. */
export function obstaclesOf(items: readonly SceneItem[], extensions: "at a toll" | "never" = "at a toll"): Obstacles {
  const extension = extensions === "never" ? Infinity : EXTENSION_TOLL;
  const obstacles: Obstacles = { segments: [], circles: [], texts: [], extension };
  for (const item of items) addObstacle(obstacles, item);
  return obstacles;
}

/** Appends a scene item. */
export function addObstacle(obstacles: Obstacles, item: SceneItem): void {
  if (item.kind === "group") for (const inner of item.items) addObstacle(obstacles, inner);
  else if (item.kind === "text") addText(obstacles, item);
  else addMarks(obstacles, item);
}

function addMarks(obstacles: Obstacles, item: Extract<SceneItem, { kind: "stroke" | "fill" }>): void {
  const { segments, circles, extension } = obstacles;
  const isExtension = item.kind === "stroke" && item.role === "extension";
  const toll = isExtension ? extension : item.kind === "stroke" ? (TOLLS[item.role] ?? Infinity) : Infinity;
  const isDrilled = item.kind === "stroke" && item.role === "fine";
  for (const mark of marksOf(item))
    if (mark.kind === "segment") segments.push(mark.from.x, mark.from.y, mark.to.x, mark.to.y, toll);
    else circles.push(mark.center.x, mark.center.y, mark.radius, isDrilled ? Infinity : toll);
}

function addText({ texts }: Obstacles, item: TextItem): void {
  const [low, right, , up] = textBox(item);
  if (low === undefined || right === undefined || up === undefined) return;
  const length = distance(low, right);
  if (length === 0) return;
  const height = distance(low, up);
  texts.push(low.x, low.y, (right.x - low.x) / length, (right.y - low.y) / length, length, height);
}

function distance(a: PaperPoint, b: PaperPoint): number {
  return Math.sqrt((b.x - a.x) ** 2 + (b.y - a.y) ** 2);
}

/** How much of each list there is: for `cut`. */
export type Count = readonly [number, number, number];

export function countObstacles({ segments, circles, texts }: Obstacles): Count {
  return [segments.length, circles.length, texts.length];
}

/** Takes back what was added since. */
export function cutObstacles(obstacles: Obstacles, [segments, circles, texts]: Count): void {
  obstacles.segments.length = segments;
  obstacles.circles.length = circles;
  obstacles.texts.length = texts;
}

/** A ray from a feature's centre: the leader that ends at the feature runs along it. */
export interface Ray {
  readonly x: number;
  readonly y: number;
  /** Unit vector, away from the feature. */
  readonly dx: number;
  readonly dy: number;
  /** The feature's own edge, and the farthest that is looked. */
  readonly from: number;
  readonly reach: number;
}

/** What a ray meets: from `blocked` on no leader can begin; before it, tolls at their distances. */
export interface Sight {
  blocked: number;
  /** Looked along already. */
  isSeen: boolean;
  readonly at: number[];
  readonly tolls: number[];
}

/** Looks along a ray; the sight is written over. */
export function look(obstacles: Obstacles, ray: Ray, sight: Sight): void {
  sight.blocked = ray.reach;
  sight.at.length = 0;
  sight.tolls.length = 0;
  meetTexts(obstacles, ray, sight);
  meetCircles(obstacles, ray, sight);
  meetSegments(obstacles, ray, sight);
}

/** What a leader of this length pays. */
export function tollTo({ at, tolls }: Sight, length: number): number {
  let sum = 0;
  for (let i = 0; i < at.length; i++) if ((at[i] ?? 0) < length) sum += tolls[i] ?? 0;
  return sum;
}

function meet(sight: Sight, at: number, toll: number): void {
  if (at >= sight.blocked) return;
  if (toll === Infinity) sight.blocked = at;
  else {
    sight.at.push(at);
    sight.tolls.push(toll);
  }
}

/** Past the end of a line that may not be crossed a leader keeps this far off. */
const LINE_CLEARANCE = 0.6;

function meetSegments({ segments }: Obstacles, { x, y, dx, dy, from }: Ray, sight: Sight): void {
  for (let i = 0; i < segments.length; i += SEGMENT) {
    const ax = (segments[i] ?? 0) - x;
    const ay = (segments[i + 1] ?? 0) - y;
    const ex = (segments[i + 2] ?? 0) - x - ax;
    const ey = (segments[i + 3] ?? 0) - y - ay;
    const toll = segments[i + 4] ?? 0;
    if (toll === Infinity && runsBeside(ax, ay, ex, ey, dx, dy, from)) meet(sight, from, toll);
    const across = dx * ey - dy * ex;
    if (across === 0) continue;
    const t = (ax * ey - ay * ex) / across;
    if (t <= from + 0.05 || t >= sight.blocked) continue;
    const s = (ax * dy - ay * dx) / across;
    const spare = toll === Infinity ? LINE_CLEARANCE / (Math.abs(ex) + Math.abs(ey)) : 0;
    if (s >= -spare && s <= 1 + spare) meet(sight, t, toll);
  }
}

/** About 14 degrees: a leader does not run closer beside a line that comes from the same feature. */
const BESIDE = Math.cos(0.25);

function runsBeside(ax: number, ay: number, ex: number, ey: number, dx: number, dy: number, from: number): boolean {
  const near = Math.min(ax * ax + ay * ay, (ax + ex) ** 2 + (ay + ey) ** 2);
  if (near > (from + 0.1) ** 2) return false;
  const far = ax * ax + ay * ay > near ? -1 : 1;
  return far * (ex * dx + ey * dy) > BESIDE * Math.sqrt(ex * ex + ey * ey);
}

/** A leader keeps this far off a hole that is not its own, and pays for running over the ends of its centre lines. */
const HOLE_CLEARANCE = 0.5;
const CROSS_CLEARANCE = 1.9;
const CROSS_TOLL = 14;

function meetCircles({ circles }: Obstacles, ray: Ray, sight: Sight): void {
  for (let i = 0; i < circles.length; i += CIRCLE) {
    const cx = (circles[i] ?? 0) - ray.x;
    const cy = (circles[i + 1] ?? 0) - ray.y;
    const along = cx * ray.dx + cy * ray.dy;
    const off = Math.abs(cx * ray.dy - cy * ray.dx);
    const radius = circles[i + 2] ?? 0;
    if (off > radius + CROSS_CLEARANCE) continue;
    const toll = circles[i + 3] ?? 0;
    if (toll !== Infinity) meetLine(ray, along, off, radius, toll, sight);
    else if (Math.abs(cx) + Math.abs(cy) > 0.02 || radius > ray.from + 0.02) meetHole(ray, along, off, radius, sight);
  }
}

function meetLine({ from }: Ray, along: number, off: number, radius: number, toll: number, sight: Sight): void {
  if (off >= radius) return;
  const half = Math.sqrt(radius * radius - off * off);
  if (along - half > from) meet(sight, along - half, toll);
  if (along + half > from) meet(sight, along + half, toll);
}

function meetHole({ from }: Ray, along: number, off: number, radius: number, sight: Sight): void {
  const solid = radius + HOLE_CLEARANCE;
  if (off < solid) {
    const half = Math.sqrt(solid * solid - off * off);
    if (along - half > from) meet(sight, along - half, Infinity);
    else if (along > from) meet(sight, from, Infinity);
    else if (along + half - HOLE_CLEARANCE > from) meet(sight, along + half - HOLE_CLEARANCE, Infinity);
    return;
  }
  if (along > from) meet(sight, along, CROSS_TOLL);
}

/** A leader keeps this far off a text. */
const TEXT_CLEARANCE = 0.8;

function meetTexts({ texts }: Obstacles, { x, y, dx, dy, from }: Ray, sight: Sight): void {
  for (let i = 0; i < texts.length; i += TEXT) {
    const ux = texts[i + 2] ?? 0;
    const uy = texts[i + 3] ?? 0;
    const px = x - (texts[i] ?? 0);
    const py = y - (texts[i + 1] ?? 0);
    const [u, v] = [px * ux + py * uy, py * ux - px * uy];
    const [du, dv] = [dx * ux + dy * uy, dy * ux - dx * uy];
    const enter = Math.max(enters(u, du, texts[i + 4] ?? 0), enters(v, dv, texts[i + 5] ?? 0));
    const leave = Math.min(leaves(u, du, texts[i + 4] ?? 0), leaves(v, dv, texts[i + 5] ?? 0));
    if (enter < leave && leave > from) meet(sight, Math.max(enter, from), Infinity);
  }
}

/** Where a point that moves from `u` by `du` comes into the stretch from 0 to `length`, clearance on both sides. */
function enters(u: number, du: number, length: number): number {
  if (du === 0) return u > -TEXT_CLEARANCE && u < length + TEXT_CLEARANCE ? -Infinity : Infinity;
  return ((du > 0 ? -TEXT_CLEARANCE : length + TEXT_CLEARANCE) - u) / du;
}

function leaves(u: number, du: number, length: number): number {
  if (du === 0) return Infinity;
  return ((du > 0 ? length + TEXT_CLEARANCE : -TEXT_CLEARANCE) - u) / du;
}
