/** Areas, perimeters and extents with true arcs. */

import { leastOf } from "../units/extremes.js";
import type { Length } from "../units/length.js";
import { NM_PER_MM, nanometres } from "../units/length.js";
import { signedPolygonArea } from "./contour.js";
import { joinExtents, NO_EXTENT } from "./extent.js";
import { toLattice, withoutNoise } from "./point.js";
import { arcOf, headings, segmentExtent, segmentLength } from "./segment.js";
import type { Contour, Extent, Path, Region, Segment } from "./vocabulary.js";

/** Area inside a contour, mm2, never negative. */
export function measureArea(contour: Contour): number {
  if (contour.kind === "path") return Math.abs(signedArea(contour));
  const radius = contour.diameter / 2 / NM_PER_MM;
  return Math.PI * radius * radius;
}

/** Area inside a path, mm2: positive where it runs counter-clockwise. Chords by shoelace, plus a circular segment an arc. */
export function signedArea({ segments }: Path): number {
  const chords = signedPolygonArea(segments.map(({ from }) => from));
  return segments.reduce((sum, segment) => sum + circularSegmentArea(segment), chords);
}

/** Area between an arc and its chord, mm2, with the sign of the bulge: r2 (sweep - sin sweep) / 2. */
function circularSegmentArea(segment: Segment): number {
  if (segment.bulge === 0) return 0;
  const { radius, sweep } = arcOf(segment);
  const cube = (sweep * sweep * sweep) / 6;
  const difference = Math.abs(sweep) < 1e-3 ? cube * (1 - (sweep * sweep) / 20) : sweep - Math.sin(sweep);
  return (radius * radius * difference) / 2;
}

/** Length of a contour, mm. */
export function measurePerimeter(contour: Contour): number {
  if (contour.kind === "circle") return (Math.PI * contour.diameter) / NM_PER_MM;
  return contour.segments.reduce((sum, segment) => sum + segmentLength(segment), 0);
}

/** Area of material, mm2: outer less inner, which must lie inside it and apart from each other. */
export function regionArea({ outer, inner }: Region): number {
  return inner.reduce((rest, hole) => rest - measureArea(hole), measureArea(outer));
}

/** Box around a contour, quadrant points of arcs included, free of the noise of double arithmetic. */
export function extentOf(contour: Contour): Extent {
  if (contour.kind === "path") return contour.segments.map(segmentExtent).map(clean).reduce(joinExtents, NO_EXTENT);
  const { center, diameter } = contour;
  const radius = diameter / 2 / NM_PER_MM;
  return clean({ x0: center.x - radius, y0: center.y - radius, x1: center.x + radius, y1: center.y + radius });
}

function clean({ x0, y0, x1, y1 }: Extent): Extent {
  return { x0: cleanMillimetres(x0), y0: cleanMillimetres(y0), x1: cleanMillimetres(x1), y1: cleanMillimetres(y1) };
}

function cleanMillimetres(mm: number): number {
  return withoutNoise(mm * NM_PER_MM) / NM_PER_MM;
}

/** Overall size of a box as lengths. */
export function extentSize({ x0, y0, x1, y1 }: Extent): { readonly x: Length; readonly y: Length } {
  return { x: toLattice(x1 - x0), y: toLattice(y1 - y0) };
}

/** Corner to corner of a square, rounded to 1 nm: the circle that it sweeps when it turns. */
export function acrossCorners(side: Length): Length {
  return nanometres(side * Math.SQRT2);
}

/** Turns of less than this (radians) where two segments meet are the rounding of a tangent point, not a corner. */
const TANGENT = 1e-3;

/**
 * The smallest corner that a cutting tool must turn inside the material's edge: the least radius of the arcs that are
 * hollow as seen from the material, 0 for a sharp one, null where there is none. `side` says whether the material lies
 * inside the contour (`outer`) or around it (`inner`: a hole).
 */
export function smallestInsideCorner(contour: Contour, side: "outer" | "inner"): Length | null {
  const sign = side === "outer" ? -1 : 1;
  if (contour.kind === "circle") return side === "inner" ? toLattice(contour.diameter / 2 / NM_PER_MM) : null;
  const turned = contour.segments.flatMap((segment, i) => {
    const next = contour.segments[(i + 1) % contour.segments.length] ?? segment;
    const arc = sign * segment.bulge > 0 ? [arcOf(segment).radius] : [];
    return sign * jointTurn(segment, next) > TANGENT ? [...arc, 0] : arc;
  });
  return turned.length === 0 ? null : toLattice(leastOf(turned));
}

/** Change of direction from one segment to the next, radians in (-pi, pi], positive to the left. */
export function jointTurn(segment: Segment, next: Segment): number {
  const turn = headings(next).start - headings(segment).end;
  const within = turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
  return within === -Math.PI ? Math.PI : within;
}
