/** What already stands on the paper while a sheet is laid out, and whether something new would touch it. Paper millimetres. */
import type { Extent } from "../geometry/index.js";
import type { PaperPoint, PathPart, SceneItem } from "./scene.js";
import { measureText } from "./text-metrics.js";

/** Four corners of a turned box, counter-clockwise. */
export type Box = readonly PaperPoint[];

/** A text of a scene. */
export type TextItem = Extract<SceneItem, { kind: "text" }>;

/** Texts, and straight strokes and circles, by the cell of a coarse grid that they pass through. */
export interface Occupied {
  readonly texts: Cells<TakenBox>;
  readonly strokes: Cells<TakenMark>;
}

/** Lists by the number of their cell: rows of the grid one after the other; most cells are empty. */
type Cells<T> = Map<number, T[]>;

/** A box with its bounds; `upright`: it is its bounds. */
interface TakenBox extends Extent {
  readonly box: Box;
  readonly upright: boolean;
}

/** A mark with its bounds. `seen` numbers the last question in which it was counted: it stands in several cells. */
interface TakenMark extends Extent {
  readonly mark: Mark;
  seen: number;
}

/**
 * A straight stroke or a circle's line; a stroke's width is part of the clearance asked for. A soft one may be interrupted
 * for a figure, as draughtsmen do (ISO 129): centre lines, extension lines, phantom outlines.
 */
export type Mark = Segment | Ring;

interface Segment {
  readonly kind: "segment";
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  readonly soft: boolean;
}

interface Ring {
  readonly kind: "circle";
  readonly center: PaperPoint;
  readonly radius: number;
  readonly soft: boolean;
}

const SOFT_ROLES: ReadonlySet<string> = new Set(["centre", "extension", "concrete", "base-plate"]);

/** Straight lines of this item may be interrupted. */
export function isSoft(item: SceneItem): boolean {
  return item.kind === "stroke" && SOFT_ROLES.has(item.role);
}

/** Less than anything drawn: what comes nearer does no more than touch. */
const SLACK = 1e-9;

const CELL = 10;

/** The grid covers the largest sheet; what lies beyond it stands in its outermost cells. */
const COLUMNS = 122;
const LAST = COLUMNS - 2;

function cellOf(coordinate: number): number {
  const cell = Math.floor(coordinate / CELL);
  return cell < 0 ? 0 : cell > LAST ? LAST + 1 : cell + 1;
}

/** Paper with nothing on it. */
export function emptyPaper(): Occupied {
  return { texts: new Map(), strokes: new Map() };
}

/** A copy that can be added to without touching the original. */
export function copyPaper({ texts, strokes }: Occupied): Occupied {
  return { texts: copyCells(texts), strokes: copyCells(strokes) };
}

function copyCells<T>(cells: Cells<T>): Cells<T> {
  const copy: Cells<T> = new Map();
  for (const [index, list] of cells) copy.set(index, list.slice());
  return copy;
}

function addAt<T>(cells: Cells<T>, index: number, value: T): void {
  const list = cells.get(index);
  if (list === undefined) cells.set(index, [value]);
  else list.push(value);
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

/** Puts a scene item on the paper: texts as boxes, strokes as lines and circles, fills by their edges. */
export function occupy(paper: Occupied, item: SceneItem): void {
  if (item.kind === "group") for (const inner of item.items) occupy(paper, inner);
  else if (item.kind === "text") occupyBox(paper, textBox(item));
  else for (const mark of marksOf(item)) occupyMark(paper, mark);
}

function boundsOf(box: Box): TakenBox {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of box) {
    if (x < x0) x0 = x;
    if (x > x1) x1 = x;
    if (y < y0) y0 = y;
    if (y > y1) y1 = y;
  }
  return { x0, y0, x1, y1, box, upright: isUpright(box) };
}

/** Its sides run along the axes, to less than anything drawn. */
function isUpright(box: Box): boolean {
  for (let i = 0; i < box.length; i += 1) {
    const [from, to] = [box[i], box[(i + 1) % box.length]];
    if (from === undefined || to === undefined) return false;
    if (Math.abs(from.x - to.x) > SLACK && Math.abs(from.y - to.y) > SLACK) return false;
  }
  return true;
}

function occupyBox(paper: Occupied, box: Box): void {
  const taken = boundsOf(box);
  const [i0, i1, j0, j1] = [cellOf(taken.x0), cellOf(taken.x1), cellOf(taken.y0), cellOf(taken.y1)];
  for (let j = j0; j <= j1; j += 1) for (let i = i0; i <= i1; i += 1) addAt(paper.texts, j * COLUMNS + i, taken);
}

