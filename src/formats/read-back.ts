/**
 * Compares the bytes of a cut file with the plate it was made of. The bytes are read by the reader of foreign cut files, and
 * what they should hold is worked out here from the plate: nothing is shared with the writers.
 */
import { extentOf } from "../geometry/index.js";
import type { Contour, Point } from "../geometry/vocabulary.js";
import { type DxfDrawing, readDrawing } from "../readers/dxf-drawing.js";
import type { DxfEntity } from "../readers/dxf-entities.js";
import {
  arcSegment,
  type CutBox,
  type CutPoint,
  type CutSegment,
  coverEntities,
  middleOf,
  polylineSegments,
} from "../readers/dxf-measures.js";
import type { Plate } from "../template/model.js";
import { NM_PER_MM, NM_PER_UNIT } from "../units/length.js";
import type { CutFileOptions, Draws } from "./cut-file.js";

/** Two positions, diameters or extents this near are the same, in the file's unit: 1e-6 in is 25 nm, 1e-6 mm is 1 nm. */
export const READ_BACK_TOLERANCE = 1e-6;

/** A circle, or a segment by its ends and the point half way: that tells bulge and direction of bulging in one length. */
type Shape =
  | { readonly kind: "circle"; readonly at: CutPoint; readonly diameter: number }
  | { readonly kind: "segment"; readonly from: CutPoint; readonly to: CutPoint; readonly middle: CutPoint };

interface Piece {
  /** What it belongs to: "hole A1", "outline", "mark TOP", "drill mark A1"; for a piece of the file, its entity's type. */
  readonly what: string;
  readonly layer: string;
  readonly shape: Shape;
}

/** A whole contour or stroke; in a file, an entity. */
interface Figure {
  readonly kind: "circle" | "closed" | "open" | "line" | "arc";
  readonly pieces: readonly Piece[];
}

/**
 * The differences between a cut file and its plate, as sentences; none when every contour, diameter, position, layer, mark,
 * extent and unit is the plate's, in the order in which it is to be cut, and nothing else is in the file.
 */
export function compareCutFile(bytes: Uint8Array, plate: Plate, options: CutFileOptions): readonly string[] {
  const drawing = readDrawing(bytes);
  const expected = expectedFigures(plate, options);
  const wanted = piecesOf(expected);
  const drawn = drawing.entities.map(figureOf);
  const found = piecesOf(drawn);
  const differences = [
    ...drawing.findings.map(({ message, count }) => (count > 1 ? `${message} (${count} times)` : message)),
    ...compareHeader(drawing, options),
    ...compareLayers(drawing, wanted),
    ...comparePieces(wanted, found),
    ...compareExtents(drawing),
  ];
  return differences.length > 0 ? differences : COMPARE_FIGURES[options.draws](drawn, expected);
}

function piecesOf(figures: readonly Figure[]): readonly Piece[] {
  const pieces: Piece[] = [];
  for (const figure of figures) for (const piece of figure.pieces) pieces.push(piece);
  return pieces;
}

function expectedFigures(plate: Plate, options: CutFileOptions): readonly Figure[] {
  const { layers } = options;
  const place = placing(plate, options);
  const strokes = (isPunch: boolean) =>
    plate.marks
      .filter((mark) => (mark.kind === "punch") === isPunch)
      .flatMap((mark) => {
        const what = `${isPunch ? "drill mark" : "mark"} ${mark.text === "" ? mark.kind : mark.text}`;
        const layer = isPunch ? layers.drill : layers.marks;
        return mark.strokes.map((stroke) => strokeFigure(stroke.map(place), what, layer));
      });
  const inner = (isOpening: boolean) =>
    plate.holes
      .filter((hole) => hole.made === "cut" && (hole.role === "opening") === isOpening)
      .map((hole) =>
        contourFigure(hole.contour, `hole ${hole.tag}`, isOpening ? layers.openings : layers.holes, place),
      );
  const outline = contourFigure(plate.region.outer, "outline", layers.outline, place);
  return [...(options.marks ? strokes(false) : []), ...strokes(true), ...inner(true), ...inner(false), outline];
}

type Placing = (point: Point) => CutPoint;

/** From millimetres in base axes to the file's unit and origin. */
function placing(plate: Plate, { origin, unit }: CutFileOptions): Placing {
  const corner = origin === "lower left" ? extentOf(plate.region.outer) : { x0: 0, y0: 0 };
  return ({ x, y }) => ({ x: inUnit(x - corner.x0, unit), y: inUnit(y - corner.y0, unit) });
}

function inUnit(millimetres: number, unit: CutFileOptions["unit"]): number {
  return unit === "mm" ? millimetres : millimetres / (NM_PER_UNIT[unit] / NM_PER_MM);
}

