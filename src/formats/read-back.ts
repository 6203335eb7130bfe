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

/** A circle or a segment. One object each: a file has thousands, and there are two of each to compare. */
type Piece = Named & (CircleShape | SegmentShape);

interface Named {
  /** What it belongs to: "hole A1", "outline", "mark TOP", "drill mark A1"; for a piece of the file, its entity's type. */
  readonly what: string;
  readonly layer: string;
}

interface CircleShape {
  readonly kind: "circle";
  readonly at: CutPoint;
  readonly diameter: number;
}

interface SegmentShape extends CutSegment {
  readonly kind: "segment";
}

/** A whole contour or stroke. */
interface Figure {
  readonly kind: "circle" | "closed" | "open";
  readonly pieces: readonly Piece[];
}

/**
 * The differences between a cut file and its plate, as sentences; none when every contour, diameter, position, layer, mark,
 * extent and unit is the plate's, in the order in which it is to be cut, and nothing else is in the file. Bytes that were read
 * already are handed in as their drawing.
 */
export function compareCutFile(
  file: Uint8Array | DxfDrawing,
  plate: Plate,
  options: CutFileOptions,
): readonly string[] {
  const drawing = file instanceof Uint8Array ? readDrawing(file) : file;
  const expected = expectedFigures(plate, options);
  const wanted = piecesOf(expected);
  const differences = [
    ...drawing.findings.map(({ message, count }) => (count > 1 ? `${message} (${count} times)` : message)),
    ...compareHeader(drawing, options),
    ...compareLayers(drawing, wanted),
    ...comparePieces(wanted, drawing.entities),
    ...compareExtents(drawing),
  ];
  return differences.length > 0 ? differences : COMPARE_FIGURES[options.draws](drawing.entities, expected);
}

function piecesOf(figures: readonly Figure[]): readonly Piece[] {
  const pieces: Piece[] = [];
  for (const figure of figures) for (const piece of figure.pieces) pieces.push(piece);
  return pieces;
}

function expectedFigures(plate: Plate, options: CutFileOptions): readonly Figure[] {
  const { layers } = options;
  const to = placingOf(plate, options);
  const strokes = (isPunch: boolean) =>
    plate.marks
      .filter((mark) => (mark.kind === "punch") === isPunch)
      .flatMap((mark) => {
        const what = `${isPunch ? "drill mark" : "mark"} ${mark.text === "" ? mark.kind : mark.text}`;
        const layer = isPunch ? layers.drill : layers.marks;
        return mark.strokes.map((stroke) => strokeFigure(stroke, what, layer, to));
      });
  const inner = (isOpening: boolean) =>
    plate.holes
      .filter((hole) => hole.made === "cut" && (hole.role === "opening") === isOpening)
      .map((hole) => contourFigure(hole.contour, `hole ${hole.tag}`, isOpening ? layers.openings : layers.holes, to));
  const outline = contourFigure(plate.region.outer, "outline", layers.outline, to);
  return [...(options.marks ? strokes(false) : []), ...strokes(true), ...inner(true), ...inner(false), outline];
}

/** From millimetres in base axes to the file's unit and origin. */
interface Placing {
  readonly x0: number;
  readonly y0: number;
  readonly mmPerUnit: number;
}

function placingOf(plate: Plate, { origin, unit }: CutFileOptions): Placing {
  const { x0, y0 } = origin === "lower left" ? extentOf(plate.region.outer) : { x0: 0, y0: 0 };
  return { x0, y0, mmPerUnit: NM_PER_UNIT[unit] / NM_PER_MM };
}

function place({ x, y }: Point, { x0, y0, mmPerUnit }: Placing): CutPoint {
  return { x: (x - x0) / mmPerUnit, y: (y - y0) / mmPerUnit };
}

