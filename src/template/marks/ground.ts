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
  /** True where the box is this far from the outline. */
  isInside(box: Extent, clearance: number): boolean;
  readonly holes: readonly Disc[];
  readonly openings: readonly Extent[];
  /** Seats of nuts and washers: marks there are covered once the rods are set. */
  readonly seats: readonly Disc[];
  /** The marks placed so far. */
  readonly taken: readonly Taken[];
}

/** The box of a mark, and the height of its letters in millimetres: 0 for lines. */
export interface Taken {
  readonly box: Extent;
  readonly letters: number;
}

/** A place that is measured off by the clearance is free though double arithmetic comes out short: 1 nm. */
const NOISE = 1 / NM_PER_MM;

/** The bare ground of a plate; `clearance` is the shop's, in millimetres. */
export function bareGround(outer: Contour, holes: readonly Hole[], seats: readonly Disc[], clearance: number): Ground {
  return {
    extent: extentOf(outer),
    clearance,
    isInside: insideOf(outer),
    holes: holes.flatMap(({ center, shape }) =>
      shape.kind === "circle" ? [{ center, radius: shape.diameter / 2 / NM_PER_MM }] : [],
    ),
    openings: holes.flatMap(({ shape, contour }) => (shape.kind === "rectangle" ? [extentOf(contour)] : [])),
    seats,
    taken: [],
  };
}

/** The ground with more marks on it. */
export function take(ground: Ground, more: readonly Taken[]): Ground {
  return { ...ground, taken: [...ground.taken, ...more] };
}

/** Letters are best read where they stand off holes and edges by this share of their height. */
const EASY = 0.4;

/** The ground as it is best used for letters of this height in mm: with more than the shop's clearance. */
export function easyGround(ground: Ground, letters: number): Ground {
  return { ...ground, clearance: Math.max(ground.clearance, EASY * letters) };
}

/** Only what could stand in the way within `reach` millimetres of a point: makes many tests near one hole quick. */
export function near(ground: Ground, at: Point, reach: number): Ground {
  const isNearDisc = ({ center, radius }: Disc) =>
    Math.abs(center.x - at.x) <= reach + radius && Math.abs(center.y - at.y) <= reach + radius;
  const isNearBox = (box: Extent) => gapToExtent(at, box) <= reach;
  const isNearMark = ({ box, letters }: Taken) => gapToExtent(at, box) <= reach + letters;
  return {
    ...ground,
    holes: ground.holes.filter(isNearDisc),
    openings: ground.openings.filter(isNearBox),
    seats: ground.seats.filter(isNearDisc),
    taken: ground.taken.filter(isNearMark),
  };
}

/**
 * True where a mark with this box and letters of this height (mm, 0 for lines) may stand; seats count only when `offSeats`.
 * Between the lettering of two marks at least the height of the larger letters stays clear, so that they are not read as one.
 */
export function isFree(ground: Ground, box: Extent, letters: number, offSeats: boolean): boolean {
  const clearance = ground.clearance - NOISE;
  return (
    isWithin(box, ground.extent, clearance) &&
    clearsDiscs(box, ground.holes, clearance) &&
    clearsMarks(box, ground.taken, letters, clearance) &&
    ground.openings.every((opening) => gapBetweenExtents(box, opening) >= clearance) &&
    (!offSeats || clearsDiscs(box, ground.seats, -NOISE)) &&
    ground.isInside(box, clearance)
  );
}

/** Loops instead of list methods: most of the time that a plate takes goes by here. */
function clearsDiscs(box: Extent, discs: readonly Disc[], clearance: number): boolean {
  for (const { center, radius } of discs) if (gapToExtent(center, box) < radius + clearance) return false;
  return true;
}

function clearsMarks(box: Extent, taken: readonly Taken[], letters: number, clearance: number): boolean {
  for (const other of taken) {
    const gap = letters > 0 && other.letters > 0 ? Math.max(letters, other.letters) - NOISE : 0;
    if (gapBetweenExtents(box, other.box) < Math.max(clearance, gap)) return false;
  }
  return true;
}

function isWithin(box: Extent, around: Extent, clearance: number): boolean {
  return (
    box.x0 - around.x0 >= clearance &&
    around.x1 - box.x1 >= clearance &&
    box.y0 - around.y0 >= clearance &&
    around.y1 - box.y1 >= clearance
  );
}

function insideOf(outer: Contour): Ground["isInside"] {
  if (outer.kind === "path") return isConvex(outer) && isCornered(outer) ? insideConvex(outer) : insideAny(outer);
  const { center, diameter } = outer;
  return ({ x0, y0, x1, y1 }, clearance) => {
    const radius = diameter / 2 / NM_PER_MM - clearance;
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

/** An arc is a rounded corner up to this turn, 90 degrees as a bulge, and this size in millimetres: of a larger one the box around it holds too much steel. */
const [QUARTER, LARGEST_CORNER] = [Math.tan(Math.PI / 8) + 1e-6, 150];

/** True where every arc is a rounded corner. */
function isCornered({ segments }: Path): boolean {
  return segments.every(({ from, to, bulge }) => {
    const chord = Math.hypot(to.x - from.x, to.y - from.y);
    return bulge === 0 || (bulge <= QUARTER && chord <= LARGEST_CORNER);
  });
}

/** Inside a convex outline: on the inner side of every straight edge, and off the boxes around rounded corners. */
function insideConvex({ segments }: Path): Ground["isInside"] {
  const edges = segments.filter(({ bulge }) => bulge === 0).map(inwardNormal);
  const corners = segments.filter(({ bulge }) => bulge !== 0).map(segmentExtent);
  return (box, clearance) =>
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

function insideAny(outer: Path): Ground["isInside"] {
  return (box, clearance) =>
    containsPoint(outer, { x: box.x0, y: box.y0 }) &&
    outer.segments.every((segment) => gapFromExtentToSegment(box, segment) >= clearance);
}