function contourFigure(contour: Contour, what: string, layer: string, place: Placing): Figure {
  switch (contour.kind) {
    case "circle": {
      const at = place(contour.center);
      const reach = place({ x: contour.center.x + contour.diameter / NM_PER_MM, y: contour.center.y });
      return { kind: "circle", pieces: [{ what, layer, shape: { kind: "circle", at, diameter: reach.x - at.x } }] };
    }
    case "path": {
      const pieces = contour.segments.map(({ from, to, bulge }) =>
        segmentPiece({ from: place(from), to: place(to), bulge }, what, layer),
      );
      return { kind: "closed", pieces };
    }
  }
}

function strokeFigure(points: readonly CutPoint[], what: string, layer: string): Figure {
  const pieces = points.slice(1).map((to, index) => {
    return segmentPiece({ from: points[index] ?? to, to, bulge: 0 }, what, layer);
  });
  const [first, last] = [points[0], points.at(-1)];
  const isClosed = points.length > 3 && first?.x === last?.x && first?.y === last?.y;
  return { kind: isClosed ? "closed" : "open", pieces };
}

function segmentPiece(segment: CutSegment, what: string, layer: string): Piece {
  const { from, to } = segment;
  return { what, layer, shape: { kind: "segment", from, to, middle: middleOf(segment) } };
}

function figureOf(entity: DxfEntity): Figure {
  const { layer } = entity;
  switch (entity.kind) {
    case "circle": {
      const { x, y, radius } = entity;
      const shape = { kind: "circle", at: { x, y }, diameter: 2 * radius } as const;
      return { kind: "circle", pieces: [{ what: "circle", layer, shape }] };
    }
    case "line":
      return { kind: "line", pieces: [segmentPiece({ from: entity.from, to: entity.to, bulge: 0 }, "line", layer)] };
    case "arc": {
      const segment = arcSegment(entity);
      return { kind: "arc", pieces: segment === null ? [] : [segmentPiece(segment, "arc", layer)] };
    }
    case "polyline": {
      const segments = polylineSegments(entity.vertices, entity.closed);
      const pieces = segments.map((segment) => segmentPiece(segment, "polyline", layer));
      return { kind: entity.closed ? "closed" : "open", pieces };
    }
  }
}

function compareHeader({ header, types }: DxfDrawing, options: CutFileOptions): readonly string[] {
  const differences: string[] = [];
  if (header.unit !== options.unit) differences.push(`the file's unit is ${header.unit}, must be ${options.unit}`);
  if (header.version !== "AC1009" && header.version !== "AC1015") {
    differences.push(`the file's version is ${header.version}, must be AC1009 or AC1015`);
  }
  if (header.version === "AC1009" && types.has("LWPOLYLINE")) differences.push("LWPOLYLINE in a file marked R12");
  return differences;
}

function compareLayers({ layers }: DxfDrawing, wanted: readonly Piece[]): readonly string[] {
  const used = new Set(wanted.map((piece) => piece.layer));
  const known = new Set(["0", ...[...used].map((name) => name.toUpperCase())]);
  const named = layers.map((layer) => layer.name.toUpperCase());
  return [
    ...named
      .filter((name) => !known.has(name))
      .map((name) => `layer ${name} is in the LAYER table but not the plate's`),
    ...named.filter((name, index) => named.indexOf(name) !== index).map((name) => `layer ${name} is declared twice`),
  ];
}

/** The extents of all that is drawn, by the reader's own measure, against what the header says. */
function compareExtents({ entities, header }: DxfDrawing): readonly string[] {
  const box = coverEntities(entities);
  return [...compareBox("$EXTMIN/$EXTMAX", header.extents, box), ...compareBox("$LIMMIN/$LIMMAX", header.limits, box)];
}

function compareBox(name: string, said: CutBox | null, box: CutBox): readonly string[] {
  if (said === null) return [`${name} are missing`];
  const same = (a: number, b: number) => Math.abs(a - b) <= READ_BACK_TOLERANCE;
  if (same(said.x0, box.x0) && same(said.y0, box.y0) && same(said.x1, box.x1) && same(said.y1, box.y1)) return [];
  const text = ({ x0, y0, x1, y1 }: CutBox) => `${x0},${y0} to ${x1},${y1}`;
  return [`${name} are ${text(said)}, what is drawn reaches from ${text(box)}`];
}

function samePoint(a: CutPoint, b: CutPoint): boolean {
  return Math.abs(a.x - b.x) <= READ_BACK_TOLERANCE && Math.abs(a.y - b.y) <= READ_BACK_TOLERANCE;
}

