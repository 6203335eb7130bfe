/** What a cut file draws, in millimetres at a given scale: holes, outline and openings as the geometry of the plates has them. */
import type { Contour, Point } from "../geometry/vocabulary.js";
import type { CutContour, CutFile } from "../readers/dxf.js";
import { millimetres } from "../units/length.js";
import { centroidOf } from "./centroid.js";
import { hullOf, MOST_SEGMENTS } from "./hull.js";

/** A contour of a drawing. */
export interface DrawnContour {
  /** As it is drawn; of very many segments the hull around them. */
  readonly contour: Contour;
  readonly isHull: boolean;
  /** Centre of the area inside what is drawn. */
  readonly middle: Point;
}

/** One part of a drawing, in millimetres. */
export interface DrawnPart {
  readonly holes: readonly { readonly at: Point; readonly diameter: number }[];
  readonly outline: DrawnContour | null;
  readonly openings: readonly DrawnContour[];
}

/** A file with its contours, in its own unit: worked out once, since it is laid on every plate at several scales. */
export interface Drawing {
  readonly file: CutFile;
  readonly outline: HeldContour | null;
  readonly openings: readonly HeldContour[];
}

/** `middle` only of a hull: that of a contour is worked out at its scale. */
interface HeldContour {
  readonly contour: CutContour;
  readonly middle: Point | null;
}

/** Holds what is drawn by no more segments than are compared. */
export function drawingOf(file: CutFile): Drawing {
  const { outlineContour, openings } = file;
  return {
    file,
    outline: outlineContour === null ? null : heldContour(outlineContour),
    openings: openings.map(({ contour }) => heldContour(contour)),
  };
}

function heldContour(contour: CutContour): HeldContour {
  if (contour.kind === "circle" || contour.segments.length <= MOST_SEGMENTS) return { contour, middle: null };
  return { contour: { ...contour, segments: hullOf(contour.segments) }, middle: centroidOf(contour) };
}

/** The part at `mm` millimetres to a unit of the file. Null where it is too large or too small to be one. */
export function drawnPart({ file, outline, openings }: Drawing, mm: number): DrawnPart | null {
  const isWhole = file.extent?.every((value) => Math.abs(value * mm) < 1e6) ?? false;
  if (!isWhole) return null;
  return {
    holes: file.holes.map(({ x, y, diameter }) => ({ at: { x: x * mm, y: y * mm }, diameter: diameter * mm })),
    outline: outline === null ? null : drawnContour(outline, mm),
    openings: openings.map((opening) => drawnContour(opening, mm)),
  };
}

function drawnContour({ contour, middle }: HeldContour, mm: number): DrawnContour {
  const drawn = scaled(contour, mm);
  if (middle === null) return { contour: drawn, isHull: false, middle: centroidOf(drawn) };
  return { contour: drawn, isHull: true, middle: { x: middle.x * mm, y: middle.y * mm } };
}

function scaled(contour: CutContour, mm: number): Contour {
  if (contour.kind === "circle") {
    const center = { x: contour.x * mm, y: contour.y * mm };
    return { kind: "circle", center, diameter: millimetres(contour.diameter * mm) };
  }
  const point = ({ x, y }: Point): Point => ({ x: x * mm, y: y * mm });
  return {
    kind: "path",
    segments: contour.segments.map(({ from, to, bulge }) => ({ from: point(from), to: point(to), bulge })),
  };
}
