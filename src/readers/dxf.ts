/**
 * Reads a cut file, whoever drew it, and says what is in it and what is wrong with it. Shares no code with the writers of
 * cut files. Any bytes give a result: a broken file is a finding, never an exception.
 *
 * A finding is `stop` where something would be cut wrongly or where it cannot be known what is meant, `advise` where the file
 * is read rightly here but some control may not, or somebody should look.
 */
import { type CutContour, joinContours, type OpenStroke } from "./dxf-contours.js";
import { reportCrossings } from "./dxf-crossings.js";
import { ROUND_MM } from "./dxf-curves.js";
import { type DxfDrawing, readDrawing } from "./dxf-drawing.js";
import { type CutFileFinding, collectFindings, type FindingList } from "./dxf-findings.js";
import { millimetresPer } from "./dxf-header.js";
import { reportJoinFaults } from "./dxf-join-faults.js";
import { boxOfStroke, judgeLayer, type LayerRoles, type LayerUse } from "./dxf-layers.js";
import {
  type CutBox,
  circleBox,
  coverBoxes,
  distance,
  EMPTY_BOX,
  isBoxInside,
  pathArea,
  segmentLength,
} from "./dxf-measures.js";
import { type Measured, type Nesting, nestContours } from "./dxf-nesting.js";
import { roundOfContour } from "./dxf-round.js";

export type { CutContour, OpenStroke } from "./dxf-contours.js";
export type { CutFileFinding, CutFileSeverity } from "./dxf-findings.js";
export { millimetresPer } from "./dxf-header.js";
export type { LayerRoles } from "./dxf-layers.js";
export type { CutPoint, CutSegment } from "./dxf-measures.js";
export { LARGEST_CUT_FILE } from "./dxf-tags.js";

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
  readonly outline: {
    readonly layer: string;
    readonly extent: CutExtent;
    readonly area: number;
  } | null;
  /** Round contours that are cut, the outline apart; a polygon that stands for a circle by the circle through its corners. */
  readonly holes: readonly {
    readonly x: number;
    readonly y: number;
    readonly diameter: number;
    readonly layer: string;
  }[];
  /** The contour of the outline. */
  readonly outlineContour: CutContour | null;
  /** Contours that are cut directly inside the outline and are not round. */
  readonly openings: readonly {
    readonly extent: CutExtent;
    readonly area: number;
    readonly layer: string;
    readonly contour: CutContour;
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
  /** Outline less what is cut inside it; islands in holes are material again. */
  readonly netArea: number;
}

/** Ends of loose segments that are this near meet: 0.01 mm, a tenth of what any thermal cut holds (common practice). */
const JOINT_MM = 0.01;

/** Ends this near are the same point, rounded: 1e-6 in is 2.54e-5 mm. */
const ROUNDING_MM = 3e-5;

/** Segments shorter than 0.1 mm are remarked on: controls slow down on them (common practice). */
const TINY_MM = 0.1;

/** What the caller knows of the file beforehand. */
export interface CutFileKnowledge {
  /** Layers of the shop, which decide what is cut and what is scribed. */
  readonly layers?: LayerRoles;
}

/** Reads the bytes of a DXF file. A file that names no unit is measured as if it were in millimetres. */
export function readCutFile(bytes: Uint8Array, knowledge: CutFileKnowledge = {}): CutFile {
  return readCutDrawing(readDrawing(bytes), knowledge);
}

