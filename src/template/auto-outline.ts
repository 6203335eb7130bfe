/**
 * Automatic outlines: a rectangle centred on the box around the rods, large enough for the shop's edge, for nut and washer
 * with the rod's play, and, where it is carried by a form whose size is known, to reach across it; rounded up to the
 * shop's increment in overall size. Edge and seat rules hold by construction.
 */
import type { CornerTreatment, Point } from "../geometry/index.js";
import {
  cornerFaults,
  extentOfPoints,
  pointInNanometres,
  polygon,
  rectanglePoints,
  twiceDepthInside,
} from "../geometry/index.js";
import type { Base, Job, Offset } from "../job/model/job.js";
import type { PlacedRod } from "../rods/index.js";
import { formatWithUnit } from "../units/index.js";
import type { Length } from "../units/length.js";
import { NM_PER_MM, nanometres } from "../units/length.js";
import type { Outline } from "./outline-model.js";
import type { Need } from "./reach.js";
import { leastEdge, needsOf } from "./reach.js";

/** An outline never reaches across a form when that makes a side longer than this many of the shop's largest sides. */
const MOST_LARGEST_SIDES = 2;

interface Size {
  readonly x: number;
  readonly y: number;
}

/** The smallest outline by the rules above. */
export function sizeOutline(job: Job, base: Base, rods: readonly PlacedRod[], corner: CornerTreatment): Outline {
  const { shop, unit } = job;
  const center = patternCenter(rods);
  const clear = leastEdge(job, base.template);
  const needs = needsOf(job, base, rods, clear);
  const bare = sizeFor(center, needs);
  const form = reachAcrossForm(job, base, center, bare);
  const increment = Math.max(1, shop.increment.value);
  const size = fitCorners(center, roundUp(form.size, increment), needs, corner, increment);
  const say = (length: number) => formatWithUnit(length, unit);
  const rule = `hole to edge ${say(clear)}, room for nut and washer, rounded up to ${say(shop.increment.value)}`;
  const points = rectanglePoints(center, nanometres(size.x), nanometres(size.y));
  return {
    contour: polygon(points, corner),
    vertices: points.map((at) => ({ at, corner })),
    sized: form.how === null ? rule : `${rule}; ${form.how}`,
  };
}

/** Centre of the box around the rods, on the lattice. */
export function patternCenter(rods: readonly PlacedRod[]): Point {
  const { x0, y0, x1, y1 } = extentOfPoints(rods.map(({ center }) => center));
  return pointInNanometres(((x0 + x1) / 2) * NM_PER_MM, ((y0 + y1) / 2) * NM_PER_MM);
}

/** Overall size about `center` that gives every need its room: twice the offset plus twice the reach. */
function sizeFor(center: Point, needs: readonly Need[]): Size {
  const along = (axis: "x" | "y") =>
    needs.reduce((most, need) => Math.max(most, 2 * offset(need.center[axis], center[axis]) + need.twice), 0);
  return { x: along("x"), y: along("y") };
}

function offset(a: number, b: number): number {
  return Math.abs(nanometres(a * NM_PER_MM) - nanometres(b * NM_PER_MM));
}

function roundUp({ x, y }: Size, increment: number): Size {
  const up = (size: number) => Math.ceil(size / increment) * increment;
  return { x: up(x), y: up(y) };
}

/**
 * Carried by a form: longer one way, so that it bears on two opposite sides; the way that adds less to the plate, unless
 * that makes it longer than `MOST_LARGEST_SIDES` times the size from which plates tend to warp.
 */
function reachAcrossForm(
  { shop, unit }: Job,
  { concrete, template }: Base,
  center: Point,
  bare: Size,
): { readonly size: Size; readonly how: string | null } {
  if (template.support.kind === "missing" || template.support.value !== "form") return { size: bare, how: null };
  if (concrete.shape.kind === "missing") return { size: bare, how: "the form's size is not known" };
  const shape = concrete.shape.value;
  const across = {
    x: formReach(shape.kind === "circle" ? shape.diameter : shape.x, "x", concrete.at, center, shop.bearing.value),
    y: formReach(shape.kind === "circle" ? shape.diameter : shape.y, "y", concrete.at, center, shop.bearing.value),
  };
  const alongX = { x: Math.max(bare.x, across.x), y: bare.y };
  const alongY = { x: bare.x, y: Math.max(bare.y, across.y) };
  const size = alongX.x * alongX.y <= alongY.x * alongY.y ? alongX : alongY;
  const most = MOST_LARGEST_SIDES * shop.largestSide.value;
  const bearing = formatWithUnit(shop.bearing.value, unit);
  if (Math.max(size.x, size.y) > most) return { size: bare, how: "the form is too wide to reach across" };
  return { size, how: `reaches across the form with ${bearing} bearing along ${size === alongX ? "x" : "y"}` };
}

function formReach(side: Length, axis: "x" | "y", at: Offset, center: Point, bearing: Length): number {
  return side + 2 * bearing + 2 * offset(at[axis] / NM_PER_MM, center[axis]);
}

/** Grows the outline both ways by the fewest increments with which its treated corners leave every need its room. */
function fitCorners(
  center: Point,
  start: Size,
  needs: readonly Need[],
  corner: CornerTreatment,
  increment: number,
): Size {
  const grown = (steps: number) => ({ x: start.x + steps * increment, y: start.y + steps * increment });
  const fits = (steps: number) => leavesRoom(center, grown(steps), needs, corner);
  return grown(corner.kind === "square" ? 0 : fewest(fits));
}

/** The smallest whole number that passes, where every larger one passes too. */
function fewest(passes: (steps: number) => boolean): number {
  if (passes(0)) return 0;
  let most = 1;
  while (!passes(most)) most *= 2;
  let least = most / 2;
  while (most - least > 1) {
    const middle = Math.floor((least + most) / 2);
    if (passes(middle)) most = middle;
    else least = middle;
  }
  return most;
}

function leavesRoom(center: Point, size: Size, needs: readonly Need[], corner: CornerTreatment): boolean {
  const points = rectanglePoints(center, nanometres(size.x), nanometres(size.y));
  if (cornerFaults(points, corner).length > 0) return false;
  const contour = polygon(points, corner);
  return needs.every(({ center: at, twice }) => twiceDepthInside(at, contour) >= twice);
}
