/**
 * From the entities of a drawing to closed contours and open strokes. Loose lines and arcs are joined where their ends lie
 * within a tolerance; ends are found through a grid of cells, so that the time grows with the number of entities.
 */

import {
  arcSegment,
  type CutPoint,
  type CutSegment,
  distance,
  polylineSegments,
  segmentLength,
} from "./dxf-measures.js";
import type { DxfEntity } from "./dxf-model.js";

/** A closed contour of one layer, in the file's unit; ends of neighbouring segments meet within the joint tolerance. */
export type CutContour =
  | {
      readonly kind: "circle";
      readonly layer: string;
      readonly x: number;
      readonly y: number;
      readonly diameter: number;
    }
  | { readonly kind: "path"; readonly layer: string; readonly segments: readonly CutSegment[] };

/** A chain of segments whose ends do not meet. */
export interface OpenStroke {
  readonly layer: string;
  readonly segments: readonly CutSegment[];
}

/** What entities join to: closed contours, and strokes that stay open. */
export interface Joined {
  readonly contours: readonly CutContour[];
  readonly open: readonly OpenStroke[];
}

/** What is wrong with how the entities of a layer join; on a layer of marks much of it is no fault. */
export interface JoinFault {
  readonly code:
    | "duplicate"
    | "branch"
    | "closed-flag"
    | "joint-gap"
    | "tiny-segment"
    | "zero-length"
    | "repeated-vertex";
  readonly layer: string;
  readonly at: CutPoint;
  /** The length that is told: of the widest gap, or below which a segment is tiny. */
  readonly length: number;
}

/** The faults are added to this list. */
type Faults = JoinFault[];

/**
 * Lengths in the file's unit: ends nearer than `joint` meet, and a loose segment shorter than that is passed over; a segment
 * shorter than `tiny` is remarked on.
 */
export interface JoinTolerance {
  readonly joint: number;
  /** A gap up to this is what six decimals of an inch round to, and none. */
  readonly rounding: number;
  readonly tiny: number;
}

interface Loose {
  readonly layer: string;
  readonly segments: CutSegment[];
}

/** Joins the entities; finds duplicates, zero-length and tiny segments, branches and loose joints. */
export function joinContours(
  entities: readonly DxfEntity[],
  tolerance: JoinTolerance,
): Joined & { readonly faults: readonly JoinFault[] } {
  const faults: Faults = [];
  const isNew = rememberShapes(tolerance.joint, faults);
  const contours: CutContour[] = [];
  const loose = new Map<string, Loose>();
  for (const entity of entities) {
    const { layer } = entity;
    const whole = asCircle(entity);
    if (whole !== null) {
      if (isNew(circleKey(whole), layer, whole)) contours.push({ kind: "circle", layer, ...whole });
      continue;
    }
    const kept = dropEmpty(segmentsOf(entity), layer, tolerance, faults);
    const fresh = kept.filter((segment) => isNew(segmentKey(segment), layer, segment.from));
    if (fresh.length === 0) continue;
    if (entity.kind === "polyline" && entity.closed) {
      contours.push({ kind: "path", layer, segments: kept });
      continue;
    }
    if (isUnflagged(entity, kept, tolerance)) {
      faults.push({ code: "closed-flag", layer, at: kept[0]?.from ?? { x: 0, y: 0 }, length: 0 });
    }
    const pool = loose.get(layer) ?? { layer, segments: [] };
    loose.set(layer, pool);
    for (const segment of fresh) if (segmentLength(segment) > tolerance.joint) pool.segments.push(segment);
  }
  const chains = [...loose.values()].map((pool) => chainLoose(pool, tolerance, faults));
  return {
    contours: [...contours, ...chains.flatMap((chain) => chain.contours)],
    open: chains.flatMap((chain) => chain.open),
    faults,
  };
}

/** CIRCLE, or an ARC that runs full circle. */
function asCircle(entity: DxfEntity): (CutPoint & { readonly diameter: number }) | null {
  const isFull = entity.kind === "circle" || (entity.kind === "arc" && arcSegment(entity) === null);
  return isFull ? { x: entity.x, y: entity.y, diameter: 2 * entity.radius } : null;
}

function segmentsOf(entity: DxfEntity): readonly CutSegment[] {
  switch (entity.kind) {
    case "line":
      return [{ from: entity.from, to: entity.to, bulge: 0 }];
    case "arc":
      return [arcSegment(entity)].filter((segment) => segment !== null);
    case "polyline":
      return polylineSegments(entity.vertices, entity.closed);
    case "circle":
      return [];
  }
}

function isUnflagged(entity: DxfEntity, segments: readonly CutSegment[], { joint }: JoinTolerance): boolean {
  const [first, last] = [segments[0], segments.at(-1)];
  if (entity.kind !== "polyline" || entity.closed || first === undefined || last === undefined) return false;
  return segments.length > 1 && distance(first.from, last.to) <= joint;
}

