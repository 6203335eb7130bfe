/**
 * Reads a cut file, whoever drew it, and says what is in it and what is wrong with it. Shares no code with the writers of
 * cut files. Any bytes give a result: a broken file is a finding, never an exception.
 */
import { type CutContour, joinContours, type OpenStroke } from "./dxf-contours.js";
import { readDrawing } from "./dxf-drawing.js";
import { type CutFileFinding, collectFindings, type FindingList } from "./dxf-findings.js";
import {
  type CutBox,
  circleBox,
  coverBoxes,
  distance,
  EMPTY_BOX,
  isBoxInside,
  pathArea,
  roundOf,
  segmentBox,
  segmentLength,
} from "./dxf-measures.js";

export type { CutContour, OpenStroke } from "./dxf-contours.js";
export type { CutFileFinding, CutFileSeverity } from "./dxf-findings.js";
export type { CutPoint, CutSegment } from "./dxf-measures.js";

/** x0, y0, x1, y1 in the file's unit. */
export type CutExtent = readonly [number, number, number, number];

/** One cut file; lengths and areas in its own unit. */
export interface CutFile {
  /** `$ACADVER`, null where it is not said. */
  readonly version: string | null;
  /** in, mm and others by their short names; null where the file does not say. */
  readonly unit: string | null;
  /** Names in the LAYER table, in its order. */
  readonly layers: readonly string[];
  readonly findings: readonly CutFileFinding[];
  /** The closed contour with the largest area; null where nothing is closed. */
  readonly outline: { readonly layer: string; readonly extent: CutExtent; readonly area: number } | null;
  /** Round contours that are cut, the outline apart. */
  readonly holes: readonly {
    readonly x: number;
    readonly y: number;
    readonly diameter: number;
    readonly layer: string;
  }[];
  /** Closed contours that are cut, outline included, in the file's order as far as it draws them whole. */
  readonly contours: readonly CutContour[];
  /** Closed contours on layers of marks, as the letter O. */
  readonly closedMarks: readonly CutContour[];
  /** Strokes that are not closed, on any layer. */
  readonly openStrokes: readonly OpenStroke[];
  /** True extents of everything that is read, arcs included; null for an empty file. */
  readonly extent: CutExtent | null;
  /** Length of all contours that are cut, outline included. */
  readonly cutLength: number;
  readonly pierces: number;
  /** Outline less everything that is cut inside it. */
  readonly netArea: number;
}

/** Ends of loose segments that are this near meet: 0.01 mm, a tenth of what any thermal cut holds (common practice). */
const JOINT_MM = 0.01;

/** Segments shorter than 0.1 mm are remarked on: controls slow down on them (common practice). */
const TINY_MM = 0.1;

/** A chain that misses closing by less than 1 mm was meant to be closed (common practice). */
const GAP_MM = 1;

const MM_PER_UNIT: Readonly<Record<string, number>> = {
  in: 25.4,
  ft: 304.8,
  mi: 1_609_344,
  mm: 1,
  cm: 10,
  m: 1000,
  km: 1e6,
  microinch: 25.4e-6,
  mil: 0.0254,
  yd: 914.4,
  "US survey foot": 1_200_000 / 3937,
};

interface Measured {
  readonly contour: CutContour;
  readonly box: CutBox;
  readonly area: number;
}

/** Reads the bytes of a DXF file. A file that names no unit is measured as if it were in millimetres. */
export function readCutFile(bytes: Uint8Array): CutFile {
  const drawing = readDrawing(bytes);
  const findings = collectFindings();
  const mm = MM_PER_UNIT[drawing.header.unit ?? "mm"] ?? 1;
  const tolerance = { joint: JOINT_MM / mm, tiny: TINY_MM / mm };
  const { contours: joined, open } = joinContours(drawing.entities, tolerance, findings);
  const closed = joined.map(measureContour);
  const outline = closed.reduce<Measured | null>((best, next) => (next.area > (best?.area ?? 0) ? next : best), null);
  const markLayers = findMarkLayers(open, outline, mm, findings);
  const cut = closed.filter(({ contour }) => !markLayers.has(contour.layer));
  const extent = coverAll(closed, open);
  reportOutside(cut, outline, tolerance.joint, findings);
  reportExtents(drawing.header.extents, extent, tolerance.joint, findings);
  if (outline === null) findings.add("no-contour", "stop", "nothing in the file is closed: there is no outline");
  return {
    version: drawing.header.version,
    unit: drawing.header.unit,
    layers: drawing.layers.map((layer) => layer.name),
    findings: [...drawing.findings, ...findings.list()],
    outline: outline && { layer: outline.contour.layer, extent: asExtent(outline.box), area: outline.area },
    holes: findHoles(cut, outline, tolerance.joint),
    contours: cut.map(({ contour }) => contour),
    closedMarks: closed.filter(({ contour }) => markLayers.has(contour.layer)).map(({ contour }) => contour),
    openStrokes: open,
    extent: extent === null ? null : asExtent(extent),
    cutLength: cut.reduce((sum, { contour }) => sum + contourLength(contour), 0),
    pierces: cut.length,
    netArea: cut.reduce((rest, each) => (each === outline ? rest : rest - each.area), outline?.area ?? 0),
  };
}

