/**
 * Material parted by straight lines: cells that share every cut point exactly. Each line runs from one cell to the next; what
 * lies on its left is one cell, on its right another.
 */
import { segmentsOf } from "./contour.js";
import { crossings } from "./crossing.js";
import { millimetresBetween, point, samePoint } from "./point.js";
import { arcOf, line, positionAlong, reversed } from "./segment.js";
import type { Contour, Path, Point, Region, Segment } from "./vocabulary.js";

/** A straight cut from `from` to `to`, with the cells on either side as seen along it. */
export interface PartingLine {
  readonly from: Point;
  readonly to: Point;
  readonly left: number;
  readonly right: number;
}

/** Material parted into cells, and where each line runs through it. */
export interface Partition {
  /** The outer contours of each cell, by its number; of a sensible cut each has one. */
  readonly cells: readonly (readonly Path[])[];
  /** Stretches of each line inside the material, from its start on. */
  readonly stretches: readonly (readonly Stretch[])[];
}

/** A stretch of a line inside the material. */
export interface Stretch {
  readonly from: Point;
  readonly to: Point;
}

/** Parts a region. `cellOf` tells the cell of a point that is on no line; contours that no line meets stay what they are. */
export function partition(
  { outer, inner }: Region,
  lines: readonly PartingLine[],
  count: number,
  cellOf: (at: Point) => number,
): Partition {
  const loops = [segmentsOf(outer), ...inner.map((hole) => segmentsOf(hole).map(reversed).reverse())];
  const contours = [outer, ...inner];
  const parts = loops.map((loop, i) => splitLoop(loop, contours[i] ?? outer, lines));
  const runs = parts.flatMap((loop) => runsOf(loop, cellOf));
  const splits = parts.flatMap((loop) => loop.flatMap(({ start }) => (start === null ? [] : [start])));
  return {
    cells: Array.from({ length: count }, (_, cell) =>
      closed(
        runs.filter((run) => run.cell === cell),
        lines,
        cell,
      ),
    ),
    stretches: lines.map((each) => stretchesOf(each, splits)),
  };
}

/** Where a loop meets a line. */
interface Split {
  readonly at: Point;
  readonly line: PartingLine;
}

/** A piece of a loop between two splits or joints; `start`: the split that it begins at. */
interface Part {
  readonly segment: Segment;
  readonly start: Split | null;
}

function splitLoop(loop: readonly Segment[], contour: Contour, lines: readonly PartingLine[]): readonly Part[] {
  const split = loop.map((segment) => splitSegment(segment, lines));
  const parts = split.flatMap(({ parts: own }, i) => startAt(split.at(i - 1)?.atEnd ?? null, own));
  return contour.kind === "circle" ? withoutHalves(parts) : parts;
}

/** A cut through the joint of two segments is the start of the second, whichever of them it was found on. */
function startAt(split: Split | null, parts: readonly Part[]): readonly Part[] {
  const [first, ...others] = parts;
  if (split === null || first === undefined || first.start !== null) return parts;
  return [{ segment: { ...first.segment, from: split.at }, start: split }, ...others];
}

/** The pieces of a segment, and the cut at its very end. */
interface SplitSegment {
  readonly parts: readonly Part[];
  readonly atEnd: Split | null;
}

function splitSegment(segment: Segment, lines: readonly PartingLine[]): SplitSegment {
  const cuts = lines
    .flatMap((each) =>
      crossings(line(each.from, each.to), segment).map((at) => ({
        split: { at: point(at.x, at.y), line: each },
        along: shareAlong(segment, at),
      })),
    )
    .sort((a, b) => a.along - b.along);
  const stations = [{ split: null, along: 0 }, ...cuts, { split: null, along: 1 }];
  const parts = stations.slice(1).flatMap((end, i): readonly Part[] => {
    const start = stations[i] ?? end;
    const from = start.split?.at ?? segment.from;
    const to = end.split?.at ?? segment.to;
    if (millimetresBetween(from, to) < SAME_PLACE) return [];
    const bulge = segment.bulge === 0 ? 0 : Math.tan((arcOf(segment).sweep * (end.along - start.along)) / 4);
    return [{ segment: { from, to, bulge }, start: start.split }];
  });
  const last = cuts.at(-1)?.split ?? null;
  return { parts, atEnd: last !== null && millimetresBetween(last.at, segment.to) < SAME_PLACE ? last : null };
}

/** Two cut points nearer than this are one, in millimetres. */
const SAME_PLACE = 2e-6;

