/**
 * What a cut file draws, in whole ticks of the file's unit: the one geometry of which both flavours are written. Every
 * number is rounded here, once, so that the joint of two segments is one rounded point, used twice.
 */
import { extentOf, joinExtents, samePoint } from "../geometry/index.js";
import type { Contour, Extent, Point } from "../geometry/vocabulary.js";
import type { Hole, Mark, Plate } from "../template/model.js";
import { NM_PER_MM, NM_PER_UNIT, roundSymmetric, type Unit } from "../units/length.js";

/** Layer names, as the receiver of the file wants them. */
export interface CutFileLayers {
  readonly outline: string;
  readonly holes: string;
  readonly openings: string;
  readonly marks: string;
  readonly drill: string;
}

/** How contours and strokes are drawn: each as one entity, or every segment of theirs as one. */
export type Draws = "whole" | "pieces";

/** How a cut file is written. `marks` false leaves the scribed marks out (painted, or none); drill marks are always in. */
export interface CutFileOptions {
  /** What the file's writer does: read-back holds the file against it. */
  readonly draws: Draws;
  readonly unit: Unit;
  readonly layers: CutFileLayers;
  /** Where 0,0 of the file lies: at the lower left of the outline's extent, or at the base's working point. */
  readonly origin: "lower left" | "working point";
  readonly marks: boolean;
}

/** One way to write a cut file: what it says of itself, and its writer. */
export interface CutFlavour<Kind extends string> {
  /** The public name, as `files[].kind` of the summary has it. */
  readonly kind: Kind;
  /** For README: what it is and for whom. */
  readonly title: string;
  /** What a shop calls it; the end of its file names, and its folder, where it is not the one that the table loads. */
  readonly ending: "polyline" | "lines";
  readonly draws: Draws;
  /** In the job's unit at nominal size; the options decide layers, origin and marks. */
  write(plate: Plate, options: CutFileOptions): Uint8Array;
}

/**
 * Decimals of a coordinate. Inches need 8 for the ends of an R12 arc to meet their neighbours within 1e-6 in; millimetres
 * take 7, since the radius of an odd number of nanometres ends in half a nanometre.
 */
export const CUT_DECIMALS: Readonly<Record<Unit, number>> = { in: 8, mm: 7 };

/** Decimals of a bulge: 1e-12 of a 6 m chord is 3e-9 mm of sagitta. */
export const BULGE_DECIMALS = 12;

/** A corner in ticks, and the bulge (counter-clockwise positive) of the segment that leaves it. */
export interface CutVertex {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}

/** One thing to draw, in ticks; `closed` chains are contours, or strokes that come back to their start; open ones strokes. */
export type CutItem =
  | { readonly kind: "circle"; readonly layer: string; readonly x: number; readonly y: number; readonly radius: number }
  | {
      readonly kind: "chain";
      readonly layer: string;
      readonly closed: boolean;
      readonly vertices: readonly CutVertex[];
    };

/** A layer with its AutoCAD colour index: 7 what is cut, 3 what is drilled, 2 what is scribed. */
export interface CutLayer {
  readonly name: string;
  readonly color: number;
}

/** The whole drawing, in the order in which it is to be made: scribe, drill, inner contours, outline. */
export interface CutDrawing {
  readonly unit: Unit;
  readonly decimals: number;
  readonly layers: readonly CutLayer[];
  readonly items: readonly CutItem[];
  /** True extents of all items, arcs included, in ticks. */
  readonly extent: Extent;
}

/** What a plate was last drawn as: files of one plate in several flavours are one drawing. */
const drawn = new WeakMap<Plate, { readonly options: CutFileOptions; readonly drawing: CutDrawing }>();

/** Rounds the plate to the file's ticks. Throws when the plate is not what its model says: a bug, never a user's mistake. */
export function drawCutFile(plate: Plate, options: CutFileOptions): CutDrawing {
  const known = drawn.get(plate);
  if (known !== undefined && drawAlike(known.options, options)) return known.drawing;
  const drawing = drawPlate(plate, options);
  drawn.set(plate, { options, drawing });
  return drawing;
}

