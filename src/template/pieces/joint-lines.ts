/** Where a plate is parted: along radii of a ring, else across its longer side; clear of holes and of the nuts around them. */
import type { Contour, PartingLine, Point } from "../../geometry/index.js";
import { extentOf, millimetresBetween, snap, turnOf } from "../../geometry/index.js";
import type { Job, RodGroup } from "../../job/model/job.js";
import type { PlacedRod } from "../../rods/index.js";
import { leastOf } from "../../units/extremes.js";
import { NM_PER_MM } from "../../units/length.js";
import type { Hole, Plate } from "../model.js";
import { seatReach } from "../reach.js";

/** Lines, and what they part. */
export interface JointLines {
  readonly lines: readonly PartingLine[];
  /** Which segment a point lies in. */
  readonly cellOf: (at: Point) => number;
  /** Directions of joints along radii, degrees counter-clockwise from +x, ascending; null for joints across the plate. */
  readonly degrees: readonly number[] | null;
  /** Every joint has the room that it needs. */
  readonly isClear: boolean;
  /** Turns each segment so that its middle lies at the top of its own axes. */
  readonly turns: readonly number[];
}

/** A round that joints keep off. Millimetres. */
interface Obstacle {
  readonly center: Point;
  readonly radius: number;
}

/** The joints of a plate in so many segments, clear of holes, seats of nuts and the orientation notch as far as can be; `needOn`: the room that a joint of this width needs. */
export function jointLines(
  job: Job,
  plate: Plate,
  rods: readonly PlacedRod[],
  count: number,
  needOn: (width: number) => number,
): JointLines {
  const obstacles = obstaclesOf(job, plate, rods);
  const center = ringCenter(plate);
  return center === null
    ? cutsAcross(job, plate.region.outer, obstacles, count, needOn(0))
    : radii(plate.region.outer, center, obstacles, count, needOn(ringWidth(plate, center)));
}

/** The middle of a round plate that is open there; null of any other. */
function ringCenter({ region, keyed, holes }: Plate): Point | null {
  const round = keyed?.bare ?? region.outer;
  if (round.kind !== "circle") return null;
  const isOpen = holes.some(({ role, contour }) => role === "opening" && isAbout(contour, round.center));
  return isOpen ? round.center : null;
}

function isAbout(contour: Contour, center: Point): boolean {
  return contour.kind === "circle" && millimetresBetween(contour.center, center) === 0;
}

/** Of the steel between the opening in the middle and the outline. */
function ringWidth({ region, keyed, holes }: Plate, center: Point): number {
  const round = keyed?.bare ?? region.outer;
  const opening = holes.find(({ role, contour }) => role === "opening" && isAbout(contour, center))?.contour;
  const across = [round, opening].map((each) => (each?.kind === "circle" ? each.diameter : 0));
  return ((across[0] ?? 0) - (across[1] ?? 0)) / 2 / NM_PER_MM;
}

function obstaclesOf({ shop }: Job, { holes, keyed }: Plate, rods: readonly PlacedRod[]): readonly Obstacle[] {
  const groups = new Map<string, RodGroup>(rods.map(({ tag, group }) => [tag, group]));
  const around = holes
    .filter(({ role }) => role !== "opening")
    .map((hole) => {
      const group = groups.get(hole.tag);
      const seat = group === undefined ? 0 : seatReach(group, shop) / 2 / NM_PER_MM;
      return { center: hole.center, radius: Math.max(radiusOf(hole), seat) };
    });
  const notch = keyed === null ? [] : [{ center: keyed.at, radius: Math.max(keyed.x, keyed.y) / NM_PER_MM }];
  return [...around, ...notch];
}

function radiusOf({ shape }: Hole): number {
  const across = shape.kind === "circle" ? shape.diameter : Math.max(shape.width, shape.height);
  return across / 2 / NM_PER_MM;
}

/**
 * Equal sectors, turned to where the nearest obstacle is farthest; of several such turns the least. Where a joint has no room
 * so, each moves by itself as little as gives it its room.
 */
function radii(outer: Contour, center: Point, obstacles: readonly Obstacle[], count: number, need: number): JointLines {
  const hasRoom = (each: number) => roomOn(center, obstacles, [each]) >= need - SAME_ROOM;
  const degrees = joints(center, obstacles, count, hasRoom);
  const [start = 0] = degrees;
  const { x0, y0, x1, y1 } = extentOf(outer);
  const reach = x1 - x0 + y1 - y0;
  const lines = degrees.map((each, i): PartingLine => {
    const { cos, sin } = turnOf(each);
    const to = { x: center.x + reach * cos, y: center.y + reach * sin };
    return { from: center, to, left: i, right: (i + count - 1) % count };
  });
  const cellOf = ({ x, y }: Point) => {
    const turned = (Math.atan2(y - center.y, x - center.x) * 180) / Math.PI - start;
    const from = ((turned % 360) + 360) % 360;
    return degrees.findLastIndex((each) => each - start <= from);
  };
  const turns = degrees.map((each, i) => 90 - (each + (degrees[i + 1] ?? start + 360)) / 2);
  return { lines, cellOf, degrees, isClear: degrees.every(hasRoom), turns };
}

/** Directions of the joints, ascending from 0 to 360 degrees. */
function joints(
  center: Point,
  obstacles: readonly Obstacle[],
  count: number,
  hasRoom: (degrees: number) => boolean,
): readonly number[] {
  const sector = 360 / count;
  const start = bestStart(center, obstacles, count);
  const equal = Array.from({ length: count }, (_, i) => start + i * sector);
  if (equal.every(hasRoom)) return equal;
  const moved = equal.map((ideal) => nearby(ideal, sector / MOST_MOVED).find(hasRoom) ?? ideal);
  return moved.map((each) => tidy((each + 360) % 360)).sort((a, b) => a - b);
}

