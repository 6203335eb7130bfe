/** Base plate and concrete around a template: how much of each is drawn, and where each stands from the working point. */
import type { Extent } from "../geometry/vocabulary.js";
import type { Base, Input, Offset, PlanShape } from "../job/model/job.js";
import { formatLength, type Length, toMillimetres, type Unit } from "../units/index.js";
import { at, circle, line, strokeOf } from "./items.js";
import { onPaper, type View } from "./plan-shapes.js";
import type { SheetRequest } from "./request.js";
import type { PaperPoint, PathPart, SceneItem } from "./scene.js";
import { type Spelling, spellingOf } from "./spelling.js";

/** A base plate or pier in base axes. `drawn` is the part of it that the sheet shows: break lines stand where it goes on. */
export interface Neighbour {
  readonly name: "BASE PLATE" | "CONCRETE";
  readonly shape: PlanShape;
  readonly at: Offset;
  readonly extent: Extent;
  readonly drawn: Extent;
  /** `CONCRETE 24 × 24, CENTER AT X 3, Y -2 FROM W.P.`, for the legend. */
  readonly words: string;
}

/** Those that are drawn, and those too far off or too large to be drawn without shrinking the template. */
export interface Neighbours {
  readonly drawn: readonly Neighbour[];
  readonly omitted: readonly Neighbour[];
}

interface NeighbourInput {
  readonly base: Pick<Base, "basePlate" | "concrete" | "template">;
  readonly measures: { readonly extent: Extent };
  readonly job: Pick<SheetRequest["job"], "unit" | "editions">;
}

type Placed = Omit<Neighbour, "words">;

/** How far past the template a neighbour is drawn, as shares of the template's side: one that reaches past `whole` is cut off at `cut`. */
interface Reach {
  readonly whole: number;
  readonly cut: number;
}

const USUAL: Reach = { whole: 0.35, cut: 0.2 };
const CLOSE: Reach = { whole: 0.12, cut: 0.1 };

/** The same cut off closer to the template, where its plan finds a larger scale; null where that would leave one of them out. */
export function closeNeighboursOf(input: NeighbourInput, usual: Neighbours): Neighbours | null {
  const close = neighboursOf(input, CLOSE);
  const isSame = close.drawn.every(({ drawn }, i) =>
    SIDES.every((side) => drawn[side] === usual.drawn[i]?.drawn[side]),
  );
  return isSame || close.drawn.length < usual.drawn.length ? null : close;
}

/** Base plate and concrete where they are known and near; concrete that carries the template as far as it is near. */
export function neighboursOf({ base, measures, job }: NeighbourInput, reach = USUAL): Neighbours {
  const { basePlate, concrete } = base;
  const name = (words: Neighbour["name"], shape: Input<PlanShape>, place: Offset) => {
    const neighbour = neighbourOf(words, shape, place, measures.extent, reach);
    return neighbour === null
      ? null
      : { ...neighbour, words: neighbourWords(neighbour, job.unit, spellingOf(job.editions)) };
  };
  const known = [
    name("BASE PLATE", basePlate.shape, basePlate.at),
    name("CONCRETE", concrete.shape, concrete.at),
  ].filter((neighbour) => neighbour !== null);
  const bears = base.template.support.kind === "given" && base.template.support.value === "form";
  const isDrawn = (neighbour: Placed) =>
    isWhole(neighbour) || ((reach === CLOSE || (bears && neighbour.name === "CONCRETE")) && showsEdge(neighbour));
  return { drawn: known.filter(isDrawn), omitted: known.filter((neighbour) => !isDrawn(neighbour)) };
}

function neighbourOf(
  name: Neighbour["name"],
  shape: Input<PlanShape>,
  place: Offset,
  plate: Extent,
  reach: Reach,
): Placed | null {
  if (shape.kind === "missing") return null;
  const { value } = shape;
  const [x, y] = [toMillimetres(place.x), toMillimetres(place.y)];
  const halfX = toMillimetres(value.kind === "circle" ? value.diameter : value.x) / 2;
  const halfY = toMillimetres(value.kind === "circle" ? value.diameter : value.y) / 2;
  const extent = { x0: x - halfX, y0: y - halfY, x1: x + halfX, y1: y + halfY };
  return {
    name,
    shape: value,
    at: place,
    extent,
    drawn: nearPart(extent, plate, reach),
  };
}

/** A near side is drawn where it is; one farther off is cut off on the way. */
function nearPart(extent: Extent, plate: Extent, { whole, cut }: Reach): Extent {
  const [w, h] = [plate.x1 - plate.x0, plate.y1 - plate.y0];
  const low = (value: number, edge: number, side: number) => (value >= edge - whole * side ? value : edge - cut * side);
  const high = (value: number, edge: number, side: number) =>
    value <= edge + whole * side ? value : edge + cut * side;
  return {
    x0: low(extent.x0, plate.x0, w),
    y0: low(extent.y0, plate.y0, h),
    x1: high(extent.x1, plate.x1, w),
    y1: high(extent.y1, plate.y1, h),
  };
}

const SIDES = ["x0", "y0", "x1", "y1"] as const;

function isWhole({ extent, drawn }: Placed): boolean {
  return SIDES.every((side) => drawn[side] === extent[side]);
}

function showsEdge({ extent, drawn, shape }: Placed): boolean {
  if (drawn.x0 >= drawn.x1 || drawn.y0 >= drawn.y1) return false;
  if (shape.kind === "circle") return circleArcs(extent, drawn).length > 0;
  return SIDES.some((side) => drawn[side] === extent[side]);
}

