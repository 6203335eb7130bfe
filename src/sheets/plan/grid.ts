/** How far each grid line is drawn: over the crossings that are in use, to one end where its bubble stands. Plan millimetres. */
import { type Extent, extentOfPoints, joinExtents, NO_EXTENT, type Point, pointAt } from "../../geometry/index.js";
import type { GridLine, Offset } from "../../job/index.js";
import type { Plan } from "../../plan/index.js";
import { greatestOf, leastOf } from "../../units/extremes.js";
import { toMillimetres } from "../../units/index.js";

/**
 * A line as drawn. The bubble stands at `to`, or at the end of the arc. Arcs run counter-clockwise from `start` over `sweep`,
 * in degrees from plan east.
 */
export type LineSpan =
  | { readonly kind: "straight"; readonly line: GridLine; readonly from: Point; readonly to: Point }
  | {
      readonly kind: "arc";
      readonly line: GridLine;
      readonly center: Point;
      readonly radius: number;
      readonly start: number;
      readonly sweep: number;
    };

/** True for a line that is not of the building's own two axes. */
export function isSlanting({ kind }: GridLine): boolean {
  return kind !== "x" && kind !== "y";
}

/** Crossings in use, by line name. */
type Used = ReadonlyMap<string, readonly Point[]>;

/** Room that is drawn where a job has no crossing in use to go by. */
const BARE = 6000;

/** Box around everything that is placed and around the x and y lines, never empty. */
export function gridExtent({ spec, bases, extent }: Plan): Extent {
  const crossings = extentOfPoints(bases.map(({ crossing }) => crossing));
  const placed = Number.isFinite(extent.x0) ? joinExtents(extent, crossings) : NO_EXTENT;
  const known = spec.lines.reduce((box, line) => joinExtents(box, lineBox(line)), placed);
  const [x0, x1] = wide(known.x0, known.x1);
  const [y0, y1] = wide(known.y0, known.y1);
  return { x0, y0, x1, y1 };
}

function wide(low: number, high: number): readonly [number, number] {
  if (!Number.isFinite(low)) return [-BARE, BARE];
  return high - low < 1 ? [low - BARE / 4, high + BARE / 4] : [low, high];
}

/** What a line says of the box by itself; infinite the other way. */
function lineBox(line: GridLine): Extent {
  switch (line.kind) {
    case "x":
      return { ...NO_EXTENT, x0: toMillimetres(line.at), x1: toMillimetres(line.at) };
    case "y":
      return { ...NO_EXTENT, y0: toMillimetres(line.at), y1: toMillimetres(line.at) };
    case "skewed":
    case "radial":
    case "arc":
      return NO_EXTENT;
  }
}

/** Every line of the grid; `pad` is how far a line runs past its last crossing. */
export function lineSpans(plan: Plan, box: Extent, pad: number): readonly LineSpan[] {
  const used = usedCrossings(plan);
  return plan.spec.lines.map((line) => spanOf(line, plan.spec.lines, used, box, pad));
}

function usedCrossings({ bases }: Plan): Used {
  const used = new Map<string, Point[]>();
  for (const { lines, crossing } of bases)
    for (const { name } of lines) {
      const points = used.get(name);
      if (points === undefined) used.set(name, [crossing]);
      else points.push(crossing);
    }
  return used;
}

function spanOf(line: GridLine, lines: readonly GridLine[], used: Used, box: Extent, pad: number): LineSpan {
  const own = used.get(line.name) ?? [];
  switch (line.kind) {
    case "x": {
      const x = toMillimetres(line.at);
      const low = own.length > 0 ? leastOf(own.map(({ y }) => y)) : box.y0;
      return { kind: "straight", line, from: { x, y: low - pad }, to: { x, y: box.y1 } };
    }
    case "y": {
      const y = toMillimetres(line.at);
      const high = own.length > 0 ? greatestOf(own.map(({ x }) => x)) : box.x1;
      return { kind: "straight", line, from: { x: high + pad, y }, to: { x: box.x0, y } };
    }
    case "skewed":
      return skewedSpan(line, lines, used, box, pad);
    case "radial":
      return radialSpan(line, lines, used, box, pad);
    case "arc":
      return arcSpan(line, lines, used, box, pad);
  }
}

type Kind<K extends GridLine["kind"]> = Extract<GridLine, { kind: K }>;

/** Parallel lines end abreast, at the end that points up (or left, where they lie flat). */
function skewedSpan(line: Kind<"skewed">, lines: readonly GridLine[], used: Used, box: Extent, pad: number): LineSpan {
  const { cos, sin } = headUp(line.degrees);
  const along = ({ x, y }: Point) => x * cos + y * sin;
  const family = lines.filter((other) => other.kind === "skewed" && isParallel(other.degrees, line.degrees));
  const all = family.flatMap(({ name }) => used.get(name) ?? []).map(along);
  const own = (used.get(line.name) ?? []).map(along);
  const through = pointOf(line.through);
  const base = along(through);
  const reach = Math.hypot(box.x1 - box.x0, box.y1 - box.y0) / 2;
  const low = own.length > 0 ? leastOf(own) : all.length > 0 ? leastOf(all) : base - reach;
  const high = all.length > 0 ? greatestOf(all) : base + reach;
  const at = (t: number) => ({ x: through.x + (t - base) * cos, y: through.y + (t - base) * sin });
  return { kind: "straight", line, from: at(low - pad), to: at(high + pad) };
}