/** `draws` is the writer's business. */
function drawAlike(a: CutFileOptions, b: CutFileOptions): boolean {
  return a.unit === b.unit && a.layers === b.layers && a.origin === b.origin && a.marks === b.marks;
}

function drawPlate(plate: Plate, options: CutFileOptions): CutDrawing {
  const holes = cutHoles(plate);
  const marks = plate.marks.filter((mark) => mark.kind === "punch" || options.marks);
  const decimals = CUT_DECIMALS[options.unit];
  const outline = extentOf(plate.region.outer);
  const grid = makeGrid(options, decimals, outline);
  const layers = spellOnce(options.layers);
  const items = [
    ...marks.filter((mark) => mark.kind !== "punch").flatMap((mark) => drawMark(mark, layers.marks, grid)),
    ...marks.filter((mark) => mark.kind === "punch").flatMap((mark) => drawMark(mark, layers.drill, grid)),
    ...holes.map((hole) => drawContour(hole.contour, hole.role === "opening" ? layers.openings : layers.holes, grid)),
    drawContour(plate.region.outer, layers.outline, grid),
  ];
  const extent = roundExtent(coverAll(outline, holes, marks), grid);
  return { unit: options.unit, decimals, layers: usedLayers(items, layers), items, extent };
}

/** The layers that are cut and those that are only marked, in the cut files of this plate: for summary.json. */
export function cutFileLayers(
  plate: Plate,
  options: Pick<CutFileOptions, "layers" | "marks">,
): { readonly cut: readonly string[]; readonly mark: readonly string[] } {
  const layers = spellOnce(options.layers);
  const holes = cutHoles(plate);
  const cut = [
    layers.outline,
    ...(holes.some((hole) => hole.role !== "opening") ? [layers.holes] : []),
    ...(holes.some((hole) => hole.role === "opening") ? [layers.openings] : []),
  ];
  const drawn = (mark: Mark) => mark.strokes.length > 0;
  const mark = [
    ...(options.marks && plate.marks.some((each) => each.kind !== "punch" && drawn(each)) ? [layers.marks] : []),
    ...(plate.marks.some((each) => each.kind === "punch" && drawn(each)) ? [layers.drill] : []),
  ];
  return { cut: [...new Set(cut)], mark: [...new Set(mark)] };
}

/** Layer names are the same in any case of their letters (DXF reference): the first spelling stands for all. */
function spellOnce(layers: CutFileOptions["layers"]): CutFileOptions["layers"] {
  const names = [layers.outline, layers.holes, layers.openings, layers.marks, layers.drill];
  const spell = (name: string) => names.find((other) => other.toUpperCase() === name.toUpperCase()) ?? name;
  return {
    outline: layers.outline,
    holes: spell(layers.holes),
    openings: spell(layers.openings),
    marks: spell(layers.marks),
    drill: spell(layers.drill),
  };
}

/** Openings first, then the other cut holes, in the plate's order. */
function cutHoles(plate: Plate): readonly Hole[] {
  const cut = plate.holes.filter((hole) => hole.made === "cut");
  if (cut.length !== plate.region.inner.length) {
    throw new Error(`plate ${plate.mark}: ${cut.length} cut holes, but ${plate.region.inner.length} inner contours`);
  }
  return [...cut.filter((hole) => hole.role === "opening"), ...cut.filter((hole) => hole.role !== "opening")];
}

/** From millimetres in base axes to ticks of the file. */
interface Grid {
  readonly x0: number;
  readonly y0: number;
  readonly ticksPerMm: number;
}

function makeGrid(options: CutFileOptions, decimals: number, outline: Extent): Grid {
  const ticksPerMm = (10 ** decimals * NM_PER_MM) / NM_PER_UNIT[options.unit];
  if (options.origin === "working point") return { x0: 0, y0: 0, ticksPerMm };
  return { x0: outline.x0, y0: outline.y0, ticksPerMm };
}

function ticks(millimetres: number, grid: Grid): number {
  return roundSymmetric(millimetres * grid.ticksPerMm);
}

