/** What already stands on the paper while a sheet is laid out, and whether something new would touch it. Paper millimetres. */
import type { PaperPoint, PathPart, SceneItem } from "./scene.js";
import { measureText } from "./text-metrics.js";

/** Four corners of a turned box, counter-clockwise. */
export type Box = readonly PaperPoint[];

export type TextItem = Extract<SceneItem, { kind: "text" }>;

interface Bounds {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** Straight strokes, circles and texts by the cell of a coarse grid that they pass through. */
export interface Occupied {
  readonly texts: Map<number, Box[]>;
  readonly strokes: Map<number, Mark[]>;
}

/** A straight stroke or a circle's line; a stroke's width is part of the clearance asked for. */
export type Mark =
  | { readonly kind: "segment"; readonly from: PaperPoint; readonly to: PaperPoint }
  | { readonly kind: "circle"; readonly center: PaperPoint; readonly radius: number };

const CELL = 10;
const ROW = 1000;

export function emptyPaper(): Occupied {
  return { texts: new Map(), strokes: new Map() };
}

/** The box of a text's ink, grown by `clearance` on every side. */
export function textBox(item: TextItem, clearance = 0): Box {
  const size = measureText(item.text, item.height, item.bold);
  const start = item.anchor === "start" ? 0 : item.anchor === "middle" ? -size.width / 2 : -size.width;
  const x0 = start - clearance;
  const x1 = start + size.width + clearance;
  const y0 = -size.drop - clearance;
  const y1 = size.rise + clearance;
  const turn = (item.turn * Math.PI) / 180;
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  const corner = (x: number, y: number) => ({ x: item.at.x + x * cos - y * sin, y: item.at.y + x * sin + y * cos });
  return [corner(x0, y0), corner(x1, y0), corner(x1, y1), corner(x0, y1)];
}

export function boundsOf(points: readonly PaperPoint[]): Bounds {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    x0 = Math.min(x0, x);
    y0 = Math.min(y0, y);
    x1 = Math.max(x1, x);
    y1 = Math.max(y1, y);
  }
  return { x0, y0, x1, y1 };
}

function add<T>(map: Map<number, T[]>, bounds: Bounds, value: T): void {
  for (const key of cells(bounds)) {
    const list = map.get(key);
    if (list === undefined) map.set(key, [value]);
    else list.push(value);
  }
}

function* cells(bounds: Bounds): Generator<number> {
  for (let j = Math.floor(bounds.y0 / CELL); j <= Math.floor(bounds.y1 / CELL); j++)
    for (let i = Math.floor(bounds.x0 / CELL); i <= Math.floor(bounds.x1 / CELL); i++) yield j * ROW + i;
}

/** Puts a scene item on the paper: texts as boxes, strokes as lines and circles, fills by their edges. */
export function occupy(paper: Occupied, item: SceneItem): void {
  if (item.kind === "group") for (const inner of item.items) occupy(paper, inner);
  else if (item.kind === "text") occupyBox(paper, textBox(item));
  else for (const mark of marksOf(item)) occupyMark(paper, mark);
}

export function occupyBox(paper: Occupied, box: Box): void {
  add(paper.texts, boundsOf(box), box);
}

function occupyMark(paper: Occupied, mark: Mark): void {
  if (mark.kind === "circle") add(paper.strokes, circleBounds(mark.center, mark.radius), mark);
  else for (const part of shortPieces(mark)) add(paper.strokes, boundsOf([part.from, part.to]), part);
}

/** A long slanting stroke fills few cells when it is entered piece by piece. */
function shortPieces(mark: Extract<Mark, { kind: "segment" }>): readonly Extract<Mark, { kind: "segment" }>[] {
  const { from, to } = mark;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const count = dx === 0 || dy === 0 ? 1 : Math.max(1, Math.ceil(Math.hypot(dx, dy) / CELL));
  if (count === 1) return [mark];
  const at = (k: number) => ({ x: from.x + (dx * k) / count, y: from.y + (dy * k) / count });
  return Array.from({ length: count }, (_, k) => ({ kind: "segment", from: at(k), to: at(k + 1) }) as const);
}

function circleBounds(center: PaperPoint, radius: number): Bounds {
  return { x0: center.x - radius, y0: center.y - radius, x1: center.x + radius, y1: center.y + radius };
}

/** The lines of a stroke or the edges of a fill. Arcs become chords of at most 5 degrees. */
export function marksOf(item: Extract<SceneItem, { kind: "stroke" | "fill" }>): readonly Mark[] {
  if (item.kind === "stroke") return item.parts.flatMap(marksOfPart);
  return item.points.map((from, i) => ({ kind: "segment", from, to: item.points[(i + 1) % item.points.length] ?? from }));
}