/** The same of a file whose entities are read already. */
export function readCutDrawing(drawing: DxfDrawing, knowledge: CutFileKnowledge = {}): CutFile {
  const findings = collectFindings();
  const mm = millimetresPer(drawing.header.unit);
  const tolerance = { joint: JOINT_MM / mm, rounding: ROUNDING_MM / mm, tiny: TINY_MM / mm };
  const { contours: joined, open, faults } = joinContours(drawing.entities, tolerance);
  const closed = joined.map(measureContour);
  const outline = closed.reduce<Measured | null>((best, next) => (next.area > (best?.area ?? 0) ? next : best), null);
  const layers = judgeLayers(closed, open, outline, mm, knowledge.layers);
  const isMark = (layer: string) => layers.get(layer)?.isMark === true;
  const cut = closed.filter(({ contour }) => !isMark(contour.layer));
  const strokes = open.filter(({ layer }) => isMark(layer));
  const extent = coverAll(closed, open);
  reportVersion(drawing, findings);
  reportJoinFaults(faults, isMark, findings);
  reportLayerUse(layers, strokes, outline, findings);
  reportCrossings(
    cut.map(({ contour }) => contour),
    open.filter(({ layer }) => !isMark(layer)),
    strokes,
    tolerance.joint,
    findings,
  );
  const nested = nest(cut, outline, findings);
  reportExtents(drawing.header.extents, extent, tolerance.joint, findings);
  reportSize(outline, mm, findings);
  if (outline === null) findings.add("no-contour", "stop", "nothing in the file is closed: there is no outline");
  const { holes, openings } = findHoles(nested, outline, mm, findings);
  return {
    version: drawing.header.version,
    unit: drawing.header.unit,
    layers: drawing.layers.map((layer) => layer.name),
    findings: [...drawing.findings, ...findings.list()],
    outline: outline && { layer: outline.contour.layer, extent: asExtent(outline.box), area: outline.area },
    outlineContour: outline?.contour ?? null,
    holes,
    openings,
    contours: cut.map(({ contour }) => contour),
    closedMarks: closed.filter(({ contour }) => isMark(contour.layer)).map(({ contour }) => contour),
    openStrokes: open,
    extent: extent === null ? null : asExtent(extent),
    cutLength: cut.reduce((sum, { contour }) => sum + contourLength(contour), 0),
    pierces: cut.length,
    netArea: nested.reduce((sum, { area, depth }) => sum + (depth % 2 === 0 ? area : -area), 0),
  };
}

/** R12 knows neither LWPOLYLINE nor the curves; a reader that goes by the version passes over them. */
function reportVersion({ header, types }: DxfDrawing, findings: FindingList): void {
  const newer = ["LWPOLYLINE", "SPLINE", "ELLIPSE", "HATCH", "MTEXT"].filter((type) => types.has(type));
  if (header.version === "AC1009" && newer.length > 0) {
    findings.add("newer-entity", "stop", `the file is marked R12 (AC1009), which has no ${newer.join(", ")}`);
  }
  if (types.has("POLYLINE")) findings.add("old-polyline", "advise", "some controls do not read POLYLINE");
}

/** Every layer that is drawn on. */
function judgeLayers(
  closed: readonly Measured[],
  open: readonly OpenStroke[],
  outline: Measured | null,
  mm: number,
  known: LayerRoles | undefined,
): ReadonlyMap<string, LayerUse> {
  const content = new Map<string, { name: string; open: OpenStroke[]; closed: number; hasOutline: boolean }>();
  const of = (name: string) => {
    const layer = content.get(name) ?? { name, open: [], closed: 0, hasOutline: name === outline?.contour.layer };
    content.set(name, layer);
    return layer;
  };
  for (const { contour } of closed) of(contour.layer).closed++;
  for (const stroke of open) of(stroke.layer).open.push(stroke);
  return new Map([...content].map(([name, layer]) => [name, judgeLayer(layer, outline?.box ?? null, mm, known)]));
}

function reportLayerUse(
  layers: ReadonlyMap<string, LayerUse>,
  strokes: readonly OpenStroke[],
  outline: Measured | null,
  findings: FindingList,
): void {
  for (const [layer, { isMark, why, leftOpen }] of layers) {
    for (const { segments } of leftOpen) {
      const [from, to] = [segments[0]?.from, segments.at(-1)?.to];
      if (from === undefined || to === undefined) continue;
      const gap = Number(distance(from, to).toPrecision(3));
      findings.add("open-contour", "stop", `contours on layer ${layer} are not closed: ends ${gap} apart`, [
        from.x,
        from.y,
      ]);
    }
    if (isMark && why !== "named") {
      const reason = why === "words" ? "by its name" : "by its open strokes";
      findings.add("open-strokes", "advise", `layer ${layer} is taken ${reason} for marks, which are not cut`);
    }
  }
  for (const stroke of strokes) {
    const box = boxOfStroke(stroke);
    if (outline === null || isBoxInside(box, outline.box, 0)) continue;
    findings.add("mark-outside", "advise", "marks reach beyond the outline", [box.x0, box.y0]);
  }
}

interface Nested extends Measured {
  /** 0 the outline, 1 what is cut in it, 2 an island in a hole. */
  readonly depth: number;
}

/** The contours of the outline with their depth; what lies outside it is told and left out. */
function nest(cut: readonly Measured[], outline: Measured | null, findings: FindingList): readonly Nested[] {
  if (outline === null) return [];
  const nestings = nestContours(cut, cut.indexOf(outline));
  if (nestings === null) {
    const message = "too many contours lie about each other: which is in which was not looked for";
    findings.add("nesting-unsearched", "stop", message);
    return [{ ...outline, depth: 0 }];
  }
  return cut.flatMap((each, index): Nested[] => {
    const nesting = nestings[index];
    if (each === outline || nesting === undefined) return [{ ...each, depth: 0 }];
    reportNesting(each, nesting, outline, findings);
    return nesting.isInOutline ? [{ ...each, depth: nesting.depth }] : [];
  });
}

