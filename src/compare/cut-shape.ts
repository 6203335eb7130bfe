/** What a cut file draws, in the base's own axes: outline and marks. */
import type { CutFile, CutPoint, CutSegment } from "../readers/dxf.js";
import { readCutFile } from "../readers/dxf.js";
import { greatestOf } from "../units/extremes.js";
import { NM_PER_UNIT } from "../units/length.js";
import type { CutShape, HolePlace, OutlineShape } from "./model.js";
import { samePlace } from "./same.js";

type Contour = CutFile["contours"][number];
type Locate = (point: CutPoint) => HolePlace;

/**
 * Reads the bytes of a cut file; `lowerLeft` is where the lower left of the outline lies in the base's axes, wherever the
 * file has its origin. null where the bytes are no cut file in inches or millimetres with an outline.
 */
export function readCutShape(bytes: Uint8Array, lowerLeft: HolePlace): CutShape | null {
  const file = readCutFile(bytes);
  const contour = outlineOf(file);
  if (file.outline === null || contour === null || (file.unit !== "in" && file.unit !== "mm")) return null;
  const scale = NM_PER_UNIT[file.unit];
  const [x0, y0] = file.outline.extent;
  const locate: Locate = ({ x, y }) => ({
    x: Math.round((x - x0) * scale) + lowerLeft.x,
    y: Math.round((y - y0) * scale) + lowerLeft.y,
  });
  const strokes = file.openStrokes.map(({ segments }) => strokeOf(segments, locate));
  const closed = file.closedMarks.map((mark) => closedMark(mark, locate));
  return { outline: outlineShape(contour, locate, scale), marks: [...strokes, ...closed] };
}

/** The contour whose box is the outline's. */
function outlineOf({ outline, contours }: CutFile): Contour | null {
  if (outline === null) return null;
  const onLayer = contours.filter(({ layer }) => layer === outline.layer);
  const areas = onLayer.map((contour) => (contour.kind === "circle" ? circleArea(contour) : Math.abs(areaOf(contour))));
  return onLayer[areas.indexOf(greatestOf(areas))] ?? null;
}

const circleArea = ({ diameter }: { readonly diameter: number }): number => (Math.PI * diameter * diameter) / 4;

/** Area of the corners' polygon, positive when they run counter-clockwise. Enough to tell the largest and the direction. */
function areaOf({ segments }: { readonly segments: readonly CutSegment[] }): number {
  return segments.reduce((sum, { from, to }) => sum + (from.x * to.y - to.x * from.y) / 2, 0);
}

function outlineShape(contour: Contour, locate: Locate, scale: number): OutlineShape {
  if (contour.kind === "circle") {
    return { kind: "circle", center: locate(contour), diameter: Math.round(contour.diameter * scale) };
  }
  const { segments } = contour;
  const forward = areaOf(contour) >= 0 ? segments : segments.map(reversed).reverse();
  return { kind: "path", corners: forward.map(({ from, bulge }) => ({ ...locate(from), bulge })) };
}

const reversed = ({ from, to, bulge }: CutSegment): CutSegment => ({ from: to, to: from, bulge: -bulge });

function strokeOf(segments: readonly CutSegment[], locate: Locate): readonly HolePlace[] {
  const first = segments[0];
  return first === undefined ? [] : [first.from, ...segments.map(({ to }) => to)].map(locate);
}

function closedMark(mark: Contour, locate: Locate): readonly HolePlace[] {
  if (mark.kind === "path") return strokeOf(mark.segments, locate);
  const { x, y, diameter } = mark;
  return [locate({ x: x - diameter / 2, y }), locate({ x: x + diameter / 2, y })];
}

/** True when both are the same shape at the same place, whatever corner they start at. */
export function sameOutline(a: OutlineShape, b: OutlineShape): boolean {
  if (a.kind === "circle" || b.kind === "circle") {
    if (a.kind !== "circle" || b.kind !== "circle") return false;
    return samePlace(a.center, b.center) && Math.abs(a.diameter - b.diameter) <= 2 * CORNER_SLACK;
  }
  const count = a.corners.length;
  if (count !== b.corners.length) return false;
  const sides = [a, b].map(({ corners }) =>
    corners.map((corner, i) => sideOf(corner, corners[(i + 1) % count] ?? corner)),
  );
  const [own = [], other = []] = sides;
  return own.some((_, shift) => own.every((_side, i) => sameSide(own[(i + shift) % count], other[i])));
}

interface Side {
  readonly from: HolePlace;
  /** A point of the side half way along, which tells an arc from another. */
  readonly middle: HolePlace;
}

function sideOf(from: HolePlace & { readonly bulge: number }, to: HolePlace): Side {
  const middle = {
    x: (from.x + to.x) / 2 + ((to.y - from.y) * from.bulge) / 2,
    y: (from.y + to.y) / 2 - ((to.x - from.x) * from.bulge) / 2,
  };
  return { from, middle };
}

/** Twice what a corner may be off by rounding, in nanometres: the lower left it is measured from is rounded as well. */
const CORNER_SLACK = 100;

function sameSide(a: Side | undefined, b: Side | undefined): boolean {
  return a !== undefined && b !== undefined && near(a.from, b.from) && near(a.middle, b.middle);
}

const near = (a: HolePlace, b: HolePlace): boolean =>
  Math.abs(a.x - b.x) <= CORNER_SLACK && Math.abs(a.y - b.y) <= CORNER_SLACK;

/** True when both draw the same strokes in the same order. */
export function sameMarks(a: CutShape["marks"], b: CutShape["marks"]): boolean {
  return a.length === b.length && a.every((stroke, index) => sameStroke(stroke, b[index] ?? []));
}

function sameStroke(a: readonly HolePlace[], b: readonly HolePlace[]): boolean {
  return a.length === b.length && a.every((place, index) => near(place, b[index] ?? { x: Number.NaN, y: Number.NaN }));
}
