/** What already stands on the paper while a sheet is laid out, and whether something new would touch it. Paper millimetres. */
import type { Extent } from "../geometry/index.js";
import { extentOfPoints } from "../geometry/index.js";
import { greatestOf, leastOf } from "../units/extremes.js";
import type { PaperPoint, PathPart, SceneItem } from "./scene.js";
import { measureText } from "./text-metrics.js";

/** Four corners of a turned box, counter-clockwise. */
export type Box = readonly PaperPoint[];

/** A text of a scene. */
export type TextItem = Extract<SceneItem, { kind: "text" }>;

/** Straight strokes, circles and texts by the cell of a coarse grid that they pass through. */
export interface Occupied {
  readonly texts: Map<number, Box[]>;
  readonly strokes: Map<number, Mark[]>;
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

const CELL = 10;
const ROW = 1000;

/** Paper with nothing on it. */
export function emptyPaper(): Occupied {
  return { texts: new Map(), strokes: new Map() };
}

/** A copy that can be added to without touching the original. */
export function copyPaper({ texts, strokes }: Occupied): Occupied {
  return {
    texts: new Map([...texts].map(([cell, boxes]) => [cell, [...boxes]])),
    strokes: new Map([...strokes].map(([cell, marks]) => [cell, [...marks]])),
  };
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

function add<T>(map: Map<number, T[]>, bounds: Extent, value: T): void {
  for (const key of cells(bounds)) {
    const list = map.get(key);
    if (list === undefined) map.set(key, [value]);
    else list.push(value);
  }
}

/** Cells from here to there are kept, a metre around the largest sheet: what is drawn farther out is on no paper. */
const [FIRST_CELL, LAST_CELL] = [-100, 300];

function* cells(bounds: Extent): Generator<number> {
  const [i0, i1] = [firstCell(bounds.x0), lastCell(bounds.x1)];
  const [j0, j1] = [firstCell(bounds.y0), lastCell(bounds.y1)];
  for (let j = j0; j <= j1; j++) for (let i = i0; i <= i1; i++) yield j * ROW + i;
}

function firstCell(from: number): number {
  return Math.max(FIRST_CELL, Math.floor(from / CELL));
}

function lastCell(to: number): number {
  return Math.min(LAST_CELL, Math.floor(to / CELL));
}

/** Puts a scene item on the paper: texts as boxes, strokes as lines and circles, fills by their edges. */
export function occupy(paper: Occupied, item: SceneItem): void {
  if (item.kind === "group") for (const inner of item.items) occupy(paper, inner);
  else if (item.kind === "text") occupyBox(paper, textBox(item));
  else for (const mark of marksOf(item)) occupyMark(paper, mark);
}

function occupyBox(paper: Occupied, box: Box): void {
  add(paper.texts, extentOfPoints(box), box);
}

function occupyMark(paper: Occupied, mark: Mark): void {
  if (mark.kind === "circle") occupyRing(paper, mark);
  else for (const part of shortPieces(mark)) add(paper.strokes, extentOfPoints([part.from, part.to]), part);
}

/** A circle's line fills the cells that it passes through, not those inside it. */
function occupyRing(paper: Occupied, ring: Ring): void {
  const { center, radius } = ring;
  for (const key of cells(circleBounds(center, radius))) {
    const j = Math.round(key / ROW);
    const [x, y] = [(key - j * ROW) * CELL, j * CELL];
    const [right, up] = [x + CELL, y + CELL];
    const near = Math.hypot(Math.max(x - center.x, 0, center.x - right), Math.max(y - center.y, 0, center.y - up));
    const far = Math.hypot(Math.max(center.x - x, right - center.x), Math.max(center.y - y, up - center.y));
    if (near - SLACK > radius || far + SLACK < radius) continue;
    const marks = paper.strokes.get(key);
    if (marks === undefined) paper.strokes.set(key, [ring]);
    else marks.push(ring);
  }
}

/** Pieces of one stroke: enough for the diagonal of the cells that are kept. */
const MOST_PIECES = 1000;

/** A long slanting stroke fills few cells when it is entered piece by piece. */
function shortPieces(mark: Segment): readonly Segment[] {
  const { from, to } = mark;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const count = dx === 0 || dy === 0 ? 1 : Math.min(MOST_PIECES, Math.max(1, Math.ceil(Math.hypot(dx, dy) / CELL)));
  if (count === 1) return [mark];
  const at = (k: number) => ({ x: from.x + (dx * k) / count, y: from.y + (dy * k) / count });
  return Array.from({ length: count }, (_, k) => ({ ...mark, from: at(k), to: at(k + 1) }));
}

function circleBounds(center: PaperPoint, radius: number): Extent {
  return { x0: center.x - radius, y0: center.y - radius, x1: center.x + radius, y1: center.y + radius };
}

/** The lines of a stroke or the edges of a fill. Arcs become chords of at most 5 degrees. */
export function marksOf(item: Extract<SceneItem, { kind: "stroke" | "fill" }>): readonly Mark[] {
  if (item.kind === "stroke") return item.parts.flatMap((part) => marksOfPart(part, isSoft(item)));
  return item.points.map((from, i) => segment(from, item.points[(i + 1) % item.points.length] ?? from));
}

function segment(from: PaperPoint, to: PaperPoint, soft = false): Segment {
  return { kind: "segment", from, to, soft };
}

function marksOfPart(part: PathPart, soft: boolean): readonly Mark[] {
  if (part.kind === "line") return [segment(part.from, part.to, soft)];
  if (part.kind === "circle") return [{ kind: "circle", center: part.center, radius: part.radius, soft: false }];
  const points = arcPoints(part.from, part.to, part.bulge, Math.PI / 36);
  return points.slice(1).map((to, i) => segment(points[i] ?? to, to));
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
  for (const key of cells(extentOfPoints(box))) {
    if (paper.texts.get(key)?.some((other) => boxesTouch(box, other))) return true;
    const marks = paper.strokes.get(key);
    if (marks?.some((mark) => (strokes === "all" || !mark.soft) && markTouchesBox(mark, box))) return true;
  }
  return false;
}

/** True when the straight line would pass through a text that is already there. */
export function crossesText(paper: Occupied, from: PaperPoint, to: PaperPoint): boolean {
  return shortPieces(segment(from, to)).some((piece) => {
    for (const key of cells(extentOfPoints([piece.from, piece.to])))
      if (paper.texts.get(key)?.some((box) => markTouchesBox(piece, box))) return true;
    return false;
  });
}

/** How many strokes the straight line would cross; a stroke entered in pieces may count more than once. */
export function countCrossings(
  paper: Occupied,
  from: PaperPoint,
  to: PaperPoint,
): { readonly hard: number; readonly soft: number } {
  const met = new Set<Mark>();
  for (const piece of shortPieces(segment(from, to)))
    for (const key of cells(extentOfPoints([piece.from, piece.to])))
      for (const mark of paper.strokes.get(key) ?? []) if (!met.has(mark) && crosses(from, to, mark)) met.add(mark);
  const soft = [...met].filter((mark) => mark.soft).length;
  return { hard: met.size - soft, soft };
}

function crosses(from: PaperPoint, to: PaperPoint, mark: Mark): boolean {
  if (mark.kind === "circle") {
    const near = distanceToSegment(mark.center, from, to);
    const far = greatestOf([from, to].map(({ x, y }) => Math.hypot(x - mark.center.x, y - mark.center.y)));
    return near < mark.radius && far > mark.radius + 0.01;
  }
  return isApart(from, to, mark.from, mark.to) && isApart(mark.from, mark.to, from, to);
}

/** The two points lie strictly on different sides of the line. */
function isApart(from: PaperPoint, to: PaperPoint, a: PaperPoint, b: PaperPoint): boolean {
  const side = (p: PaperPoint) => (to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x);
  return side(a) * side(b) < 0;
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
  return mark.kind === "segment"
    ? segmentTouchesBox(mark.from, mark.to, box)
    : circleTouchesBox(mark.center, mark.radius, box);
}

function segmentTouchesBox(from: PaperPoint, to: PaperPoint, box: Box): boolean {
  if (hasSeparatingEdge(box, [from, to])) return false;
  const nx = to.y - from.y;
  const ny = from.x - to.x;
  if (nx === 0 && ny === 0) return true;
  const sides = box.map(({ x, y }) => (x - from.x) * nx + (y - from.y) * ny);
  return leastOf(sides) < -SLACK && greatestOf(sides) > SLACK;
}

function circleTouchesBox(center: PaperPoint, radius: number, box: Box): boolean {
  const farthest = greatestOf(box.map(({ x, y }) => Math.hypot(x - center.x, y - center.y)));
  return farthest > radius && distanceToBox(center, box) < radius;
}

/** Distance from a point to a box, 0 inside it. */
export function distanceToBox(point: PaperPoint, box: Box): number {
  let inside = true;
  let nearest = Infinity;
  box.forEach((from, i) => {
    const to = box[(i + 1) % box.length] ?? from;
    if ((to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x) < 0) inside = false;
    nearest = Math.min(nearest, distanceToSegment(point, from, to));
  });
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
