/** Outlines and holes as rings of straight edges. */
import { flatten } from "../geometry/flatten.js";
import { arc, arcOf, meetsAngle, onCircle, path, point, samePoint, segmentsOf } from "../geometry/index.js";
import type { Contour, Point, Segment } from "../geometry/vocabulary.js";
import type { Ring } from "./model.js";

/** Around `outer` counter-clockwise, around each of `inner` clockwise; corners lie on the arcs, at most `chord` mm from their chords. */
export function flatRings(outer: Contour, inner: readonly Contour[], chord: number): readonly Ring[] {
  return [flatRing(outer, chord), ...inner.map((hole) => flatRing(hole, chord).toReversed())];
}

/** Arcs are parted at their outermost points first, so that the ring has the extent of the contour. */
function flatRing(contour: Contour, chord: number): Ring {
  const points = flatten(path(segmentsOf(contour).flatMap(quarters)), chord);
  return points.filter((at, i) => !samePoint(at, points[(i + 1) % points.length] ?? at));
}

/** The parts of an arc between its points farthest right, up, left and down. */
function quarters(segment: Segment): readonly Segment[] {
  if (segment.bulge === 0) return [segment];
  const round = arcOf(segment);
  const sign = Math.sign(round.sweep);
  const turns = [0, 1, 2, 3]
    .map((quarter) => (quarter * Math.PI) / 2)
    .filter((angle) => meetsAngle(round, angle))
    .map((angle) => turnTo(round.start, angle, sign))
    .filter((turn) => turn > END && turn < Math.abs(round.sweep) - END)
    .toSorted((a, b) => a - b);
  const stops = turns.map((turn) => onLattice(onCircle(round.center, round.radius, round.start + sign * turn)));
  const ends = [...turns, Math.abs(round.sweep)];
  return ends.map((end, i) => {
    const sweep = sign * (end - (turns[i - 1] ?? 0));
    return arc(stops[i - 1] ?? segment.from, stops[i] ?? segment.to, Math.tan(sweep / 4));
  });
}

/** An end of an arc that is one of its outermost points is none to part it at (radians). */
const END = 1e-9;

const FULL = 2 * Math.PI;

function turnTo(start: number, angle: number, sign: number): number {
  return (((sign * (angle - start)) % FULL) + FULL) % FULL;
}

function onLattice({ x, y }: Point): Point {
  return point(x, y);
}