/** A contour outside the outline is another part where it holds contours of its own or is a tenth as large, else a stray. */
function reportNesting(each: Measured, nesting: Nesting, outline: Measured, findings: FindingList): void {
  const at = [each.box.x0, each.box.y0] as const;
  if (nesting.isInOutline && nesting.depth > 1) {
    findings.add("island", "stop", "contours lie inside a hole: what is cut there has fallen out already", at);
  } else if (nesting.isInOutline && !isBoxInside(each.box, outline.box, 0)) {
    findings.add("outside-outline", "stop", "contours reach beyond the outline", at);
  } else if (nesting.depth === 0 && (nesting.holdsOthers || 10 * each.area >= outline.area)) {
    findings.add("second-outline", "stop", "the file has more than one outline: it holds more than one part", at);
  } else if (nesting.depth === 0) {
    findings.add("outside-outline", "stop", "contours reach beyond the outline", at);
  }
}

/** A template between the breadth of a hand and 12 m; anything else smells of a wrong unit. */
const [LEAST_MM, MOST_MM] = [50, 12_000];

function reportSize(outline: Measured | null, mm: number, findings: FindingList): void {
  if (outline === null) return;
  const { x0, y0, x1, y1 } = outline.box;
  const [largest, far] = [Math.max(x1 - x0, y1 - y0), Math.max(-x0, -y0, x1, y1)];
  if (largest * mm < LEAST_MM || largest * mm > MOST_MM) {
    const size = Number((largest * mm).toPrecision(4));
    findings.add("odd-size", "advise", `the outline is ${size} mm long: is the unit right?`, [x0, y0]);
  }
  if (far > 100 * largest) {
    findings.add("far-away", "advise", "the outline lies very far from 0,0: some controls lose decimals there", [
      x0,
      y0,
    ]);
  }
}

function measureContour(contour: CutContour): Measured {
  switch (contour.kind) {
    case "circle": {
      const radius = contour.diameter / 2;
      return { contour, box: circleBox(contour.x, contour.y, radius), area: Math.PI * radius * radius };
    }
    case "path":
      return { contour, box: boxOfStroke(contour), area: Math.abs(pathArea(contour.segments)) };
  }
}

function contourLength(contour: CutContour): number {
  if (contour.kind === "circle") return Math.PI * contour.diameter;
  return contour.segments.reduce((sum, segment) => sum + segmentLength(segment), 0);
}

function asExtent({ x0, y0, x1, y1 }: CutBox): CutExtent {
  return [x0, y0, x1, y1];
}

function coverAll(closed: readonly Measured[], open: readonly OpenStroke[]): CutBox | null {
  const boxes = [...closed.map(({ box }) => box), ...open.map(boxOfStroke)];
  return boxes.length === 0 ? null : boxes.reduce(coverBoxes, EMPTY_BOX);
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

/** What is cut directly in the outline: round holes, and openings of other shapes. */
function findHoles(
  nested: readonly Nested[],
  outline: Measured | null,
  mm: number,
  findings: FindingList,
): Pick<CutFile, "holes" | "openings"> {
  const holes: CutFile["holes"][number][] = [];
  const openings: CutFile["openings"][number][] = [];
  for (const { contour, box, area, depth } of nested) {
    if (contour === outline?.contour || depth > 1) continue;
    const { layer } = contour;
    const round = roundOfContour(contour, JOINT_MM / mm, ROUND_MM / mm);
    if (round === null) {
      openings.push({ extent: asExtent(box), area, layer, contour });
      continue;
    }
    const { x, y, diameter, sagitta } = round;
    holes.push({ x, y, diameter, layer });
    if (sagitta > 0) reportChords(sagitta, mm, [x, y], findings);
  }
  return { holes, openings };
}

/** Chords that come further into a hole than this leave less than a rod needs: a tenth of the play of 1/16 in. */
const CHORD_MM = 0.15;

function reportChords(sagitta: number, mm: number, at: readonly [number, number], findings: FindingList): void {
  const isCoarse = sagitta * mm > CHORD_MM;
  const message = isCoarse
    ? `round holes are drawn as polygons whose sides come more than ${CHORD_MM} mm inside the circle`
    : "round holes are drawn as polygons of many chords; measured by the circle through their corners";
  findings.add(isCoarse ? "coarse-polygon" : "polygon-hole", isCoarse ? "stop" : "advise", message, at);
}