function drawContour(contour: Contour, layer: string, grid: Grid): CutItem {
  switch (contour.kind) {
    case "circle": {
      const { x, y } = vertex(contour.center, 0, grid);
      return {
        kind: "circle",
        layer,
        x,
        y,
        radius: roundSymmetric((contour.diameter * grid.ticksPerMm) / (2 * NM_PER_MM)),
      };
    }
    case "path": {
      const { segments } = contour;
      let end = segments.at(-1)?.to;
      const vertices = segments.map(({ from, to, bulge }) => {
        if (from.x !== end?.x || from.y !== end.y) throw new Error(`contour is not closed at ${from.x},${from.y} mm`);
        end = to;
        return vertex(from, bulge, grid);
      });
      return { kind: "chain", layer, closed: true, vertices };
    }
  }
}

function drawMark(mark: Mark, layer: string, grid: Grid): readonly CutItem[] {
  return mark.strokes.map((stroke) => drawStroke(mark, stroke, layer, grid));
}

/** A stroke that comes back to its start is a closed chain: readers call an unflagged one a fault. */
function drawStroke(mark: Mark, stroke: readonly Point[], layer: string, grid: Grid): CutItem {
  const [first, last] = [stroke[0], stroke.at(-1)];
  if (first === undefined || last === undefined || stroke.length < 2) {
    throw new Error(`mark ${mark.kind} ${mark.text}: a stroke of ${stroke.length} point(s)`);
  }
  const closed = stroke.length > 3 && samePoint(first, last);
  const points = closed ? stroke.slice(0, -1) : stroke;
  return { kind: "chain", layer, closed, vertices: points.map((point) => vertex(point, 0, grid)) };
}

function vertex(point: Point, bulge: number, grid: Grid): CutVertex {
  return { x: ticks(point.x - grid.x0, grid), y: ticks(point.y - grid.y0, grid), bulge };
}

/** Marks may reach beyond the outline, and so may the holes of a held plate. */
function coverAll(outline: Extent, holes: readonly Hole[], marks: readonly Mark[]): Extent {
  const drawn = marks.filter(({ strokes }) => strokes.length > 0).map(({ extent }) => extent);
  return [...holes.map(({ contour }) => extentOf(contour)), ...drawn].reduce(joinExtents, outline);
}

function roundExtent(extent: Extent, grid: Grid): Extent {
  const low = vertex({ x: extent.x0, y: extent.y0 }, 0, grid);
  const high = vertex({ x: extent.x1, y: extent.y1 }, 0, grid);
  return { x0: low.x, y0: low.y, x1: high.x, y1: high.y };
}

function usedLayers(items: readonly CutItem[], names: CutFileOptions["layers"]): readonly CutLayer[] {
  const colors = new Map<string, number>([[names.marks, 2]]);
  colors.set(names.drill, 3);
  for (const name of [names.holes, names.openings, names.outline]) colors.set(name, 7);
  const used = new Set(items.map((item) => item.layer));
  for (const name of used) checkLayerName(name);
  return [...colors].filter(([name]) => used.has(name)).map(([name, color]) => ({ name, color }));
}

/** What a layer may be called in both flavours (DXF reference, symbol table names). The job's reader holds users to it. */
function checkLayerName(name: string): void {
  if (!/^[A-Za-z0-9_$-]{1,31}$/.test(name))
    throw new Error(`layer name ${JSON.stringify(name)} is not fit for a cut file`);
}

/** `ticks` with `decimals` fixed decimals: no exponent, no minus zero. Throws on what is not a whole number: a bug. */
export function formatTicks(ticks: number, decimals: number): string {
  if (!Number.isSafeInteger(ticks)) throw new RangeError(`not a number of ticks: ${ticks}`);
  const digits = String(Math.abs(ticks)).padStart(decimals + 1, "0");
  const split = digits.length - decimals;
  return `${ticks < 0 ? "-" : ""}${digits.slice(0, split)}.${digits.slice(split)}`;
}

/** `value` rounded to `decimals` fixed decimals, half away from zero. */
export function formatFixed(value: number, decimals: number): string {
  return formatTicks(roundSymmetric(value * 10 ** decimals), decimals);
}

/** `$INSUNITS` and `$MEASUREMENT` of a unit (DXF reference, header variables). */
export const HEADER_UNITS: Readonly<Record<Unit, { readonly insunits: string; readonly measurement: string }>> = {
  in: { insunits: "1", measurement: "0" },
  mm: { insunits: "4", measurement: "1" },
};
