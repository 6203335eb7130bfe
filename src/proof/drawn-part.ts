/** What a cut file draws, in millimetres at a given scale: holes, outline and openings as the geometry of the plates has them. */
import type { Contour, Point } from "../geometry/vocabulary.js";
import type { CutContour, CutFile } from "../readers/dxf.js";
import { millimetres } from "../units/length.js";

/** One part of a drawing, in millimetres. */
export interface DrawnPart {
  readonly holes: readonly { readonly at: Point; readonly diameter: number }[];
  readonly outline: Contour | null;
  readonly openings: readonly Contour[];
}

/** The part at `mm` millimetres to a unit of the file. Null where it is too large or too small to be one. */
export function drawnPart(file: CutFile, mm: number): DrawnPart | null {
  const isWhole = file.extent?.every((value) => Math.abs(value * mm) < 1e6) ?? false;
  if (!isWhole) return null;
  return {
    holes: file.holes.map(({ x, y, diameter }) => ({ at: { x: x * mm, y: y * mm }, diameter: diameter * mm })),
    outline: file.outlineContour === null ? null : scaled(file.outlineContour, mm),
    openings: file.openings.map((opening) => scaled(opening.contour, mm)),
  };
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