/** Segments are the same in either direction: an ARC always runs counter-clockwise. */
function sameShape(a: Shape, b: Shape): boolean {
  if (a.kind === "circle") {
    return b.kind === "circle" && samePoint(a.at, b.at) && Math.abs(a.diameter - b.diameter) <= READ_BACK_TOLERANCE;
  }
  if (b.kind === "circle" || !samePoint(a.middle, b.middle)) return false;
  return (samePoint(a.from, b.from) && samePoint(a.to, b.to)) || (samePoint(a.from, b.to) && samePoint(a.to, b.from));
}

/** Layer names are the same in any case of their letters (DXF reference, symbol table names). */
function sameLayer(a: string, b: string): boolean {
  return a === b || a.toUpperCase() === b.toUpperCase();
}

function samePiece(a: Piece, b: Piece): boolean {
  return sameLayer(a.layer, b.layer) && sameShape(a.shape, b.shape);
}

/** Piece by piece in the order of cutting; only where that fails is it worked out what is missing, changed or too much. */
function comparePieces(wanted: readonly Piece[], found: readonly Piece[]): readonly string[] {
  const isSame = wanted.length === found.length && wanted.every((piece, index) => isAt(found, index, piece));
  if (isSame) return [];
  const rest = [...found];
  const missing = wanted.filter((piece) => {
    const index = rest.findIndex((other) => samePiece(piece, other));
    if (index >= 0) rest.splice(index, 1);
    return index < 0;
  });
  const differences = [
    ...missing.map((piece) => describeMissing(piece, rest)),
    ...rest.map((piece) => `${describe(piece)} is in the file but not in the plate`),
  ];
  return differences.length > 0 ? differences : [`the order is not scribe, drill, inner contours, outline`];
}

function isAt(found: readonly Piece[], index: number, piece: Piece): boolean {
  const other = found[index];
  return other !== undefined && samePiece(piece, other);
}

/** Names what stands in a missing piece's place, and takes it from the rest. */
function describeMissing(piece: Piece, rest: Piece[]): string {
  const moved = rest.findIndex((other) => sameShape(piece.shape, other.shape));
  if (moved >= 0) {
    const [other] = rest.splice(moved, 1);
    return `${piece.what} is on layer ${other?.layer}, must be on ${piece.layer}`;
  }
  const changed = rest.findIndex((other) => sameLayer(other.layer, piece.layer) && isLike(piece.shape, other.shape));
  if (changed < 0) return `${piece.what} is missing: ${describe(piece)}`;
  const [other] = rest.splice(changed, 1);
  return `${piece.what} is ${other === undefined ? "" : describe(other)}, must be ${describe(piece)}`;
}

/** Circles about one centre or of one diameter, segments with an end in common. */
function isLike(a: Shape, b: Shape): boolean {
  if (a.kind === "circle") {
    return b.kind === "circle" && (samePoint(a.at, b.at) || Math.abs(a.diameter - b.diameter) <= READ_BACK_TOLERANCE);
  }
  if (b.kind === "circle") return false;
  return [b.from, b.to].some((end) => samePoint(end, a.from) || samePoint(end, a.to));
}

function describe({ layer, shape }: Piece): string {
  const at = ({ x, y }: CutPoint) => `${x.toFixed(7)},${y.toFixed(7)}`;
  if (shape.kind === "circle") return `circle ${shape.diameter.toFixed(7)} at ${at(shape.at)} on ${layer}`;
  return `segment ${at(shape.from)} to ${at(shape.to)} by ${at(shape.middle)} on ${layer}`;
}

const COMPARE_FIGURES: Readonly<
  Record<Draws, (drawn: readonly Figure[], expected: readonly Figure[]) => readonly string[]>
> = { whole: compareWhole, pieces: comparePiecewise };

/** CIRCLE and one polyline a figure, closed exactly where the contour or stroke is. */
function compareWhole(drawn: readonly Figure[], expected: readonly Figure[]): readonly string[] {
  const isSame = expected.every(({ kind, pieces }, index) => {
    const figure = drawn[index];
    return figure?.kind === kind && figure.pieces.length === pieces.length;
  });
  if (isSame && drawn.length === expected.length) return [];
  return ["the file does not draw each contour as one closed polyline or circle, and each stroke as one polyline"];
}

/** LINE, ARC and CIRCLE. */
function comparePiecewise(drawn: readonly Figure[]): readonly string[] {
  const isPieces = drawn.every(({ kind }) => kind === "line" || kind === "arc" || kind === "circle");
  return isPieces ? [] : ["the file draws a polyline where it should draw lines and arcs"];
}