/** Its edges in its own line, and thin break lines where it goes on. */
export function neighbourItems(view: View, neighbour: Neighbour): readonly SceneItem[] {
  const role = neighbour.name === "BASE PLATE" ? "base-plate" : "concrete";
  const { edges, breaks } = neighbour.shape.kind === "circle" ? roundParts(view, neighbour) : boxParts(view, neighbour);
  return [strokeOf(role, edges), ...(breaks.length > 0 ? [strokeOf("fine", breaks)] : [])];
}

interface Parts {
  readonly edges: readonly PathPart[];
  readonly breaks: readonly PathPart[];
}

function boxParts(view: View, { extent, drawn }: Neighbour): Parts {
  const [low, high] = [onPaper(view, { x: drawn.x0, y: drawn.y0 }), onPaper(view, { x: drawn.x1, y: drawn.y1 })];
  const sides = {
    y0: [low, at(high.x, low.y)],
    x1: [at(high.x, low.y), high],
    y1: [high, at(low.x, high.y)],
    x0: [at(low.x, high.y), low],
  } as const;
  const isEdge = (side: (typeof SIDES)[number]) => drawn[side] === extent[side];
  return {
    edges: SIDES.filter(isEdge).map((side) => line(sides[side][0], sides[side][1])),
    breaks: SIDES.filter((side) => !isEdge(side)).flatMap((side) => breakLine(sides[side][0], sides[side][1])),
  };
}

/** A thin line with a zigzag in its middle (ISO 128-2; ASME Y14.2: long break line). */
function breakLine(from: PaperPoint, to: PaperPoint): readonly PathPart[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < 1e-9) return [];
  const [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const point = (u: number, w: number) => at(from.x + dx * u - dy * w, from.y + dy * u + dx * w);
  const places = [0.28, 0.72].map((share) => share * length).filter(() => length > 6 * ZIGZAG);
  const points = [
    from,
    ...places.flatMap((u) => [
      point(u - ZIGZAG, 0),
      point(u - ZIGZAG / 3, 2 * ZIGZAG),
      point(u + ZIGZAG / 3, -2 * ZIGZAG),
      point(u + ZIGZAG, 0),
    ]),
    to,
  ];
  return points.slice(1).map((next, i) => line(points[i] ?? next, next));
}

const ZIGZAG = 1;

function roundParts(view: View, { extent, drawn }: Neighbour): Parts {
  const radius = (extent.x1 - extent.x0) / 2;
  const middle = { x: (extent.x0 + extent.x1) / 2, y: (extent.y0 + extent.y1) / 2 };
  const arcs = circleArcs(extent, drawn);
  if (arcs.some(([start, end]) => end - start >= 2 * Math.PI))
    return { edges: [circle(onPaper(view, middle), radius * view.scale)], breaks: [] };
  const point = (angle: number) =>
    onPaper(view, { x: middle.x + radius * Math.cos(angle), y: middle.y + radius * Math.sin(angle) });
  const edges = arcs.map(
    ([start, end]): PathPart => ({
      kind: "arc",
      from: point(start),
      to: point(end),
      bulge: Math.tan((end - start) / 4),
    }),
  );
  const ends = arcs.map(([, end], i) => [end, arcs[(i + 1) % arcs.length]?.[0] ?? end] as const);
  return { edges, breaks: ends.flatMap(([end, start]) => breakLine(point(end), point(start))) };
}

/** Angles between which a circle lies in a box, counter-clockwise, each arc's start below its end. */
function circleArcs(extent: Extent, box: Extent): readonly (readonly [number, number])[] {
  const radius = (extent.x1 - extent.x0) / 2;
  const middle = { x: (extent.x0 + extent.x1) / 2, y: (extent.y0 + extent.y1) / 2 };
  const crossings = [
    ...[box.x0, box.x1].flatMap((x) => mirrored(Math.acos((x - middle.x) / radius), (angle) => -angle)),
    ...[box.y0, box.y1].flatMap((y) => mirrored(Math.asin((y - middle.y) / radius), (angle) => Math.PI - angle)),
  ];
  const turns = [...new Set(crossings.map((angle) => (angle + 4 * Math.PI) % (2 * Math.PI)))].sort((a, b) => a - b);
  const isIn = (angle: number) => {
    const [x, y] = [middle.x + radius * Math.cos(angle), middle.y + radius * Math.sin(angle)];
    return x >= box.x0 - 1e-6 && x <= box.x1 + 1e-6 && y >= box.y0 - 1e-6 && y <= box.y1 + 1e-6;
  };
  const [first] = turns;
  if (first === undefined) return isIn(0) ? [[0, 2 * Math.PI]] : [];
  const arcs = turns.map((start, i) => [start, turns[i + 1] ?? first + 2 * Math.PI] as const);
  const inside = arcs.filter(([start, end]) => isIn((start + end) / 2));
  return inside.length === arcs.length ? [[0, 2 * Math.PI]] : inside;
}

/** An angle and its mirror image; nothing where the circle does not reach. */
function mirrored(angle: number, mirror: (angle: number) => number): readonly number[] {
  return Number.isNaN(angle) ? [] : [angle, mirror(angle)];
}

function neighbourWords({ name, shape, at: place }: Placed, unit: Unit, { center }: Spelling): string {
  const say = (length: Length) => formatLength(length, unit);
  const size = shape.kind === "circle" ? `Ø${say(shape.diameter)}` : `${say(shape.x)} × ${say(shape.y)}`;
  const centered = center === "CENTER" ? "CENTERED" : "CENTRED";
  const where =
    place.x === 0 && place.y === 0
      ? `${centered} ON W.P.`
      : `${center} AT X ${say(place.x)}, Y ${say(place.y)} FROM W.P.`;
  return `${name} ${size}, ${where}`;
}