/** Directions that differ by a multiple of 180 degrees. */
export function isParallel(a: number, b: number): boolean {
  const apart = (((a - b) % 180) + 180) % 180;
  return Math.min(apart, 180 - apart) < 1e-9;
}

/** The direction, or its opposite, that points up on the plan; left where it lies within 20 degrees of level. */
function headUp(degrees: number): { readonly cos: number; readonly sin: number } {
  const cos = Math.cos((degrees * Math.PI) / 180);
  const sin = Math.sin((degrees * Math.PI) / 180);
  const isFlat = Math.abs(sin) < Math.sin(Math.PI / 9);
  const isRight = isFlat ? cos < 0 : sin > 0;
  return isRight ? { cos, sin } : { cos: -cos, sin: -sin };
}

/** Rays of one centre end abreast, at their outer ends. */
function radialSpan(line: Kind<"radial">, lines: readonly GridLine[], used: Used, box: Extent, pad: number): LineSpan {
  const center = pointOf(line.center);
  const family = lines.filter((other) => other.kind === "radial" && sameOffset(other.center, line.center));
  const away = ({ x, y }: Point) => Math.hypot(x - center.x, y - center.y);
  const all = family.flatMap(({ name }) => used.get(name) ?? []).map(away);
  const own = (used.get(line.name) ?? []).map(away);
  const reach = Math.hypot(box.x1 - box.x0, box.y1 - box.y0);
  const high = all.length > 0 ? greatestOf(all) : reach;
  const low = Math.max(0, (own.length > 0 ? leastOf(own) : all.length > 0 ? leastOf(all) : pad) - pad);
  const [cos, sin] = [Math.cos((line.degrees * Math.PI) / 180), Math.sin((line.degrees * Math.PI) / 180)];
  const at = (t: number) => ({ x: center.x + t * cos, y: center.y + t * sin });
  return { kind: "straight", line, from: at(low), to: at(high + pad) };
}

/** Arcs of one centre run over the same angles. */
function arcSpan(line: Kind<"arc">, lines: readonly GridLine[], used: Used, box: Extent, pad: number): LineSpan {
  const center = pointOf(line.center);
  const radius = toMillimetres(line.radius);
  const family = lines.filter((other) => other.kind === "arc" && sameOffset(other.center, line.center));
  const points = family.flatMap(({ name }) => used.get(name) ?? []);
  const middle = { x: (box.x0 + box.x1) / 2, y: (box.y0 + box.y1) / 2 };
  const { start, sweep } = anglesOver(points.length > 0 ? points : [middle], center);
  const extra = (pad / Math.max(radius, pad)) * (180 / Math.PI) + (points.length > 0 ? 0 : 30);
  if (sweep + 2 * extra >= 350) return { kind: "arc", line, center, radius, start: start - 170, sweep: 340 };
  return { kind: "arc", line, center, radius, start: start - extra, sweep: sweep + 2 * extra };
}

/** The least sweep, counter-clockwise, that holds the directions of all points: it leaves the widest gap out. */
function anglesOver(points: readonly Point[], center: Point): { readonly start: number; readonly sweep: number } {
  const angles = points
    .map(({ x, y }) => (Math.atan2(y - center.y, x - center.x) * 180) / Math.PI)
    .toSorted((a, b) => a - b);
  let best = { start: angles[0] ?? 0, gap: -1 };
  angles.forEach((angle, i) => {
    const next = angles[i + 1] ?? (angles[0] ?? 0) + 360;
    if (next - angle > best.gap) best = { start: next, gap: next - angle };
  });
  return { start: best.start % 360, sweep: 360 - best.gap };
}

function sameOffset(a: Offset, b: Offset): boolean {
  return a.x === b.x && a.y === b.y;
}

function pointOf({ x, y }: Offset): Point {
  return pointAt(x, y);
}

/** Square distance of a point from a line, signed along the line's measuring direction: east, north, left of it, outwards. */
export function distanceFrom(line: GridLine, at: Point): number {
  switch (line.kind) {
    case "x":
      return at.x - toMillimetres(line.at);
    case "y":
      return at.y - toMillimetres(line.at);
    case "skewed":
      return leftOf(pointOf(line.through), line.degrees, at);
    case "radial":
      return leftOf(pointOf(line.center), line.degrees, at);
    case "arc": {
      const center = pointOf(line.center);
      return Math.hypot(at.x - center.x, at.y - center.y) - toMillimetres(line.radius);
    }
  }
}

function leftOf(from: Point, degrees: number, at: Point): number {
  const turn = (degrees * Math.PI) / 180;
  return (at.y - from.y) * Math.cos(turn) - (at.x - from.x) * Math.sin(turn);
}

/** Word of the side on which a point lies: E, W, N, S; LEFT or RIGHT looking along the line; OUT or IN. */
export function sideWord(line: GridLine, distance: number): string {
  if (distance === 0) return "";
  const isMore = distance > 0;
  switch (line.kind) {
    case "x":
      return isMore ? "E" : "W";
    case "y":
      return isMore ? "N" : "S";
    case "skewed":
    case "radial":
      return compass(line.degrees + (isMore ? 90 : -90));
    case "arc":
      return isMore ? "OUT" : "IN";
  }
}

const COMPASS = ["E", "NE", "N", "NW", "W", "SW", "S", "SE"];

/** Nearest of the eight points of the plan's compass to a direction, degrees counter-clockwise from plan east. */
function compass(degrees: number): string {
  return COMPASS[((Math.round(degrees / 45) % 8) + 8) % 8] ?? "";
}
