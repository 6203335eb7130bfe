/** Labels beside holes: the tag of a rod, or the note of a drilled hole. */
import type { Extent, Point } from "../../geometry/index.js";
import { gapToExtent, millimetresBetween } from "../../geometry/index.js";
import { greatestOf } from "../../units/extremes.js";
import type { Length } from "../../units/length.js";
import { NM_PER_MM } from "../../units/length.js";
import type { Mark, MarkKind, OmittedMark } from "../model.js";
import type { Disc, Ground } from "./ground.js";
import { easyGround, near, take } from "./ground.js";
import type { Block } from "./lettering.js";
import { lettering } from "./lettering.js";
import type { Candidate } from "./placing.js";
import { boxOf, firstFree, roomOf, toMark } from "./placing.js";

/** A label to be placed beside `hole`; `seat` is the larger disc that a nut or washer covers. */
export interface Label {
  readonly kind: MarkKind;
  readonly text: string;
  readonly hole: Disc;
  readonly seat: Disc;
}

/** Labels placed, those left out, and the ground that is left. */
export interface Placed {
  readonly marks: readonly Mark[];
  readonly omitted: readonly OmittedMark[];
  readonly ground: Ground;
  /** How many stand where a nut or washer will cover them. */
  readonly covered: number;
}

/** Places every label at one letter height; `lastResort` allows places under nuts and washers. */
export function placeLabels(bare: Ground, labels: readonly Label[], height: Length, lastResort: boolean): Placed {
  const shapes = new Map<string, Shapes>();
  const marks: Mark[] = [];
  const omitted: OmittedMark[] = [];
  let [ground, covered] = [bare, 0];
  for (const label of labels) {
    const found = placeLabel(ground, label, shapesOf(shapes, label.text, height), height, lastResort);
    if (found === null) {
      omitted.push(noRoom(label));
      continue;
    }
    marks.push(toMark(label.kind, label.text, found.candidate, height));
    ground = take(ground, [roomOf(found.candidate, height)]);
    covered += found.covered ? 1 : 0;
  }
  return { marks, omitted, ground, covered };
}

function noRoom({ kind, text }: Label): OmittedMark {
  return { kind, text, cause: "room" };
}

/** The ways to write a label: on one line, on two, upwards. */
type Shapes = readonly Block[];

function shapesOf(known: Map<string, Shapes>, text: string, height: Length): Shapes {
  const found = known.get(text);
  if (found !== undefined) return found;
  const mm = height / NM_PER_MM;
  const words = text.split(" ").filter((word) => word !== "");
  const stacked = words.length > 1 ? [lettering(words, mm)] : [];
  const shapes = [lettering([text], mm), ...stacked, lettering([text], mm, true)];
  known.set(text, shapes);
  return shapes;
}

function placeLabel(
  ground: Ground,
  { hole, seat }: Label,
  shapes: Shapes,
  height: Length,
  lastResort: boolean,
): { readonly candidate: Candidate; readonly covered: boolean } | null {
  const mm = height / NM_PER_MM;
  const outward = sidesOutward(hole.center, ground);
  const least = Math.max(seat.radius, hole.radius) + ground.clearance;
  const most = least + mm;
  const reach = most + greatestOf(shapes.map(({ width, height: tall }) => Math.hypot(width, tall)));
  const around = near(ground, hole.center, reach + ground.clearance + mm);
  const others = near(ground, hole.center, reach + CLEARLY * most).holes.filter(({ center }) => center !== hole.center);
  const attempt = (free: Ground, distances: readonly number[], offSeats: boolean) =>
    firstFree(free, beside(hole.center, shapes, distances, outward, others), mm, offSeats);
  const easy = easyGround(around, mm);
  const nearest = Math.max(least, hole.radius + easy.clearance);
  const open = attempt(easy, [nearest, least + mm / 2, most], true) ?? attempt(around, [least, most], true);
  if (open !== null) return { candidate: open, covered: false };
  const under = lastResort ? attempt(around, [hole.radius + ground.clearance, least], false) : null;
  return under === null ? null : { candidate: under, covered: true };
}

/** Signs towards the nearer edges: labels are tried outwards first. */
function sidesOutward({ x, y }: Point, { extent }: Ground): { readonly x: number; readonly y: number } {
  return { x: 2 * x < extent.x0 + extent.x1 ? -1 : 1, y: 2 * y < extent.y0 + extent.y1 ? -1 : 1 };
}

/** Eight directions round a hole: outwards along x, outwards along y, inwards, then the corners. */
const DIRECTIONS = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
] as const;

/** How many times nearer a label must stand to its own hole than to any other. */
const CLEARLY = 1.25;

/** Candidates nearest first; a place that is not clearly nearer to this hole than to any other would mislead. */
function* beside(
  center: Point,
  shapes: Shapes,
  distances: readonly number[],
  outward: { readonly x: number; readonly y: number },
  others: readonly Disc[],
): Generator<Candidate> {
  for (const distance of distances) {
    for (const block of shapes) {
      for (const [dx, dy] of DIRECTIONS) {
        const candidate = { block, at: placeBeside(center, block, distance, dx * outward.x, dy * outward.y) };
        if (isItsOwn(boxOf(candidate), center, others)) yield candidate;
      }
    }
  }
}

/** True where both the box and its middle are nearer to the hole than to any other. */
function isItsOwn(box: Extent, center: Point, others: readonly Disc[]): boolean {
  const own = gapToExtent(center, box);
  const middle = { x: (box.x0 + box.x1) / 2, y: (box.y0 + box.y1) / 2 };
  const ownMiddle = millimetresBetween(middle, center);
  return others.every(
    (other) => gapToExtent(other.center, box) > CLEARLY * own && millimetresBetween(other.center, middle) > ownMiddle,
  );
}

/** Lower left of a block whose box is `distance` from the centre, in the direction of the signs dx, dy. */
function placeBeside(center: Point, { width, height }: Block, distance: number, dx: number, dy: number): Point {
  const along = dx !== 0 && dy !== 0 ? distance * Math.SQRT1_2 : distance;
  const low = (at: number, size: number, sign: number) =>
    sign === 0 ? at - size / 2 : sign > 0 ? at + along : at - along - size;
  return { x: low(center.x, width, dx), y: low(center.y, height, dy) };
}