/** A joint moves by no more than this part of a sector. */
const MOST_MOVED = 4;

/** Directions from an ideal one on, the nearest first. */
function nearby(ideal: number, most: number): readonly number[] {
  const count = 2 * Math.floor(most / STEP) + 1;
  return Array.from({ length: count }, (_, i) => tidy(ideal + (i % 2 === 0 ? -1 : 1) * Math.ceil(i / 2) * STEP));
}

/** Turns are tried in steps of this many degrees, and midway between neighbouring holes. */
const STEP = 0.25;
/** Angles are whole multiples of this, degrees: what a drawing can say. */
const FINEST = 0.01;

function bestStart(center: Point, obstacles: readonly Obstacle[], count: number): number {
  const sector = 360 / count;
  const found = candidates(center, obstacles, sector)
    .map((start) => ({ start, room: roomAt(center, obstacles, start, count) }))
    .reduce((best, each) => (each.room > best.room + SAME_ROOM ? each : best), { start: 0, room: -Infinity });
  return found.start;
}

/** Rooms that differ by less are one, millimetres. */
const SAME_ROOM = 1e-3;

function candidates(center: Point, obstacles: readonly Obstacle[], sector: number): readonly number[] {
  const steps = Array.from({ length: Math.ceil(sector / STEP) }, (_, i) => i * STEP);
  const angles = obstacles
    .map((each) => (Math.atan2(each.center.y - center.y, each.center.x - center.x) * 180) / Math.PI)
    .map((angle) => ((angle % sector) + sector) % sector)
    .sort((a, b) => a - b);
  const between = angles.map((angle, i) => ((angle + (angles[i + 1] ?? (angles[0] ?? 0) + sector)) / 2) % sector);
  const inside = [...steps, ...between.map((angle) => Math.round(angle / FINEST) * FINEST)].map(tidy);
  return [...new Set(inside)].filter((angle) => angle < sector).sort((a, b) => a - b);
}

/** Without the noise of a sum of hundredths. */
function tidy(degrees: number): number {
  return Math.round(degrees * 1e6) / 1e6;
}

function roomAt(center: Point, obstacles: readonly Obstacle[], start: number, count: number): number {
  const directions = Array.from({ length: count }, (_, i) => start + (i * 360) / count);
  return roomOn(center, obstacles, directions);
}

/** What is left between rays in these directions and the nearest obstacle, millimetres. */
function roomOn(center: Point, obstacles: readonly Obstacle[], directions: readonly number[]): number {
  const rays = directions.map((each) => turnOf(each));
  const fromRay = ({ center: at, radius }: Obstacle) => {
    const [dx, dy] = [at.x - center.x, at.y - center.y];
    const away = rays.map(({ cos, sin }) =>
      dx * cos + dy * sin > 0 ? Math.abs(dx * sin - dy * cos) : Math.hypot(dx, dy),
    );
    return leastOf(away) - radius;
  };
  return leastOf(obstacles.map(fromRay), Infinity);
}

/** Across the longer side: at equal widths, each moved by the shop's increment as little as gives it its room. */
function cutsAcross(
  { shop }: Job,
  outer: Contour,
  obstacles: readonly Obstacle[],
  count: number,
  need: number,
): JointLines {
  const box = extentOf(outer);
  const axis = box.x1 - box.x0 >= box.y1 - box.y0 ? "x" : "y";
  const [low, high] = axis === "x" ? [box.x0, box.x1] : [box.y0, box.y1];
  const width = (high - low) / count;
  const step = Math.max(1, shop.increment.value) / NM_PER_MM;
  const room = (place: number) => roomAcross(place, axis, obstacles);
  const hasRoom = (place: number) => room(place) >= need - SAME_ROOM;
  const at = Array.from({ length: count - 1 }, (_, i) => {
    return clearPlace(low + (i + 1) * width, { step, most: width / 2, room, hasRoom });
  });
  const [from, to] = axis === "x" ? [box.y1 + width, box.y0 - width] : [box.x0 - width, box.x1 + width];
  const on = (place: number, along: number) => (axis === "x" ? { x: place, y: along } : { x: along, y: place });
  const lines = at.map((place, i): PartingLine => {
    return { from: on(place, from), to: on(place, to), left: i + 1, right: i };
  });
  const cellOf = (point: Point) => at.filter((place) => point[axis] > place).length;
  return { lines, cellOf, degrees: null, isClear: at.every(hasRoom), turns: Array.from({ length: count }, () => 0) };
}

interface Moving {
  readonly step: number;
  readonly most: number;
  readonly room: (place: number) => number;
  readonly hasRoom: (place: number) => boolean;
}

/** Between a line across the plate and the nearest obstacle. */
function roomAcross(place: number, axis: "x" | "y", obstacles: readonly Obstacle[]): number {
  return leastOf(
    obstacles.map(({ center, radius }) => Math.abs(center[axis] - place) - radius),
    Infinity,
  );
}

/** The nearest place with its room, else the one with the most of it. */
function clearPlace(ideal: number, { step, most, room, hasRoom }: Moving): number {
  const steps = Math.floor(most / step);
  const places = Array.from(
    { length: 2 * steps + 1 },
    (_, i) => ideal + (i % 2 === 0 ? -1 : 1) * Math.ceil(i / 2) * step,
  );
  const clear = places.find(hasRoom);
  const best = places.reduce((a, b) => (room(b) > room(a) + SAME_ROOM ? b : a), ideal);
  return snap(clear ?? best);
}