function marksOfPart(part: PathPart): readonly Mark[] {
  if (part.kind === "line") return [{ kind: "segment", from: part.from, to: part.to }];
  if (part.kind === "circle") return [{ kind: "circle", center: part.center, radius: part.radius }];
  const points = arcPoints(part.from, part.to, part.bulge, Math.PI / 36);
  return points.slice(1).map((to, i) => ({ kind: "segment", from: points[i] ?? to, to }));
}

/** Points along an arc, ends included, no further apart than `step` radians. */
export function arcPoints(from: PaperPoint, to: PaperPoint, bulge: number, step: number): readonly PaperPoint[] {
  const sweep = 4 * Math.atan(bulge);
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / step));
  const arc = arcOf(from, to, bulge);
  const start = Math.atan2(from.y - arc.center.y, from.x - arc.center.x);
  return Array.from({ length: count + 1 }, (_, k) => {
    if (k === 0) return from;
    if (k === count) return to;
    const angle = start + (sweep * k) / count;
    return { x: arc.center.x + arc.radius * Math.cos(angle), y: arc.center.y + arc.radius * Math.sin(angle) };
  });
}

/** Centre and radius of the arc with this bulge. */
export function arcOf(from: PaperPoint, to: PaperPoint, bulge: number): { center: PaperPoint; radius: number } {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const along = (1 - bulge * bulge) / (4 * bulge);
  const center = { x: (from.x + to.x) / 2 - dy * along, y: (from.y + to.y) / 2 + dx * along };
  return { center, radius: Math.hypot(from.x - center.x, from.y - center.y) };
}

/** True when the box touches a text or, `strokes` given, a stroke that is already there. */
export function isTaken(paper: Occupied, box: Box, strokes = true): boolean {
  for (const key of cells(boundsOf(box))) {
    if (paper.texts.get(key)?.some((other) => boxesTouch(box, other))) return true;
    if (strokes && paper.strokes.get(key)?.some((mark) => markTouchesBox(mark, box))) return true;
  }
  return false;
}

/** True when the straight line would pass through a text that is already there. */
export function crossesText(paper: Occupied, from: PaperPoint, to: PaperPoint): boolean {
  return shortPieces({ kind: "segment", from, to }).some((piece) => {
    for (const key of cells(boundsOf([piece.from, piece.to])))
      if (paper.texts.get(key)?.some((box) => markTouchesBox(piece, box))) return true;
    return false;
  });
}

/** Two convex boxes overlap (separating axes); touching edges count as apart. */
export function boxesTouch(a: readonly PaperPoint[], b: readonly PaperPoint[]): boolean {
  return !hasSeparatingEdge(a, b) && !hasSeparatingEdge(b, a);
}

const SLACK = 1e-9;

function hasSeparatingEdge(edges: readonly PaperPoint[], other: readonly PaperPoint[]): boolean {
  return edges.some((from, i) => {
    const to = edges[(i + 1) % edges.length] ?? from;
    const nx = to.y - from.y;
    const ny = from.x - to.x;
    return other.every(({ x, y }) => (x - from.x) * nx + (y - from.y) * ny >= -SLACK);
  });
}

/** A stroke's line runs through or into the box. */
export function markTouchesBox(mark: Mark, box: Box): boolean {
  return mark.kind === "segment" ? segmentTouchesBox(mark.from, mark.to, box) : circleTouchesBox(mark.center, mark.radius, box);
}

function segmentTouchesBox(from: PaperPoint, to: PaperPoint, box: Box): boolean {
  if (hasSeparatingEdge(box, [from, to])) return false;
  const nx = to.y - from.y;
  const ny = from.x - to.x;
  if (nx === 0 && ny === 0) return true;
  const sides = box.map(({ x, y }) => (x - from.x) * nx + (y - from.y) * ny);
  return Math.min(...sides) < -SLACK && Math.max(...sides) > SLACK;
}

function circleTouchesBox(center: PaperPoint, radius: number, box: Box): boolean {
  const farthest = Math.max(...box.map(({ x, y }) => Math.hypot(x - center.x, y - center.y)));
  return farthest > radius && distanceToBox(center, box) < radius;
}

function distanceToBox(point: PaperPoint, box: Box): number {
  let inside = true;
  let nearest = Infinity;
  box.forEach((from, i) => {
    const to = box[(i + 1) % box.length] ?? from;
    if ((to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x) < 0) inside = false;
    nearest = Math.min(nearest, distanceToSegment(point, from, to));
  });
  return inside ? 0 : nearest;
}

function distanceToSegment(point: PaperPoint, from: PaperPoint, to: PaperPoint): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const length = dx * dx + dy * dy;
  const share = length === 0 ? 0 : ((point.x - from.x) * dx + (point.y - from.y) * dy) / length;
  const t = Math.min(1, Math.max(0, share));
  return Math.hypot(point.x - from.x - t * dx, point.y - from.y - t * dy);
}