function occupyMark(paper: Occupied, mark: Mark): void {
  if (mark.kind === "circle") occupyRing(paper, mark);
  else {
    const { x0, x1, y0, y1 } = segmentBounds(mark.from, mark.to);
    const taken = { x0, y0, x1, y1, mark, seen: 0 };
    alongSegment(mark.from, mark.to, (index) => {
      addAt(paper.strokes, index, taken);
      return false;
    });
  }
}

function segmentBounds(from: PaperPoint, to: PaperPoint): Extent {
  return {
    x0: Math.min(from.x, to.x),
    x1: Math.max(from.x, to.x),
    y0: Math.min(from.y, to.y),
    y1: Math.max(from.y, to.y),
  };
}

/** Calls for each cell that the straight line passes through, row by row, until one answers true. */
function alongSegment(from: PaperPoint, to: PaperPoint, visit: (index: number) => boolean): boolean {
  const { x0, x1, y0, y1 } = segmentBounds(from, to);
  const slope = y1 - y0 < SLACK ? null : (to.x - from.x) / (to.y - from.y);
  const last = cellOf(y1);
  for (let j = cellOf(y0); j <= last; j += 1) {
    let [low, high] = [x0, x1];
    if (slope !== null) {
      const a = from.x + (clampedTo(j - 1, y0, y1) - from.y) * slope;
      const b = from.x + (clampedTo(j, y0, y1) - from.y) * slope;
      [low, high] = [Math.max(x0, Math.min(a, b) - SLACK), Math.min(x1, Math.max(a, b) + SLACK)];
    }
    const end = cellOf(high);
    for (let i = cellOf(low); i <= end; i += 1) if (visit(j * COLUMNS + i)) return true;
  }
  return false;
}

/** The line between two rows, or the end of the segment where that is nearer; outermost rows reach on and on. */
function clampedTo(row: number, y0: number, y1: number): number {
  const y = row < 0 ? -Infinity : row > LAST ? Infinity : row * CELL;
  return Math.min(y1, Math.max(y0, y));
}

/** A circle's line fills the cells that it passes through, not those inside it. */
function occupyRing(paper: Occupied, ring: Ring): void {
  const bounds = circleBounds(ring.center, ring.radius);
  const { x0, y0, x1, y1 } = bounds;
  const taken = { x0, y0, x1, y1, mark: ring, seen: 0 };
  const [i0, i1, j0, j1] = [cellOf(bounds.x0), cellOf(bounds.x1), cellOf(bounds.y0), cellOf(bounds.y1)];
  for (let j = j0; j <= j1; j += 1)
    for (let i = i0; i <= i1; i += 1) if (passesCell(ring, i, j)) addAt(paper.strokes, j * COLUMNS + i, taken);
}

/** Outermost cells reach on and on, and take whatever comes. */
function passesCell({ center, radius }: Ring, i: number, j: number): boolean {
  if (i === 0 || j === 0 || i > LAST || j > LAST) return true;
  const [x, y] = [(i - 1) * CELL, (j - 1) * CELL];
  const [right, up] = [x + CELL, y + CELL];
  const [dx, dy] = [Math.max(x - center.x, 0, center.x - right), Math.max(y - center.y, 0, center.y - up)];
  if (Math.sqrt(dx * dx + dy * dy) - SLACK > radius) return false;
  const [fx, fy] = [Math.max(center.x - x, right - center.x), Math.max(center.y - y, up - center.y)];
  return Math.sqrt(fx * fx + fy * fy) + SLACK >= radius;
}

function circleBounds(center: PaperPoint, radius: number): Extent {
  return { x0: center.x - radius, y0: center.y - radius, x1: center.x + radius, y1: center.y + radius };
}

/** The lines of a stroke or the edges of a fill. Arcs become chords of at most 5 degrees. */
export function marksOf(item: Extract<SceneItem, { kind: "stroke" | "fill" }>): readonly Mark[] {
  const marks: Mark[] = [];
  if (item.kind === "stroke") {
    const soft = isSoft(item);
    for (const part of item.parts) addMarks(marks, part, soft);
  } else
    for (let i = 0; i < item.points.length; i += 1)
      addSegment(marks, item.points[i], item.points[(i + 1) % item.points.length]);
  return marks;
}

function addSegment(marks: Mark[], from: PaperPoint | undefined, to: PaperPoint | undefined, soft = false): void {
  if (from !== undefined && to !== undefined) marks.push({ kind: "segment", from, to, soft });
}

