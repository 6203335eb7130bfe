/**
 * Where marks may stand: inside the outline, off every hole, opening and mark already placed, each by the shop's clearance.
 * Marks are held by the boxes around them, so that what is free here is free stroke by stroke.
 */
import type { Contour, Extent, Path, Point, Segment } from "../../geometry/index.js";
import {
  containsPoint,
  extentOf,
  gapBetweenExtents,
  gapFromExtentToSegment,
  gapToExtent,
  jointTurn,
  segmentExtent,
} from "../../geometry/index.js";
import { NM_PER_MM } from "../../units/length.js";
import type { Hole } from "../model.js";

/** A disc that marks keep off: a hole, or the seat of a nut. */
export interface Disc {
  readonly center: Point;
  readonly radius: number;
}

/** What stands in the way of marks. */
export interface Ground {
  readonly extent: Extent;
  readonly clearance: number;
  /** True where the box has the clearance from the outline. */
  isInside(box: Extent): boolean;
  readonly holes: readonly Disc[];
  readonly openings: readonly Extent[];
  /** Seats of nuts and washers: marks there are covered once the rods are set. */
  readonly seats: readonly Disc[];
  /** Boxes of the marks placed so far. */
  readonly taken: readonly Extent[];
}

/** A place that is measured off by the clearance is free though double arithmetic comes out short: 1 nm. */
const NOISE = 1 / NM_PER_MM;

/** The bare ground of a plate; `clearance` is the shop's, in millimetres. */
export function bareGround(outer: Contour, holes: readonly Hole[], seats: readonly Disc[], clearance: number): Ground {
  return {
    extent: extentOf(outer),
    clearance,
    isInside: insideOf(outer, clearance - NOISE),
    holes: holes.flatMap(({ center, shape }) =>
      shape.kind === "circle" ? [{ center, radius: shape.diameter / 2 / NM_PER_MM }] : [],
    ),
    openings: holes.flatMap(({ shape, contour }) => (shape.kind === "rectangle" ? [extentOf(contour)] : [])),
    seats,
    taken: [],
  };
}

/** The ground with more boxes taken. */
export function take(ground: Ground, boxes: readonly Extent[]): Ground {
  return { ...ground, taken: [...ground.taken, ...boxes] };
}

/** Only what could stand in the way within `reach` millimetres of a point: makes many tests near one hole quick. */
export function near(ground: Ground, at: Point, reach: number): Ground {
  const isNearDisc = ({ center, radius }: Disc) =>
    Math.abs(center.x - at.x) <= reach + radius && Math.abs(center.y - at.y) <= reach + radius;
  const isNearBox = (box: Extent) => gapToExtent(at, box) <= reach;
  return {
    ...ground,
    holes: ground.holes.filter(isNearDisc),
    openings: ground.openings.filter(isNearBox),
    seats: ground.seats.filter(isNearDisc),
    taken: ground.taken.filter(isNearBox),
  };
}

/** True where a mark with this box may stand; seats count only when `offSeats`. */
export function isFree(ground: Ground, box: Extent, offSeats: boolean): boolean {
  const { holes, openings, seats, taken } = ground;
  const clearance = ground.clearance - NOISE;
  const clears = ({ center, radius }: Disc) => gapToExtent(center, box) >= radius + clearance;
  const apart = (other: Extent) => gapBetweenExtents(box, other) >= clearance;
  return (
    isWithin(box, ground.extent, clearance) &&
    holes.every(clears) &&
    taken.every(apart) &&
    openings.every(apart) &&
    (!offSeats || seats.every(({ center, radius }) => gapToExtent(center, box) >= radius - NOISE)) &&
    ground.isInside(box)
  );
}

function isWithin(box: Extent, around: Extent, clearance: number): boolean {
  return (
    box.x0 - around.x0 >= clearance &&
    around.x1 - box.x1 >= clearance &&
    box.y0 - around.y0 >= clearance &&
    around.y1 - box.y1 >= clearance
  );
}

function insideOf(outer: Contour, clearance: number): (box: Extent) => boolean {
  if (outer.kind === "path") return isConvex(outer) ? insideConvex(outer, clearance) : insideAny(outer, clearance);
  const { center, diameter } = outer;
  const radius = diameter / 2 / NM_PER_MM - clearance;
  return ({ x0, y0, x1, y1 }) => {
    const dx = Math.max(x1 - center.x, center.x - x0);
    const dy = Math.max(y1 - center.y, center.y - y0);
    return radius > 0 && dx * dx + dy * dy <= radius * radius;
  };
}

function isConvex({ segments }: Path): boolean {
  return segments.every((segment, i) => {
    const next = segments[(i + 1) % segments.length] ?? segment;
    return segment.bulge >= 0 && jointTurn(segment, next) > -1e-6;
  });
}

/** Inside a convex outline: on the inner side of every straight edge, and off the boxes around rounded corners. */
function insideConvex({ segments }: Path, clearance: number): (box: Extent) => boolean {
  const edges = segments.filter(({ bulge }) => bulge === 0).map(inwardNormal);
  const corners = segments.filter(({ bulge }) => bulge !== 0).map(segmentExtent);
  return (box) =>
    edges.every(({ nx, ny, offset }) => {
      const depth = (nx > 0 ? box.x0 : box.x1) * nx + (ny > 0 ? box.y0 : box.y1) * ny - offset;
      return depth >= clearance;
    }) && corners.every((corner) => gapBetweenExtents(box, corner) >= clearance);
}

function inwardNormal({ from, to }: Segment): { readonly nx: number; readonly ny: number; readonly offset: number } {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.sqrt(dx * dx + dy * dy);
  const [nx, ny] = [-dy / length, dx / length];
  return { nx, ny, offset: from.x * nx + from.y * ny };
}

function insideAny(outer: Path, clearance: number): (box: Extent) => boolean {
  return (box) =>
    containsPoint(outer, { x: box.x0, y: box.y0 }) &&
    outer.segments.every((segment) => gapFromExtentToSegment(box, segment) >= clearance);
}