/** A segment shorter than a thousandth of the joint tolerance is none. */
function dropEmpty(
  segments: readonly CutSegment[],
  layer: string,
  tolerance: JoinTolerance,
  faults: Faults,
): readonly CutSegment[] {
  return segments.filter((segment) => {
    const length = segmentLength(segment);
    if (length > tolerance.tiny) return true;
    const isThere = length > tolerance.joint / 1000;
    const code = isThere ? "tiny-segment" : segments.length > 1 ? "repeated-vertex" : "zero-length";
    faults.push({ code, layer, at: segment.from, length: tolerance.tiny });
    return isThere;
  });
}

/** Tells whether a shape is new; one that is not is drawn twice. */
function rememberShapes(
  joint: number,
  faults: Faults,
): (values: readonly number[], layer: string, at: CutPoint) => boolean {
  const seen = new Set<string>();
  return (values, layer, at) => {
    const key = values.map((value) => Math.round(value / joint)).join(" ");
    if (!seen.has(key)) {
      seen.add(key);
      return true;
    }
    faults.push({ code: "duplicate", layer, at, length: 0 });
    return false;
  };
}

function circleKey({ x, y, diameter }: CutPoint & { readonly diameter: number }): readonly number[] {
  return [x, y, diameter];
}

/** The same for both directions: the lower end first; the sagitta tells arcs over one chord apart. */
function segmentKey({ from, to, bulge }: CutSegment): readonly number[] {
  const sagitta = (bulge * distance(from, to)) / 2;
  const forward = from.x < to.x || (from.x === to.x && from.y <= to.y);
  return forward ? [from.x, from.y, to.x, to.y, sagitta] : [to.x, to.y, from.x, from.y, -sagitta];
}

/** Where segment ends meet. Half-edge 2i leaves segment i's start, 2i + 1 its end. */
interface Nodes {
  /** Node of each half-edge. */
  readonly of: readonly number[];
  /** Half-edges at each node. */
  readonly at: readonly (readonly number[])[];
}

function chainLoose({ layer, segments }: Loose, tolerance: JoinTolerance, faults: Faults): Joined {
  const nodes = findNodes({ layer, segments }, tolerance, faults);
  const used = new Array<boolean>(segments.length).fill(false);
  const contours: CutContour[] = [];
  const open: OpenStroke[] = [];
  const take = (half: number) => {
    if (used[half >> 1] === true) return;
    const { chain, isClosed } = walk(half, segments, nodes, used);
    if (isClosed) contours.push({ kind: "path", layer, segments: chain });
    else open.push({ layer, segments: chain });
  };
  for (const halves of nodes.at) if (halves.length !== 2) for (const half of halves) take(half);
  for (let index = 0; index < segments.length; index++) take(2 * index);
  return { contours, open };
}

/** Follows the chain from a half-edge until it branches, ends, or meets itself. */
function walk(
  start: number,
  segments: readonly CutSegment[],
  nodes: Nodes,
  used: boolean[],
): { readonly chain: readonly CutSegment[]; readonly isClosed: boolean } {
  const chain: CutSegment[] = [];
  let half: number | undefined = start;
  let node = -1;
  while (half !== undefined && used[half >> 1] !== true) {
    const segment = segments[half >> 1];
    if (segment === undefined) break;
    used[half >> 1] = true;
    chain.push(half % 2 === 0 ? segment : { from: segment.to, to: segment.from, bulge: -segment.bulge || 0 });
    const arrived: number = half ^ 1;
    node = nodes.of[arrived] ?? -1;
    const here: readonly number[] = nodes.at[node] ?? [];
    half = here.length === 2 ? here.find((other) => other !== arrived) : undefined;
  }
  return { chain, isClosed: node === nodes.of[start] };
}

function findNodes({ layer, segments }: Loose, { joint, rounding }: JoinTolerance, faults: Faults): Nodes {
  const grid = new Map<number, number[]>();
  const points: CutPoint[] = [];
  const at: number[][] = [];
  const of: number[] = [];
  let worst = { gap: 0, at: { x: 0, y: 0 } };
  let gaps = 0;
  const cell = (value: number) => Math.floor(value / (2 * joint));
  const key = (i: number, j: number) => i * 94_906_267 + j;
  const place = (point: CutPoint, half: number) => {
    const [i, j] = [cell(point.x), cell(point.y)];
    for (let near = 0; near < 9; near++) {
      for (const node of grid.get(key(i + (near % 3) - 1, j + Math.floor(near / 3) - 1)) ?? []) {
        const gap = distance(points[node] ?? point, point);
        if (gap > joint) continue;
        if (gap > rounding) gaps++;
        if (gap > worst.gap) worst = { gap, at: point };
        at[node]?.push(half);
        of[half] = node;
        return;
      }
    }
    const node = points.push(point) - 1;
    at.push([half]);
    of[half] = node;
    const here = key(i, j);
    const others = grid.get(here);
    if (others === undefined) grid.set(here, [node]);
    else others.push(node);
  };
  segments.forEach(({ from, to }, index) => {
    place(from, 2 * index);
    place(to, 2 * index + 1);
  });
  at.forEach((halves, node) => {
    if (halves.length > 2) faults.push({ code: "branch", layer, at: points[node] ?? { x: 0, y: 0 }, length: 0 });
  });
  // Ends that miss each other are joined, and told as often as there are, by the widest.
  for (; gaps > 0; gaps--) faults.push({ code: "joint-gap", layer, at: worst.at, length: worst.gap });
  return { of, at };
}
