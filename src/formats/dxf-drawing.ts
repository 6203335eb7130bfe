/**
 * A drawing of AutoCAD 2000 (AC1015) by dxf-writer, with these limits of it kept off the file:
 * - it prints numbers with String(), so 1e-7 would be an exponent: every coordinate is handed over as text;
 * - its handles come from a global counter: it is set to zero before each drawing, so that the bytes repeat;
 * - it declares AC1021 (R2007) and knows no $MEASUREMENT, no extents and no limits: they are set as header variables;
 * - its constructor already adds the extra tables; a second call doubles their rows and makes a file that is not opened;
 * - it orders entities by layer, names that look like numbers first: here the shapes go on one list, each with its layer;
 * - it ends lines with LF and leaves the last one open.
 */
import Drawing from "dxf-writer";
import Handle from "dxf-writer/src/Handle.js";
import type { Extent } from "../geometry/vocabulary.js";
import type { Unit } from "../units/length.js";
import { startLines } from "./ascii-writer.js";
import { BULGE_DECIMALS, formatFixed, formatTicks, HEADER_UNITS } from "./cut-file.js";

/** What a drawing starts with: true extents in ticks of `decimals`, and every layer that it uses. */
export interface DxfHead {
  readonly unit: Unit;
  readonly decimals: number;
  readonly extent: Extent;
  /** Name and AutoCAD colour index. */
  readonly layers: readonly { readonly name: string; readonly color: number }[];
}

/** An empty drawing. One at a time: handles are counted from its start. */
export function startDxf(head: DxfHead): Drawing {
  Handle.seed = 0;
  const drawing = new Drawing();
  setHeader(drawing, head);
  for (const { name, color } of head.layers) if (name !== "0") drawing.addLayer(name, color, "CONTINUOUS");
  return drawing;
}

/** The file's bytes; a letter outside printable ASCII throws: a bug. */
export function finishDxf(drawing: Drawing): Uint8Array {
  const writer = startLines();
  writer.lines(drawing.toDxfString());
  writer.lines("\n");
  return writer.bytes();
}

/** dxf-writer prints whatever it is given with String(), so a text stands as it is; its typings know only numbers. */
export function asPrinted(text: string): number {
  return text as unknown as number;
}

function setHeader(drawing: Drawing, { unit, extent, decimals }: DxfHead): void {
  const at = (x: number, y: number): [number, number][] => [
    [10, asPrinted(formatTicks(x, decimals))],
    [20, asPrinted(formatTicks(y, decimals))],
  ];
  const low = at(extent.x0, extent.y0);
  const high = at(extent.x1, extent.y1);
  const units = HEADER_UNITS[unit];
  drawing.headers = {};
  drawing.header("ACADVER", [[1, asPrinted("AC1015")]]);
  drawing.header("DWGCODEPAGE", [[3, asPrinted("ANSI_1252")]]);
  drawing.header("INSUNITS", [[70, asPrinted(units.insunits)]]);
  drawing.header("MEASUREMENT", [[70, asPrinted(units.measurement)]]);
  drawing.header("EXTMIN", [...low, [30, asPrinted("0.0")]]);
  drawing.header("EXTMAX", [...high, [30, asPrinted("0.0")]]);
  drawing.header("LIMMIN", low);
  drawing.header("LIMMAX", high);
}

/** Gives the shape drawn last, which lies on the list of layer 0, the layer it belongs to. */
export function putOnLayer(drawing: Drawing, name: string): void {
  const shape = drawing.activeLayer?.shapes.at(-1) as { layer?: unknown } | undefined;
  const layer = drawing.layers[name];
  if (shape === undefined || layer === undefined) throw new Error(`layer ${name} is not in the drawing`);
  shape.layer = layer;
}

/** A vertex of a polyline; a third value is the bulge, which the typings of dxf-writer leave out. */
export function vertexValues(x: number, y: number, bulge: number): [number, number] {
  if (bulge === 0) return [x, y];
  return [x, y, asPrinted(formatFixed(bulge, BULGE_DECIMALS))] as unknown as [number, number];
}