function measureContour(contour: CutContour): Measured {
  switch (contour.kind) {
    case "circle": {
      const radius = contour.diameter / 2;
      return { contour, box: circleBox(contour.x, contour.y, radius), area: Math.PI * radius * radius };
    }
    case "path":
      return { contour, box: boxOf(contour.segments), area: Math.abs(pathArea(contour.segments)) };
  }
}

function boxOf(segments: OpenStroke["segments"]): CutBox {
  return segments.map(segmentBox).reduce(coverBoxes, EMPTY_BOX);
}

function contourLength(contour: CutContour): number {
  if (contour.kind === "circle") return Math.PI * contour.diameter;
  return contour.segments.reduce((sum, segment) => sum + segmentLength(segment), 0);
}

function asExtent({ x0, y0, x1, y1 }: CutBox): CutExtent {
  return [x0, y0, x1, y1];
}

function coverAll(closed: readonly Measured[], open: readonly OpenStroke[]): CutBox | null {
  const boxes = [...closed.map(({ box }) => box), ...open.map(({ segments }) => boxOf(segments))];
  return boxes.length === 0 ? null : boxes.reduce(coverBoxes, EMPTY_BOX);
}

/**
 * A layer that holds open strokes inside the outline, and not the outline, holds marks. An open stroke on the outline's own
 * layer or outside the outline, or one that all but closes, is a contour left open.
 */
function findMarkLayers(
  open: readonly OpenStroke[],
  outline: Measured | null,
  mm: number,
  findings: FindingList,
): ReadonlySet<string> {
  const marks = new Set<string>();
  const left = new Set<string>();
  for (const { layer, segments } of open) {
    const [from, to] = [segments[0]?.from, segments.at(-1)?.to];
    if (from === undefined || to === undefined) continue;
    const gap = distance(from, to);
    const length = segments.reduce((sum, segment) => sum + segmentLength(segment), 0);
    const isInside =
      outline !== null && layer !== outline.contour.layer && isBoxInside(boxOf(segments), outline.box, 0);
    if (isInside && (gap > GAP_MM / mm || length < 10 * gap)) {
      findings.add("open-strokes", "advise", `open strokes on layer ${layer} are taken for marks`, [from.x, from.y]);
      marks.add(layer);
      continue;
    }
    findings.add("open-contour", "stop", `contours on layer ${layer} are not closed`, [from.x, from.y]);
    left.add(layer);
  }
  return new Set([...marks].filter((layer) => !left.has(layer)));
}

function reportOutside(
  cut: readonly Measured[],
  outline: Measured | null,
  tolerance: number,
  findings: FindingList,
): void {
  if (outline === null) return;
  for (const { box } of cut) {
    if (isBoxInside(box, outline.box, tolerance)) continue;
    findings.add("outside-outline", "stop", "contours reach beyond the largest one", [box.x0, box.y0]);
  }
}

function reportExtents(said: CutBox | null, extent: CutBox | null, tolerance: number, findings: FindingList): void {
  if (extent === null) return;
  if (said === null) {
    findings.add("no-extents", "advise", "the header does not say the extents ($EXTMIN, $EXTMAX)");
    return;
  }
  if (isBoxInside(said, extent, tolerance) && isBoxInside(extent, said, tolerance)) return;
  findings.add("extents", "advise", "the header's extents ($EXTMIN, $EXTMAX) are not those of what is drawn");
}

/** Circles, and paths of arcs that all lie on one circle. */
function findHoles(cut: readonly Measured[], outline: Measured | null, tolerance: number): CutFile["holes"] {
  return cut
    .filter((each) => each !== outline)
    .flatMap(({ contour }) => {
      const round = contour.kind === "circle" ? contour : roundPath(contour, tolerance);
      return round === null ? [] : [{ x: round.x, y: round.y, diameter: round.diameter, layer: contour.layer }];
    });
}

function roundPath(
  { segments }: Extract<CutContour, { kind: "path" }>,
  tolerance: number,
): { readonly x: number; readonly y: number; readonly diameter: number } | null {
  if (segments.some(({ bulge }) => bulge === 0)) return null;
  const [first, ...others] = segments.map(roundOf);
  if (first === undefined) return null;
  const same = others.every(
    ({ center, radius }) => distance(center, first.center) <= tolerance && Math.abs(radius - first.radius) <= tolerance,
  );
  return same ? { x: first.center.x, y: first.center.y, diameter: 2 * first.radius } : null;
}