function contourFigure(contour: Contour, what: string, layer: string, placing: Placing): Figure {
  switch (contour.kind) {
    case "circle": {
      const diameter = contour.diameter / NM_PER_MM / placing.mmPerUnit;
      return {
        kind: "circle",
        pieces: [{ what, layer, kind: "circle", at: place(contour.center, placing), diameter }],
      };
    }
    case "path": {
      const pieces = contour.segments.map(({ from, to, bulge }) =>
        segmentPiece(what, layer, place(from, placing), place(to, placing), bulge),
      );
      return { kind: "closed", pieces };
    }
  }
}

function strokeFigure(stroke: readonly Point[], what: string, layer: string, placing: Placing): Figure {
  const points = stroke.map((at) => place(at, placing));
  const pieces: Piece[] = [];
  for (let index = 1; index < points.length; index++) {
    const [from, to] = [points[index - 1], points[index]];
    if (from !== undefined && to !== undefined) pieces.push(segmentPiece(what, layer, from, to, 0));
  }
  const [first, last] = [points[0], points.at(-1)];
  const isClosed = points.length > 3 && first?.x === last?.x && first?.y === last?.y;
  return { kind: isClosed ? "closed" : "open", pieces };
}

function segmentPiece(what: string, layer: string, from: CutPoint, to: CutPoint, bulge: number): Piece {
  return { what, layer, kind: "segment", from, to, bulge };
}

