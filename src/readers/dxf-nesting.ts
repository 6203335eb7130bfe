/** Which contour lies in which: outline, what is cut inside it, islands in holes, further outlines. */
import { BoxTree } from "./dxf-box-tree.js";
import type { CutContour } from "./dxf-contours.js";
import {
  type CutBox,
  type CutPoint,
  type CutSegment,
  distance,
  middleOf,
  roundOf,
  segmentBox,
} from "./dxf-measures.js";

/** A contour with its box and the area inside it. */
export interface Measured {
  readonly contour: CutContour;
  readonly box: CutBox;
  readonly area: number;
}

/** How a contour lies among the others. */
export interface Nesting {
  /** How many contours are around it. */
  readonly depth: number;
  /** Whether the outline is one of them. */
  readonly isInOutline: boolean;
  /** Whether it is around others. */
  readonly holdsOthers: boolean;
}

/** Contours about each other, and their lines and arcs, that are looked at; beyond that the nesting is not known. */
const [MOST_LOOKS, MOST_TESTS] = [5_000_000, 20_000_000];

/** How each contour lies among the others; contours that cross count by one point of theirs. Null where there are too many. */
export function nestContours(contours: readonly Measured[], outline: number): readonly Nesting[] | null {
  const tree = new BoxTree(contours.map(({ box }) => box));
  const work = { tests: 0 };
  const tests = contours.map(({ contour }) => insideTest(contour, work));
  const holding = new Uint8Array(contours.length);
  let looks = 0;
  const found = contours.map((inner, index) => {
    const point = pointOn(inner.contour);
    let [depth, isInOutline] = [0, false];
    tree.search({ x0: point.x, y0: point.y, x1: point.x, y1: point.y }, (other) => {
      const outer = contours[other];
      if (other !== index && outer !== undefined && outer.area > inner.area && tests[other]?.(point)) {
        depth++;
        isInOutline ||= other === outline;
        holding[other] = 1;
      }
      return ++looks <= MOST_LOOKS && work.tests <= MOST_TESTS;
    });
    return { depth, isInOutline };
  });
  if (looks > MOST_LOOKS || work.tests > MOST_TESTS) return null;
  return found.map((each, index) => ({ ...each, holdsOthers: holding[index] === 1 }));
}

/** A point of the contour itself that is no joint. */
function pointOn(contour: CutContour): CutPoint {
  if (contour.kind === "circle") return { x: contour.x + contour.diameter / 2, y: contour.y };
  const [first] = contour.segments;
  return first === undefined ? { x: Number.NaN, y: Number.NaN } : middleOf(first);
}

type InsideTest = (point: CutPoint) => boolean;

/** Paths of more segments than this are searched through a tree. */
const FEW_SEGMENTS = 64;

/** Counts in `work` the lines and arcs that it looks at. */
function insideTest(contour: CutContour, work: { tests: number }): InsideTest {
  if (contour.kind === "circle") return (point) => distance(point, contour) < contour.diameter / 2;
  const { segments } = contour;
  if (segments.length <= FEW_SEGMENTS)
    return (point) => {
      work.tests += segments.length;
      return segments.filter((each) => changesSide(each, point)).length % 2 === 1;
    };
  let tree: BoxTree | null = null;
  return (point) => {
    tree ??= new BoxTree(segments.map(segmentBox));
    let isInside = false;
    tree.search({ x0: point.x, y0: point.y, x1: Infinity, y1: point.y }, (index) => {
      const segment = segments[index];
      if (segment !== undefined && changesSide(segment, point)) isInside = !isInside;
      return ++work.tests <= MOST_TESTS;
    });
    return isInside;
  };
}

/** True where the chord is crossed by a ray to the right, or else the point lies between chord and arc: not where both. */
function changesSide(segment: CutSegment, point: CutPoint): boolean {
  const { from, to, bulge } = segment;
  const isCrossed =
    from.y > point.y !== to.y > point.y && point.x < from.x + ((point.y - from.y) / (to.y - from.y)) * (to.x - from.x);
  return bulge === 0 ? isCrossed : isCrossed !== isInCap(segment, point);
}

/** Between the chord of an arc and the arc. */
function isInCap(segment: CutSegment, point: CutPoint): boolean {
  const { from, to, bulge } = segment;
  const { center, radius } = roundOf(segment);
  if (distance(point, center) >= radius) return false;
  const side = (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x);
  return bulge > 0 ? side < 0 : side > 0;
}