/** How far along a segment a point on it lies, from 0 to 1. */
function shareAlong(segment: Segment, at: Point): number {
  if (segment.bulge === 0) return millimetresBetween(segment.from, at) / millimetresBetween(segment.from, segment.to);
  const { center, start, sweep } = arcOf(segment);
  const full = 2 * Math.PI;
  const turned = Math.sign(sweep) * (Math.atan2(at.y - center.y, at.x - center.x) - start);
  const along = ((turned % full) + full) % full;
  return Math.min(1, (along > full - 1e-9 ? 0 : along) / Math.abs(sweep));
}

/** The halves in which a circle comes meet at points that are no cuts: joined again where one ends and the other begins. */
function withoutHalves(parts: readonly Part[]): readonly Part[] {
  const first = parts.findIndex(({ start }) => start !== null);
  if (first < 0) return parts;
  const joined: Part[] = [];
  for (const part of [...parts.slice(first), ...parts.slice(0, first)]) {
    const last = joined.at(-1);
    if (part.start !== null || last === undefined) joined.push(part);
    else joined[joined.length - 1] = { ...last, segment: oneArc(last.segment, part.segment) };
  }
  return joined;
}

function oneArc(a: Segment, b: Segment): Segment {
  return { from: a.from, to: b.to, bulge: Math.tan(Math.atan(a.bulge) + Math.atan(b.bulge)) };
}

/** Parts of one loop that lie in one cell, from where it comes in to where it leaves. */
interface Run {
  readonly cell: number;
  readonly segments: readonly Segment[];
  readonly start: Split;
  readonly end: Split;
}

function runsOf(loop: readonly Part[], cellOf: (at: Point) => number): readonly Run[] {
  const cells = loop.map(({ segment }) => cellOf(positionAlong(segment, 0.5)));
  const first = cells.findIndex((cell, i) => cell !== cells.at(i - 1));
  if (first < 0) return [];
  const around = [...loop.keys()].map((i) => (first + i) % loop.length);
  const groups: number[][] = [];
  for (const i of around) {
    const last = groups.at(-1);
    if (last === undefined || cells[last[0] ?? 0] !== cells[i]) groups.push([i]);
    else last.push(i);
  }
  return groups.flatMap((group, g) => {
    const start = loop[group[0] ?? 0]?.start;
    const end = loop[groups[(g + 1) % groups.length]?.[0] ?? 0]?.start;
    if (start === null || start === undefined || end === null || end === undefined) return [];
    const segments = group.flatMap((i) => loop[i]?.segment ?? []);
    return [{ cell: cells[group[0] ?? 0] ?? 0, segments: endingAt(segments, end.at), start, end }];
  });
}

/** A cut through a joint is found on both segments, a nanometre apart at most: the run ends where the next begins. */
function endingAt(segments: readonly Segment[], at: Point): readonly Segment[] {
  return segments.map((segment, i) => (i === segments.length - 1 ? { ...segment, to: at } : segment));
}

/** How far along a line a point lies, in millimetres. */
function alongLine({ from, to }: Stretch, { x, y }: Point): number {
  const length = millimetresBetween(from, to);
  return ((x - from.x) * (to.x - from.x) + (y - from.y) * (to.y - from.y)) / length;
}

/** Runs joined by stretches of the lines, the material on their left. */
function closed(runs: readonly Run[], lines: readonly PartingLine[], cell: number): readonly Path[] {
  const left = new Set(runs);
  const paths: Path[] = [];
  for (const first of runs) {
    const segments: Segment[] = [];
    let run: Run | undefined = first;
    while (run !== undefined && left.delete(run)) {
      const next: Run | undefined = nextRun(run, runs, lines, cell);
      for (const segment of run.segments) segments.push(segment);
      if (next !== undefined && !samePoint(run.end.at, next.start.at)) segments.push(line(run.end.at, next.start.at));
      run = next;
    }
    if (segments.length > 0) paths.push({ kind: "path", segments });
  }
  return paths;
}

function nextRun(run: Run, runs: readonly Run[], lines: readonly PartingLine[], cell: number): Run | undefined {
  const on = lines.find((each) => each === run.end.line);
  if (on === undefined) return undefined;
  const sign = on.left === cell ? 1 : -1;
  const from = sign * alongLine(on, run.end.at);
  const ahead = runs
    .filter(({ start }) => start.line === on)
    .map((other) => ({ other, by: sign * alongLine(on, other.start.at) - from }))
    .filter(({ by }) => by >= 0)
    .sort((a, b) => a.by - b.by);
  return ahead[0]?.other;
}

function stretchesOf(on: PartingLine, splits: readonly Split[]): readonly Stretch[] {
  const met = splits
    .filter((split) => split.line === on)
    .map(({ at }) => at)
    .sort((a, b) => alongLine(on, a) - alongLine(on, b));
  return met.flatMap((from, i) => {
    const to = met[i + 1];
    return i % 2 === 0 && to !== undefined ? [{ from, to }] : [];
  });
}