function piecesOfEntity(entity: DxfEntity): readonly Piece[] {
  const { layer } = entity;
  switch (entity.kind) {
    case "circle": {
      const { x, y, radius } = entity;
      return [{ what: "circle", layer, kind: "circle", at: { x, y }, diameter: 2 * radius }];
    }
    case "line":
      return [segmentPiece("line", layer, entity.from, entity.to, 0)];
    case "arc": {
      const arc = arcSegment(entity);
      return arc === null ? [] : [segmentPiece("arc", layer, arc.from, arc.to, arc.bulge)];
    }
    case "polyline":
      return polylineSegments(entity.vertices, entity.closed).map(({ from, to, bulge }) =>
        segmentPiece("polyline", layer, from, to, bulge),
      );
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

function sameShape(a: Piece, b: Piece): boolean {
  if (a.kind === "circle") {
    return b.kind === "circle" && samePoint(a.at, b.at) && Math.abs(a.diameter - b.diameter) <= READ_BACK_TOLERANCE;
  }
  return b.kind === "segment" && sameSegment(a, b.from, b.to, b.bulge);
}

/**
 * Segments are the same in either direction: an ARC always runs counter-clockwise. The point half way tells bulge and
 * direction of bulging in one length; of two straight ones with the same ends it is the same.
 */
function sameSegment(a: SegmentShape, from: CutPoint, to: CutPoint, bulge: number): boolean {
  if ((a.bulge !== 0 || bulge !== 0) && !samePoint(middleOf(a), middleOf({ from, to, bulge }))) return false;
  return (samePoint(a.from, from) && samePoint(a.to, to)) || (samePoint(a.from, to) && samePoint(a.to, from));
}

/** Layer names are the same in any case of their letters (DXF reference, symbol table names). */
function sameLayer(a: string, b: string): boolean {
  return a === b || a.toUpperCase() === b.toUpperCase();
}

function samePiece(a: Piece, b: Piece): boolean {
  return sameLayer(a.layer, b.layer) && sameShape(a, b);
}

/** Piece by piece in the order of cutting; only where that fails is it worked out what is missing, changed or too much. */
function comparePieces(wanted: readonly Piece[], entities: readonly DxfEntity[]): readonly string[] {
  if (drawsInOrder(entities, wanted)) return [];
  const rest = entities.flatMap(piecesOfEntity);
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

/** True where the entities are the wanted pieces, one after the other. Makes no object of a segment: a file has thousands. */
function drawsInOrder(entities: readonly DxfEntity[], wanted: readonly Piece[]): boolean {
  let next = 0;
  for (const entity of entities) {
    const count = entity.kind === "polyline" ? segmentCount(entity) : 1;
    for (let index = 0; index < count; index++) {
      const piece = wanted[next++];
      if (piece === undefined || !sameLayer(piece.layer, entity.layer) || !draws(entity, index, piece)) return false;
    }
  }
  return next === wanted.length;
}

function segmentCount({ vertices, closed }: DxfEntity & { kind: "polyline" }): number {
  return closed ? vertices.length : Math.max(0, vertices.length - 1);
}

/** True where the piece is an entity, or segment `index` of a polyline. */
function draws(entity: DxfEntity, index: number, piece: Piece): boolean {
  switch (entity.kind) {
    case "line":
      return piece.kind === "segment" && sameSegment(piece, entity.from, entity.to, 0);
    case "polyline": {
      const from = entity.vertices[index];
      const to = entity.vertices[index + 1] ?? entity.vertices[0];
      if (from === undefined || to === undefined) return false;
      return piece.kind === "segment" && sameSegment(piece, from, to, from.bulge);
    }
    case "circle":
    case "arc": {
      const [only] = piecesOfEntity(entity);
      return only !== undefined && sameShape(piece, only);
    }
  }
}

/** Names what stands in a missing piece's place, and takes it from the rest. */
function describeMissing(piece: Piece, rest: Piece[]): string {
  const moved = rest.findIndex((other) => sameShape(piece, other));
  if (moved >= 0) {
    const [other] = rest.splice(moved, 1);
    return `${piece.what} is on layer ${other?.layer}, must be on ${piece.layer}`;
  }
  const changed = rest.findIndex((other) => sameLayer(other.layer, piece.layer) && isLike(piece, other));
  if (changed < 0) return `${piece.what} is missing: ${describe(piece)}`;
  const [other] = rest.splice(changed, 1);
  return `${piece.what} is ${other === undefined ? "" : describe(other)}, must be ${describe(piece)}`;
}

/** Circles about one centre or of one diameter, segments with an end in common. */
function isLike(a: Piece, b: Piece): boolean {
  if (a.kind === "circle") {
    return b.kind === "circle" && (samePoint(a.at, b.at) || Math.abs(a.diameter - b.diameter) <= READ_BACK_TOLERANCE);
  }
  if (b.kind === "circle") return false;
  return [b.from, b.to].some((end) => samePoint(end, a.from) || samePoint(end, a.to));
}

function describe(piece: Piece): string {
  const { layer } = piece;
  const at = ({ x, y }: CutPoint) => `${x.toFixed(7)},${y.toFixed(7)}`;
  if (piece.kind === "circle") return `circle ${piece.diameter.toFixed(7)} at ${at(piece.at)} on ${layer}`;
  return `segment ${at(piece.from)} to ${at(piece.to)} by ${at(middleOf(piece))} on ${layer}`;
}

const COMPARE_FIGURES: Readonly<
  Record<Draws, (drawn: readonly DxfEntity[], expected: readonly Figure[]) => readonly string[]>
> = { whole: compareWhole, pieces: comparePiecewise };

/** CIRCLE and one polyline a figure, closed exactly where the contour or stroke is. */
function compareWhole(drawn: readonly DxfEntity[], expected: readonly Figure[]): readonly string[] {
  const isSame = expected.every(({ kind, pieces }, index) => {
    const entity = drawn[index];
    if (entity?.kind !== "polyline") return entity?.kind === kind;
    return kind === (entity.closed ? "closed" : "open") && segmentCount(entity) === pieces.length;
  });
  if (isSame && drawn.length === expected.length) return [];
  return ["the file does not draw each contour as one closed polyline or circle, and each stroke as one polyline"];
}

/** LINE, ARC and CIRCLE. */
function comparePiecewise(drawn: readonly DxfEntity[]): readonly string[] {
  const isPieces = drawn.every(({ kind }) => kind === "line" || kind === "arc" || kind === "circle");
  return isPieces ? [] : ["the file draws a polyline where it should draw lines and arcs"];
}