function addMarks(marks: Mark[], part: PathPart, soft: boolean): void {
  if (part.kind === "line") addSegment(marks, part.from, part.to, soft);
  else if (part.kind === "circle")
    marks.push({ kind: "circle", center: part.center, radius: part.radius, soft: false });
  else {
    const points = arcPoints(part.from, part.to, part.bulge, Math.PI / 36);
    for (let i = 1; i < points.length; i += 1) addSegment(marks, points[i - 1], points[i]);
  }
}

/** Points along an arc, ends included, no further apart than `step` radians. */
function arcPoints(from: PaperPoint, to: PaperPoint, bulge: number, step: number): readonly PaperPoint[] {
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

/** True when the box touches a text or a stroke that is already there; `hard` looks past strokes that may be interrupted. */
export function isTaken(paper: Occupied, box: Box, strokes: "all" | "hard" = "all"): boolean {
  const own = boundsOf(box);
  const [i0, i1, j0, j1] = [cellOf(own.x0), cellOf(own.x1), cellOf(own.y0), cellOf(own.y1)];
  for (let j = j0; j <= j1; j += 1)
    for (let i = i0; i <= i1; i += 1) {
      const index = j * COLUMNS + i;
      if (touchesText(paper.texts.get(index), own) || touchesStroke(paper.strokes.get(index), own, strokes === "all"))
        return true;
    }
  return false;
}

/** Bounds that do no more than touch. */
function isApartFrom(a: Extent, b: Extent): boolean {
  return a.x0 >= b.x1 - SLACK || b.x0 >= a.x1 - SLACK || a.y0 >= b.y1 - SLACK || b.y0 >= a.y1 - SLACK;
}

function touchesText(taken: readonly TakenBox[] | undefined, own: TakenBox): boolean {
  if (taken === undefined) return false;
  for (const other of taken)
    if (!isApartFrom(other, own) && ((other.upright && own.upright) || boxesTouch(own.box, other.box))) return true;
  return false;
}

function touchesStroke(taken: readonly TakenMark[] | undefined, own: TakenBox, all: boolean): boolean {
  if (taken === undefined) return false;
  for (const other of taken)
    if ((all || !other.mark.soft) && mayTouch(other, own) && markTouchesBox(other.mark, own.box)) return true;
  return false;
}

/** A line along an axis has no breadth: it runs through a box that has it strictly inside. */
function mayTouch(mark: Extent, box: Extent): boolean {
  return mark.x1 > box.x0 && mark.x0 < box.x1 && mark.y1 > box.y0 && mark.y0 < box.y1;
}

/** True when the straight line would pass through a text that is already there. */
export function crossesText(paper: Occupied, from: PaperPoint, to: PaperPoint): boolean {
  const bounds = segmentBounds(from, to);
  return alongSegment(from, to, (index) => {
    const texts = paper.texts.get(index);
    if (texts === undefined) return false;
    for (const other of texts) if (mayTouch(bounds, other) && segmentTouchesBox(from, to, other.box)) return true;
    return false;
  });
}

/** Numbers the questions that count marks. */
let asked = 0;

/** How many strokes the straight line would cross. */
export function countCrossings(
  paper: Occupied,
  from: PaperPoint,
  to: PaperPoint,
): { readonly hard: number; readonly soft: number } {
  asked += 1;
  const bounds = segmentBounds(from, to);
  let [hard, soft] = [0, 0];
  alongSegment(from, to, (index) => {
    const taken = paper.strokes.get(index);
    if (taken === undefined) return false;
    for (const other of taken) {
      if (other.seen === asked) continue;
      other.seen = asked;
      if (!meets(other, bounds) || !crosses(from, to, other.mark)) continue;
      if (other.mark.soft) soft += 1;
      else hard += 1;
    }
    return false;
  });
  return { hard, soft };
}

function meets(a: Extent, b: Extent): boolean {
  return a.x1 >= b.x0 && a.x0 <= b.x1 && a.y1 >= b.y0 && a.y0 <= b.y1;
}

function crosses(from: PaperPoint, to: PaperPoint, mark: Mark): boolean {
  if (mark.kind === "circle") {
    const { center, radius } = mark;
    const far = Math.max(
      Math.hypot(from.x - center.x, from.y - center.y),
      Math.hypot(to.x - center.x, to.y - center.y),
    );
    return far > radius + 0.01 && distanceToSegment(center, from, to) < radius;
  }
  return linesCross(from, to, mark.from, mark.to);
}

/** Two straight lines cross between their ends; where one only touches the other they do not. */
export function linesCross(a: PaperPoint, b: PaperPoint, c: PaperPoint, d: PaperPoint): boolean {
  return isApart(a, b, c, d) && isApart(c, d, a, b);
}

/** The two points lie strictly on different sides of the line. */
function isApart(from: PaperPoint, to: PaperPoint, a: PaperPoint, b: PaperPoint): boolean {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  return (dx * (a.y - from.y) - dy * (a.x - from.x)) * (dx * (b.y - from.y) - dy * (b.x - from.x)) < 0;
}

/** Two convex boxes overlap (separating axes); touching edges count as apart. */
export function boxesTouch(a: readonly PaperPoint[], b: readonly PaperPoint[]): boolean {
  return !hasSeparatingEdge(a, b) && !hasSeparatingEdge(b, a);
}

function hasSeparatingEdge(edges: readonly PaperPoint[], other: readonly PaperPoint[]): boolean {
  for (let i = 0; i < edges.length; i += 1) {
    const [from, to] = [edges[i], edges[(i + 1) % edges.length]];
    if (from !== undefined && to !== undefined && isOutside(from, to, other)) return true;
  }
  return false;
}

/** All points lie at the right of the edge or on it. */
function isOutside(from: PaperPoint, to: PaperPoint, points: readonly PaperPoint[]): boolean {
  const [nx, ny] = [to.y - from.y, from.x - to.x];
  for (const { x, y } of points) if ((x - from.x) * nx + (y - from.y) * ny < -SLACK) return false;
  return true;
}

/** A stroke's line runs through or into the box. */
export function markTouchesBox(mark: Mark, box: Box): boolean {
  return mark.kind === "segment"
    ? segmentTouchesBox(mark.from, mark.to, box)
    : circleTouchesBox(mark.center, mark.radius, box);
}

function segmentTouchesBox(from: PaperPoint, to: PaperPoint, box: Box): boolean {
  if (separates(box, from, to)) return false;
  const nx = to.y - from.y;
  const ny = from.x - to.x;
  if (nx === 0 && ny === 0) return true;
  let [low, high] = [Infinity, -Infinity];
  for (const { x, y } of box) {
    const side = (x - from.x) * nx + (y - from.y) * ny;
    if (side < low) low = side;
    if (side > high) high = side;
  }
  return low < -SLACK && high > SLACK;
}

/** Some edge of the box has both points at its right or on it. */
function separates(box: Box, a: PaperPoint, b: PaperPoint): boolean {
  for (let i = 0; i < box.length; i += 1) {
    const [from, to] = [box[i], box[(i + 1) % box.length]];
    if (from === undefined || to === undefined) continue;
    const [nx, ny] = [to.y - from.y, from.x - to.x];
    if ((a.x - from.x) * nx + (a.y - from.y) * ny < -SLACK) continue;
    if ((b.x - from.x) * nx + (b.y - from.y) * ny >= -SLACK) return true;
  }
  return false;
}

function circleTouchesBox(center: PaperPoint, radius: number, box: Box): boolean {
  let farthest = 0;
  for (const { x, y } of box) farthest = Math.max(farthest, Math.hypot(x - center.x, y - center.y));
  return farthest > radius && distanceToBox(center, box) < radius;
}

/** Distance from a point to a box, 0 inside it. */
export function distanceToBox(point: PaperPoint, box: Box): number {
  let inside = true;
  let nearest = Infinity;
  for (let i = 0; i < box.length; i += 1) {
    const [from, to] = [box[i], box[(i + 1) % box.length]];
    if (from === undefined || to === undefined) continue;
    if ((to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x) < 0) inside = false;
    nearest = Math.min(nearest, distanceToSegment(point, from, to));
  }
  return inside ? 0 : nearest;
}

/** Distance from a point to a straight line between two others. */
export function distanceToSegment(point: PaperPoint, from: PaperPoint, to: PaperPoint): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const length = dx * dx + dy * dy;
  const share = length === 0 ? 0 : ((point.x - from.x) * dx + (point.y - from.y) * dy) / length;
  const t = Math.min(1, Math.max(0, share));
  return Math.hypot(point.x - from.x - t * dx, point.y - from.y - t * dy);
}

/** The share of the line, as two parameters from 0 to 1, that lies in the box; null when none does. */
export function insideBox(from: PaperPoint, to: PaperPoint, box: Box): readonly [number, number] | null {
  let [enter, leave] = [0, 1];
  for (const [i, corner] of box.entries()) {
    const next = box[(i + 1) % box.length] ?? corner;
    const depth = (p: PaperPoint) => (next.x - corner.x) * (p.y - corner.y) - (next.y - corner.y) * (p.x - corner.x);
    const [a, b] = [depth(from), depth(to)];
    if (a <= 0 && b <= 0) return null;
    if (a < 0) enter = Math.max(enter, a / (a - b));
    else if (b < 0) leave = Math.min(leave, a / (a - b));
  }
  return enter < leave ? [enter, leave] : null;
}
